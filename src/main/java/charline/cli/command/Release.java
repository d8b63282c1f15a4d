package charline.cli.command;

import charline.quantity.Figures;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Properties;

/** Which charline this is. */
public final class Release {
  /** Javas are put right several times a year. */
  private static final int AGED_MONTHS = 12;

  private Release() {}

  /** The version that the program was built as. */
  public static String version() {
    Properties release = new Properties();
    try (InputStream in = Release.class.getResourceAsStream("release.properties")) {
      release.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return release.getProperty("version");
  }

  /**
   * Which Java this is and how old: it comes with the installed program and is not updated by the
   * system.
   *
   * @param released when it was released, as {@code java.version.date} has it
   */
  public static String java(String released, LocalDate today) {
    String version =
        "Java %d.%d.%d"
            .formatted(
                Runtime.version().feature(),
                Runtime.version().interim(),
                Runtime.version().update());
    if (!released.matches("\\d{4}-\\d{2}-\\d{2}")) {
      return version;
    }
    long months = ChronoUnit.MONTHS.between(LocalDate.parse(released), today);
    String age = months < 1 ? "new" : Figures.count(months, "month", "months") + " old";
    return "%s of %s, %s%s"
        .formatted(
            version,
            released,
            age,
            months < AGED_MONTHS ? "" : "; update it, or install a newer charline");
  }
}
