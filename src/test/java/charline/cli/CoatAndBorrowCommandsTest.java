package charline.cli;

import static charline.cli.Shell.part;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Mixed coats and borrowing, on the sample trials and a darkened, thicker copy of one of them. */
class CoatAndBorrowCommandsTest {
  private static final Path SAMPLES = Path.of("sample-trials");

  private static final Map<String, Shell.Result> ANSWERS = new HashMap<>();

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void import_the_boathouse() throws IOException {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    String pale = Files.readString(SAMPLES.resolve("latex-on-pine.csv"));
    List<String> lines = pale.lines().toList();
    Path dark = folder.resolve("dark.csv");
    Files.write(
        dark,
        Stream.concat(
                lines.stream().limit(1),
                lines.stream()
                    .skip(1)
                    .filter(line -> line.compareTo("LP-17") < 0)
                    .map(
                        line ->
                            line.replace("LP-", "LD-")
                                .replace("wall panel latex", "shutter latex")
                                .replace(",pale,", ",dark,")
                                .replace("latex:pale:50um", "latex:dark:110um")))
            .toList());
    String sheets;
    try (Stream<Path> files = Files.list(SAMPLES)) {
      sheets =
          String.join(
              " ",
              files
                  .map(Path::toString)
                  .filter(name -> name.contains("-on-") && name.endsWith(".csv"))
                  .sorted()
                  .toList());
    }
    shell.mustDo(
        "import %s %s --rigs %s --power-checks %s"
            .formatted(
                sheets, dark, SAMPLES.resolve("rigs.csv"), SAMPLES.resolve("power-checks.csv")));
  }

  /** Fits take seconds, and nothing changes this log: a question is asked once. */
  private static Shell.Result answer(String line) {
    return ANSWERS.computeIfAbsent(line, shell::run);
  }

  private static String told(String line) {
    return answer(line).flat();
  }

  @Test
  void a_risk_names_the_coat_that_it_is_for_as_a_window_does() {
    String risk = "risk latex pine --power 50% --hand 30 --passes 2";
    assertThat(told(risk)).contains("For a pale coat of 50 um. Found in these trials: pale takes ");
    assertThat(told(risk + " --tone dark")).contains("For a dark coat of 110 um. Found in ");
    assertThat(shell.json(risk + " --json").get("way").toString()).startsWith("For a pale coat");
    assertThat(told("risk varnish ash --power 50% --hand 30")).doesNotContain("Found in these");
  }

  /** Two models fitted apart may say that what is easier is less likely; that is no finding. */
  @Test
  void accepting_tint_that_leaves_less_is_named() {
    String said =
        "a patch without tint is clear either way, so too few were left with tint to tell";
    assertThat(told("window varnish ash --accept-tint"))
        .containsPattern("MIND: With tint accepted the start setting clears at least \\d+ %, ")
        .contains(said);
    assertThat(told("window varnish ash")).doesNotContain(said);
    assertThat(told("window shellac oak --accept-tint")).doesNotContain(said);
    assertThat(shell.json("window varnish ash --accept-tint --json").get("provisos").toString())
        .contains(said);
  }

  @Test
  void the_risk_of_a_setting_has_the_same_provisos_as_a_window() {
    String risk = "risk varnish ash --power 60% --hand 30mm/s";
    String said =
        "a patch without tint is clear either way, so too few were left with tint to tell";
    assertThat(told(risk + " --accept-tint"))
        .containsPattern(
            "MIND: With tint accepted this setting clears at least \\d+ %, without it ")
        .contains(said, ", tint accepted. ");
    assertThat(told(risk)).doesNotContain("MIND: ", "tint accepted");
    String cool = "risk varnish ash --power 40% --hand 45mm/s --risk 1%";
    assertThat(told(cool))
        .contains("(within 1 %)")
        .contains("MIND: At a char risk of 1 %, 26 patches most likely show no char at all: ");
    assertThat(shell.json(cool + " --json").get("provisos").toString())
        .contains("most likely show no char at all");
    assertThat(told(risk + " --risk 0.1%"))
        .contains("(over 0.1 %)")
        .doesNotContain("show no char at all");
    assertThat(told(risk + " --passes 4 --overlap 10%"))
        .contains("MIND: A seam between two strokes gets 8 passes, and no patch was read beyond ");
  }

  @Test
  void a_window_is_for_one_tone_and_says_what_tone_was_found_to_count() {
    assertThat(told("window latex pine"))
        .contains("For a pale coat of 50 um. Found in these trials: pale takes ")
        .contains("twice as thick takes ")
        .contains("Patches: 24 pale, 16 dark.");
    assertThat(told("window latex pine --tone dark --thickness 4mil"))
        .contains("For a dark coat of 102 um.");
  }

  @Test
  void few_patches_taken_alone_are_told_that_others_could_lend() {
    assertThat(told("window shellac oak"))
        .contains(
            "Judged alone: nothing was borrowed from the log's other trials with this light (5"
                + " strata, ")
        .contains("). Add --borrow to use them as a prior.");
    assertThat(told("window shellac oak --borrow")).doesNotContain("Judged alone");
    assertThat(told("window varnish ash")).doesNotContain("Judged alone");
  }

  @Test
  void removal_shows_both_terms_and_json_has_them() {
    assertThat(told("removal latex pine")).contains("pale over dark ", "weight of ln coat thick");
    Map<String, Object> coat = part(json("removal latex pine --tone dark --json"), "coat");
    assertThat(coat).containsEntry("tone", "dark");
    assertThat(part(coat, "pale_over_dark")).containsKeys("median", "low", "high");
    Map<String, Object> alike = part(json("window varnish ash --json"), "coat");
    assertThat(alike).containsEntry("tone", "mid").containsEntry("pale_over_dark", null);
  }

  @Test
  void a_classical_fit_says_that_it_takes_all_coats_as_one() {
    assertThat(told("removal latex pine --classical firth"))
        .contains(
            "the classical fit treats trials of every tone and thickness as one, while the"
                + " posterior is for one way of working");
    assertThat(told("removal varnish ash --classical firth")).doesNotContain("trials of every");
  }

  @Test
  void a_quote_names_the_coat_that_its_hours_are_for() {
    assertThat(told("quote latex pine --area 2 --tone dark --thickness 4mil"))
        .containsPattern("For a dark coat of 102 um\\. Found|there is none for latex");
  }

  @Test
  void a_sheet_names_the_coat_it_is_for() throws IOException {
    Path sheet = folder.resolve("dark.html");
    shell.run("sheet latex pine --tone dark --to " + sheet);
    assertThat(Files.readString(sheet)).contains("latex on pine, dark coat, 110 µm");
  }

  @Test
  void a_tone_or_thickness_that_was_not_tried_is_refused() {
    assertThat(shell.run("window latex pine --tone mid"))
        .isEqualTo(
            new Shell.Result(
                2,
                "",
                "The tone must be one that was tried, not mid: patches of latex on pine, pulsed"
                    + " 1064 nm have pale and dark coats only.\n"));
    assertThat(shell.run("window latex pine --tone black").err())
        .isEqualTo("A tone must be pale, mid or dark, not \"black\".\n");
    assertThat(shell.run("window latex pine --thickness 20").err())
        .startsWith("The thickness must be within what was tried, not 20 um: coats of latex on");
  }

  @Test
  void borrowing_names_the_lenders_and_the_weight_left_to_them() {
    assertThat(told("window shellac oak --borrow"))
        .contains("Borrowed for char: primer on oak (")
        .contains(
            "Borrowed for clearing: ", "These trials give that ", " and the usual prior the rest.");
    assertThat(told("onset shellac oak --borrow")).contains("Borrowed for char: ");
    assertThat(told("window shellac oak")).doesNotContain("Borrowed");
    Map<String, Object> borrowed = part(json("window shellac oak --borrow --json"), "borrowed");
    assertThat((List<?>) part(borrowed, "char").get("from")).isNotEmpty();
    assertThat(part(json("window shellac oak --json"), "borrowed"))
        .containsEntry("char", null)
        .containsEntry("clearing", null);
  }

  @Test
  void borrowing_alone_makes_no_promise_from_few_patches() {
    Shell.Result result = answer("window shellac oak --borrow");
    assertThat(result.code()).isEqualTo(1);
    assertThat(result.out()).contains("no window yet.");
  }

  @Test
  void other_light_lends_nothing() {
    assertThat(told("onset alkyd pine --borrow")).doesNotContain("Borrowed");
  }

  @Test
  void lines_stay_within_the_page() {
    for (String line : List.of("window latex pine --borrow", "removal latex pine --borrow")) {
      assertThat(shell.run(line).out().lines()).allMatch(text -> text.length() <= 80);
    }
  }

  private static Map<String, Object> json(String line) {
    return answer(line).json();
  }
}
