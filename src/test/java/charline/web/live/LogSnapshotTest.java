package charline.web.live;

import static org.assertj.core.api.Assertions.assertThat;

import charline.ask.Question;
import charline.cli.Main;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.search.Vocabulary;
import java.io.ByteArrayInputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Questions are answered from what was read of the log once. */
class LogSnapshotTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-20T09:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  private void charline(String line) {
    assertThat(
            Main.run(
                ("--log " + folder.resolve("boathouse.db") + " " + line).split(" "),
                new ByteArrayInputStream(new byte[0]),
                new PrintStream(PrintStream.nullOutputStream()),
                System.err,
                Map.of("CHARLINE_BY", "Runa"),
                CLOCK))
        .isZero();
  }

  private static Question question(Logbook log, String words) {
    return words.isEmpty()
        ? Question.EVERYTHING
        : Question.parse(List.of(words), Vocabulary.of(log), Optional.of("Runa"), CLOCK);
  }

  @Test
  void a_question_finds_in_the_snapshot_what_it_finds_in_the_log_and_reads_no_patch_again() {
    charline(
        "import sample-trials/latex-on-pine.csv sample-trials/shellac-on-oak.csv --rigs"
            + " sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv");
    charline("patch void LP-03 --why mistyped");
    try (Logbook log = Logbook.open(folder.resolve("boathouse.db"), CLOCK)) {
      LogSnapshot shelf = LogSnapshot.read(log, 1, log.state());
      for (String words :
          List.of(
              "",
              "clean latex over pine",
              "char since 2026-09-04",
              "dose over 10",
              "photo",
              "highest dose clean")) {
        Question question = question(log, words);
        List<PatchEntry> found = shelf.patches(log, question);
        assertThat(found).as(words).isEqualTo(question.patches(log));
        assertThat(found)
            .as(words)
            .allSatisfy(e -> assertThat(shelf.entries()).anyMatch(known -> known == e));
      }
      assertThat(shelf.patches(log, question(log, "void")))
          .as("void ones are only in the log")
          .extracting(e -> e.patch().code())
          .containsExactly("LP-03");
    }
  }
}
