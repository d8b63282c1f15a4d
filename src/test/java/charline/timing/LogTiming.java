package charline.timing;

import charline.log.Logbook;
import charline.trial.FamilyFacts;
import charline.trial.WoodFacts;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** A large log: bringing it in, asking it, and finding every window in it. */
final class LogTiming {
  private static final Path RIGS = Path.of("sample-trials/rigs.csv").toAbsolutePath();

  private static final int IMPORTS = 3;

  private final String charline;
  private final Path folder;
  private final List<String> strata;

  LogTiming(Path charline, Path folder) {
    this.charline = charline.toString();
    this.folder = folder;
    strata = strata(folder);
  }

  private static List<String> strata(Path folder) {
    List<String> strata = new ArrayList<>();
    try (Logbook log = Logbook.open(folder.resolve("words.db"), Clock.systemUTC())) {
      for (FamilyFacts family : log.reference().families()) {
        for (WoodFacts wood : log.reference().woods()) {
          if (strata.size() < 200 && !wood.name().contains(",")) {
            strata.add(family.name() + "," + wood.name());
          }
        }
      }
    }
    return strata;
  }

  private Path imported(int readings) throws Exception {
    Path log = folder.resolve(readings + ".db");
    Path sheet = folder.resolve(readings + ".csv");
    BigSheet.write(sheet, readings, strata, readings);
    importInto(log, sheet);
    return log;
  }

  private Run importInto(Path log, Path sheet) throws Exception {
    return Run.of(
        folder,
        charline,
        "--log",
        log.toString(),
        "import",
        "--sure",
        "--rigs",
        RIGS.toString(),
        sheet.toString());
  }

  List<Timing.Line> lines() throws Exception {
    int readings = Timing.READINGS;
    Path sheet = folder.resolve("big.csv");
    Path log = folder.resolve("big.db");
    BigSheet.write(sheet, readings, strata, 7);
    Run ours = importInto(log, sheet);
    Path emptied = folder.resolve("emptied.db");
    Path shellLog = folder.resolve("shell.db");
    Path script = folder.resolve("import.sql");
    Files.writeString(script, shellImport(log, emptied, shellLog));
    Run theirs = shell(script, emptied, shellLog);
    Path again = folder.resolve("again.db");
    double[] imported =
        Run.medians(
            IMPORTS,
            () -> {
              Files.deleteIfExists(again);
              return importInto(again, sheet).seconds();
            },
            () -> shell(script, emptied, shellLog).seconds());
    String board = strata.get(3).replace(',', ' ') + " 0";
    String sql =
        """
        SELECT p.code, p.burned_at_utc, p.power_pct, p.hand_speed_mm_s, r.passes, r.outcome
        FROM patch p JOIN board b ON b.id = p.board_id JOIN finish f ON f.id = p.finish_id
          JOIN reading r ON r.patch_id = p.id
        WHERE b.name = '%s' AND p.voided_why IS NULL AND r.voided_why IS NULL
          AND EXISTS (SELECT 1 FROM reading c WHERE c.patch_id = p.id AND c.outcome LIKE '%%char%%')
        ORDER BY p.burned_at_utc, p.recorded, r.passes
        """
            .formatted(board);
    Path oneBoard = oneBoard(sheet, board);
    double[] found =
        Run.medians(
            15,
            () -> find(log, board),
            () -> find(oneBoard, board),
            () -> Run.of(folder, "sqlite3", "-readonly", log.toString(), sql).seconds());
    return List.of(
        new Timing.Line(
            String.format(
                Locale.ROOT,
                "import a trial sheet of %,d readings (%.0f MB at most)",
                readings,
                ours.megabytes()),
            imported[0],
            String.format(
                Locale.ROOT, "sqlite3 shell into the same tables (%.0f MB)", theirs.megabytes()),
            imported[1],
            Timing.Goal.atMost(2, 4),
            "reading and checking every cell, while the shell gets finished rows; the same inserts"
                + " run beside it"),
        new Timing.Line(
            "find char on one board of that log, beyond the %s it takes on a log of that board alone"
                .formatted(Timing.shown(found[1])),
            found[0] - found[1],
            "the same SQL in the shell",
            found[2],
            Timing.Goal.atMost(2, 10),
            "searching the names of all boards for those in the question; an index finds the"
                + " patches of the board"));
  }

  private Run shell(Path script, Path emptied, Path shellLog) throws Exception {
    Files.copy(emptied, shellLog, StandardCopyOption.REPLACE_EXISTING);
    return Run.of(folder, "sh", "-c", "sqlite3 < " + script);
  }

  private double find(Path log, String board) throws Exception {
    return Run.of(folder, charline, "--log", log.toString(), "find", "char", "--board", board)
        .seconds();
  }

  /** A log of the lines of one board, for what a find takes that has nothing to look through. */
  private Path oneBoard(Path sheet, String board) throws Exception {
    Path part = folder.resolve("board.csv");
    try (Stream<String> lines = Files.lines(sheet)) {
      Files.write(
          part,
          (Iterable<String>)
              lines.filter(l -> l.startsWith("patch,") || l.contains("," + board + ","))::iterator);
    }
    Path log = folder.resolve("board.db");
    importInto(log, part);
    return log;
  }

  /** Rows as they ended up in our log, written out first; only reading them back in is timed. */
  private String shellImport(Path log, Path emptied, Path shellLog) throws Exception {
    Files.copy(log, emptied);
    StringBuilder prepare = new StringBuilder();
    for (String table : List.of("patch", "reading")) {
      prepare.append(
          """
          .headers off
          .mode csv
          .output %1$s.csv
          SELECT * FROM %1$s;
          .output
          DROP TRIGGER %1$s_is_never_deleted;
          """
              .formatted(table));
    }
    prepare.append("DELETE FROM reading; DELETE FROM patch; VACUUM;\n");
    for (String table : List.of("patch", "reading")) {
      prepare.append(
          """
          .output %1$s-columns.txt
          SELECT group_concat('nullif("' || name || '", '''')') FROM pragma_table_info('%1$s');
          .output
          """
              .formatted(table)
              .replace("SELECT group_concat", ".mode list\nSELECT group_concat"));
    }
    Path first = folder.resolve("prepare.sql");
    Files.writeString(first, prepare.toString());
    Run.of(folder, "sh", "-c", "sqlite3 " + emptied + " < " + first);
    StringBuilder sql = new StringBuilder(".open " + shellLog + "\n.mode csv\nBEGIN;\n");
    for (String table : List.of("patch", "reading")) {
      String columns = Files.readString(folder.resolve(table + "-columns.txt")).strip();
      sql.append(
          """
          CREATE TEMP TABLE new_%1$s AS SELECT * FROM %1$s LIMIT 0;
          .import --schema temp %1$s.csv new_%1$s
          INSERT INTO %1$s SELECT %2$s FROM new_%1$s;
          """
              .formatted(table, columns));
    }
    return sql.append("COMMIT;\n").toString();
  }

  /** What is done with a large log now and then, one row each. */
  List<String> costs() throws Exception {
    Path log = folder.resolve("big.db");
    Path backups = Files.createDirectories(folder.resolve("backups"));
    List<String> rows = new ArrayList<>();
    rows.add(cost("`find clean latex over pine`", log, "find", "clean", "latex", "over", "pine"));
    rows.add(cost("`check`", log, "check"));
    rows.add(cost("`backup`", log, "backup", backups.resolve("big.db").toString()));
    rows.add(
        cost("`export`, all of it", log, "export", "--to", backups.resolve("big.csv").toString()));
    Path other = Files.copy(folder.resolve("1000.db"), folder.resolve("other.db"));
    rows.add(
        cost(
            "`merge` into a log of 1,000 others, every patch under a new code",
            other,
            "merge",
            "--join",
            "--sure",
            log.toString()));
    return rows;
  }

  private String cost(String what, Path log, String... words) throws Exception {
    List<String> all = new ArrayList<>(List.of(charline, "--log", log.toString()));
    all.addAll(List.of(words));
    Run run = Run.of(folder, all.toArray(String[]::new));
    return String.format(
        Locale.ROOT, "| %s | %.3g | %.0f MB |", what, run.seconds(), run.megabytes());
  }

  /** One row of the table of growth: every window of a log of so many readings. */
  String allWindows(int readings) throws Exception {
    Path log = readings == Timing.READINGS ? folder.resolve("big.db") : imported(readings);
    Run run = Run.of(folder, charline, "--log", log.toString(), "window", "--all");
    return String.format(
        Locale.ROOT, "| %,d | %.3g | %.0f MB |", readings, run.seconds(), run.megabytes());
  }
}
