package charline.cli;

import charline.log.Logbook;
import charline.log.Photo;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * Writes a log and its trial sheet as this version of the program makes them, to be kept under
 * {@code src/test/resources/old} when a version is released: patches of the boathouse, an amended
 * one, a void one, a power check, plans and a photograph, in a file that nobody may change
 * afterwards.
 */
final class ReleasedLog {
  private static final Path OLD = Path.of("src/test/resources/old");

  private ReleasedLog() {}

  public static void main(String[] args) throws IOException {
    Path folder = Files.createTempDirectory("released");
    Path samples = Path.of("sample-trials");
    Shell shell = new Shell(folder).at("2026-11-02T09:00:00Z");
    shell.mustDo(
        "import %1$s/latex-on-pine.csv %1$s/alkyd-on-pine-cw.csv --rigs %1$s/rigs.csv --power-checks %1$s/power-checks.csv"
            .formatted(samples));
    shell.mustDo("patch add --like LP-24 --hand 1.2in/s --outcome residue --note \"north wall\"");
    shell.mustDo("patch read last --passes 2 --outcome tint");
    shell.mustDo("patch amend LP-01 --note \"judged by lamp\" --why \"found in the notebook\"");
    shell.mustDo("patch void LP-02 --why \"on a knot\"");
    shell.mustDo("next latex pine --count 2 --to " + folder.resolve("list.html"));
    shell.mustDo(
        "patch add --plan P-0002 --board \"wall panel offcut 4\" --passes 2 --outcome clean");
    String ladder = "next varnish ash --rig heron --count 4 --to " + folder.resolve("ladder.html");
    shell.mustDo(ladder); // whose steps hang on each other
    photograph(folder.resolve("boathouse.db"));
    Files.createDirectories(OLD);
    String version = "version-" + Logbook.newestVersion();
    Path log = OLD.resolve(version + ".db");
    Files.deleteIfExists(log);
    shell.mustDo("backup " + log);
    shell.mustDo("export --replace --to " + OLD.resolve(version + ".csv"));
  }

  private static void photograph(Path file) {
    Clock clock = Clock.systemDefaultZone();
    try (Logbook log = Logbook.openExisting(file, clock)) {
      byte[] content = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10};
      Photo photo =
          new Photo(
              log.newId(),
              "lp-01.png",
              "image/png",
              content,
              OffsetDateTime.now(clock),
              Optional.of("by daylight"));
      log.addPhoto("LP-01", photo, "Ada");
    }
  }
}
