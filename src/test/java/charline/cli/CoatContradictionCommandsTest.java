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

/** Trials that contradict their coat say so; the sample trials agree with themselves. */
class CoatContradictionCommandsTest {
  private static final Path SAMPLES = Path.of("sample-trials");
  @TempDir static Path thickFolder;
  @TempDir static Path sampleFolder;
  private static Shell thick;
  private static Shell sample;

  /** The sample latex, once as it is and once with a coat typed nearly twice as thick. */
  @BeforeAll
  static void import_both() throws IOException {
    Path sheet = SAMPLES.resolve("latex-on-pine.csv");
    sample = imported(sampleFolder, sheet);
    Path doubled = thickFolder.resolve("latex.csv");
    Files.writeString(
        doubled, Files.readString(sheet).replace("latex:pale:50um", "latex:pale:95um"));
    thick = imported(thickFolder, doubled);
  }

  private static Shell imported(Path folder, Path sheet) {
    Shell shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    shell.mustDo(
        "import %s --rigs %s --power-checks %s"
            .formatted(sheet, SAMPLES.resolve("rigs.csv"), SAMPLES.resolve("power-checks.csv")));
    return shell;
  }

  private static String words(Shell shell, String line) {
    return shell.run(line).out().replaceAll("\\s+", " ");
  }

  @Test
  void removal_says_that_gauge_and_coat_differ_in_depth_and_in_pace() {
    assertThat(words(thick, "removal latex pine"))
        .contains("MIND: The finish was gone from LP-01, LP-02, ")
        .contains("MIND: The gauge says ")
        .contains(", but the coat's thickness over the passes that clear it makes ");
    List<?> found = (List<?>) thick.run("removal latex pine --json").json().get("contradictions");
    assertThat(found.stream().map(each -> ((Map<?, ?>) each).get("kind")).toList())
        .isEqualTo(List.of("gone_too_soon", "um_per_pass"));
  }

  @Test
  void window_quote_and_sheet_say_it_beside_the_answer() throws IOException {
    for (String command : List.of("window latex pine", "quote latex pine --area 2m2")) {
      assertThat(words(thick, command))
          .as(command)
          .contains("MIND: The finish was gone from LP-01");
      assertThat(words(sample, command)).as(command).doesNotContain("MIND: The");
    }
    Path page = thickFolder.resolve("sheet.html");
    thick.mustDo("sheet latex pine --to " + page);
    assertThat(Files.readString(page)).contains("The finish was gone from LP-01");
  }

  @Test
  void check_lists_every_patch_that_contradicts_its_coat_and_none_of_the_sample() {
    Shell.Result found = thick.run("check");
    assertThat(found.code()).isEqualTo(1);
    assertThat(found.out().replaceAll("\\s+", " "))
        .contains("LP-02: After 2 passes the finish is gone with no more than 36 um removed");
    assertThat(sample.run("check").code()).isZero();
  }

  @Test
  void where_one_pass_clears_a_pass_lifts_the_coat_or_more() {
    assertThat(words(sample, "removal latex pine")).contains(" 50 or more ").doesNotContain("MIND");
    Map<?, ?> json = sample.run("removal latex pine --json").json();
    List<?> rates = (List<?>) json.get("rates");
    Map<?, ?> cold = (Map<?, ?>) rates.get(0);
    Map<?, ?> hot = (Map<?, ?>) rates.get(rates.size() - 1);
    assertThat(cold.get("um_per_pass_or_more")).isEqualTo(false);
    assertThat(hot.get("um_per_pass_or_more")).isEqualTo(true);
    // By the gauge and by the coat, the sample's first setting lifts about as much.
    assertThat(number(cold, "um_per_pass_gauged") / number(cold, "um_per_pass"))
        .isBetween(1 / 1.5, 1.5);
    assertThat((List<?>) json.get("contradictions")).isEmpty();
  }

  private static double number(Map<?, ?> json, String key) {
    return ((Number) json.get(key)).doubleValue();
  }

  @Test
  void a_depth_at_clean_far_below_the_coat_is_doubted_when_it_is_recorded(@TempDir Path folder) {
    Shell shell = Shell.withBench(folder);
    String patch =
        "patch add --board boathouse-1 --finish wall-latex --rig Heron --power 50%% --hand 20mm/s"
            + " --passes 2 --outcome %s --depth 40um";
    assertThat(shell.run(patch.formatted("clean")).err().replaceAll("\\s+", " "))
        .contains(
            "After 2 passes the finish is gone with 40 um removed, but the coat is 90 um thick;"
                + " check the depth, the outcome and the coat's thickness, or add --sure.");
    shell.mustDo(patch.formatted("residue"));
    assertThat(shell.run("patch read 1 --passes 3 --outcome clean").err().replaceAll("\\s+", " "))
        .contains("After 3 passes the finish is gone with no more than 60 um removed at the pace");
    shell.mustDo("patch read 1 --passes 3 --outcome clean --sure");
  }
}
