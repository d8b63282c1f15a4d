package charline.paper;

import java.time.OffsetDateTime;
import java.util.Objects;
import java.util.Optional;

/**
 * Where and when a sheet was printed.
 *
 * @param logName name of the log that the trials stand in
 * @param programVersion version of charline
 * @param printedAt moment of printing
 * @param by who printed it, if known
 */
public record SheetStamp(
    String logName, String programVersion, OffsetDateTime printedAt, Optional<String> by) {
  public SheetStamp {
    Objects.requireNonNull(logName, "Say which log the sheet is printed from.");
    Objects.requireNonNull(programVersion, "Say which version prints the sheet.");
    Objects.requireNonNull(printedAt, "Say when the sheet is printed.");
    Objects.requireNonNull(by);
  }

  /** Log, version, day and person. */
  String inShort() {
    return "%s, charline %s, %s%s"
        .formatted(
            logName, programVersion, printedAt.toLocalDate(), by.map(who -> ", " + who).orElse(""));
  }
}
