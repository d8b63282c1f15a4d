package charline.ask;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.Photo;
import charline.log.database.Where;
import charline.log.sheet.RigSheet;
import charline.log.sheet.TrialSheet;
import charline.log.sheet.TrialSheetImporter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The log that the questions of the table are put to: the sample trials and some more of the same
 * boathouse, of which two are void and three have photos. Runa asks.
 */
final class AskedLog {
  static final String ASKER = "Runa";

  /** A Wednesday in winter time. */
  static final Clock CLOCK =
      Clock.fixed(
          OffsetDateTime.parse("2026-11-25T14:30:00+01:00").toInstant(),
          ZoneId.of("Europe/Berlin"));

  static final Set<String> VOID = Set.of("BH-03", "LP-07");
  static final Set<String> PHOTOGRAPHED = Set.of("BH-02", "BH-14", "AP-05");

  private static final Path SAMPLES = Path.of("sample-trials");
  private static final Path OWN = Path.of("src/test/resources/ask");

  private AskedLog() {}

  static Logbook in(Path folder) {
    Logbook log = Logbook.open(folder.resolve("asked.db"), CLOCK);
    RigSheet.read(SAMPLES.resolve("rigs.csv"), SAMPLES.resolve("power-checks.csv"))
        .addTo(log, CLOCK, ASKER);
    RigSheet.read(OWN.resolve("rigs.csv")).addTo(log, CLOCK, ASKER);
    TrialSheetImporter importer = new TrialSheetImporter(log, CLOCK);
    sheets().forEach(sheet -> importer.add(TrialSheet.read(sheet), true));
    VOID.forEach(code -> log.voidPatch(code, ASKER, "wrong board"));
    PHOTOGRAPHED.forEach(
        code ->
            log.addPhoto(
                code,
                new Photo(
                    log.newId(),
                    code + ".jpg",
                    "image/jpeg",
                    code.getBytes(StandardCharsets.UTF_8),
                    OffsetDateTime.now(CLOCK),
                    Optional.empty()),
                ASKER));
    return log;
  }

  private static List<Path> sheets() {
    try (var files = Files.list(SAMPLES)) {
      List<Path> all =
          new ArrayList<>(files.filter(f -> f.toString().contains("-on-")).sorted().toList());
      all.add(OWN.resolve("trials.csv"));
      return all;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every patch, void ones too. */
  static List<PatchEntry> everything(Logbook log) {
    return log.patches(new Where("1"));
  }
}
