package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code prior}, and {@code prior --from-log} on two sample sheets. */
class PriorCommandTest {
  private static final Path SAMPLES = Path.of("sample-trials");

  @TempDir static Path folder;
  private static Shell shell;
  private static Path written;

  @BeforeAll
  static void learn_from_two_sheets() {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    shell.mustDo(
        "import %s %s --rigs %s --power-checks %s"
            .formatted(
                SAMPLES.resolve("latex-on-pine.csv"),
                SAMPLES.resolve("shellac-on-oak.csv"),
                SAMPLES.resolve("rigs.csv"),
                SAMPLES.resolve("power-checks.csv")));
    written = folder.resolve("shop.prior");
    shell.mustDo("prior --from-log latex pine --to " + written);
  }

  @Test
  void a_prior_learned_from_the_log_starts_another_shop() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    Shell next = Shell.withBench(other);
    String line = "next latex pine --count 1 --rig Heron --json";

    assertThat(next.run(line + " --prior " + written).code()).isZero();
    assertThat(next.run(line + " --prior " + written).out()).isNotEqualTo(next.run(line).out());
  }

  @Test
  void what_is_written_is_what_is_printed() throws IOException {
    assertThat(shell.run("prior --from-log latex over pine").out())
        .isEqualTo(Files.readString(written));
    assertThat(shell.run("prior --from-log").out()).isNotEqualTo(Files.readString(written));
    assertThat(Files.readAllLines(written)).allMatch(line -> line.length() <= 80);
    assertThat(Files.readString(written))
        .doesNotContainIgnoringCase("heron")
        .doesNotContain("latex on", "wall panel", "2026-");
  }

  @Test
  void a_file_that_is_there_stays_unless_it_may_be_replaced() throws IOException {
    Path kept = Files.writeString(folder.resolve("kept.prior"), "char dose = 30 x/ 4\n");

    assertThat(shell.run("prior --to " + kept))
        .isEqualTo(
            new Shell.Result(
                2,
                "",
                kept + " already exists; give another name, or --replace to overwrite it.\n"));
    assertThat(Files.readString(kept)).isEqualTo("char dose = 30 x/ 4\n");
    assertThat(shell.run("prior --replace --to " + kept).out())
        .isEqualTo("%s written; give it to any question with --prior %s.\n".formatted(kept, kept));
    assertThat(Files.readString(kept)).isEqualTo(shell.run("prior").out());
  }

  @Test
  void json_says_how_many_strata_and_patches_each_line_rests_on() {
    Map<String, Object> json = shell.json("prior --from-log latex pine --json");
    Map<?, ?> first = (Map<?, ?>) ((List<?>) json.get("priors")).get(0);

    assertThat(first.get("line").toString()).startsWith("pulsed char dose = ");
    assertThat((Integer) first.get("strata")).isPositive();
    assertThat((Integer) first.get("patches")).isGreaterThanOrEqualTo(24);
    Map<?, ?> pulsed = (Map<?, ?>) ((Map<?, ?>) json.get("from_log")).get("pulsed");
    assertThat(pulsed.get("wavelength_nm")).isEqualTo(1064);
  }

  @Test
  void words_that_mean_nothing_here_are_refused(@TempDir Path empty) {
    assertThat(shell.run("prior latex pine").err())
        .isEqualTo(
            "FAMILY WOOD: the usual priors are the same for all; name trials with --from-log"
                + " only.\n");
    assertThat(shell.run("prior --from-log lattex").err()).contains("latex");
    assertThat(shell.run("prior --from-log varnish ash").err())
        .startsWith("The log has no patches of that coating or on that wood; it has ");
    assertThat(Shell.withBench(empty).run("prior --from-log").err())
        .isEqualTo(
            "The log has no patches yet, so no priors can be learned from it; record test patches"
                + " first.\n");
  }
}
