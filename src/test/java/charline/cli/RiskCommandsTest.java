package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import charline.quantity.Figures;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The risk of one setting, asked at the terminal. */
class RiskCommandsTest {
  private static final String SETTING = "risk latex pine --power 64% --hand 41mm/s --passes 2";

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void import_the_boathouse() {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    shell.mustDo(
        "import sample-trials/latex-on-pine.csv sample-trials/alkyd-on-pine-cw.csv"
            + " --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv");
  }

  private static double upper(String command) {
    return ((Number) shell.json(command).get("char_risk_upper")).doubleValue();
  }

  @Test
  void plain_words_come_before_figures() {
    Shell.Result result = shell.run(SETTING);

    assertThat(result.code()).isZero();
    assertThat(result.flat())
        .startsWith(
            "latex on pine, pulsed 1064 nm, rig heron, on a board not seen yet: 64 %, hand 41 mm/s,"
                + " 2 passes. BEFORE THE BEAM: lead: not tested. May char up to 1 in ")
        .containsPattern("areas \\((within|over) 5 %\\); clears at least \\d+ in \\d+ \\(")
        .contains("This setting lies inside what was tried.")
        .containsPattern("char risk [\\d.]+ % at most [\\d.]+ %")
        .containsPattern("charred spots per m² [\\d.]+ at most [\\d.]+")
        .containsPattern("clearing chance [\\d.]+ % at least [\\d.]+ %")
        .contains("Each bound has 90 % confidence, per 30 cm² on a board not seen yet, seams")
        .doesNotContain("UNTRIED");
  }

  @Test
  void the_same_in_json() {
    Map<String, Object> json = shell.json(SETTING + " --json");

    assertThat(json)
        .containsKeys(
            "stratum",
            "rig",
            "asked",
            "evidence",
            "setting",
            "char_risk_mean",
            "char_risk_upper",
            "clear_chance_mean",
            "clear_chance_lower",
            "charred_spots_per_m2")
        .containsEntry("tried", true)
        .containsEntry("reliable", true)
        .containsEntry("piece", null)
        .containsEntry("prior", null)
        .containsEntry("beyond", List.of())
        .containsEntry("untried", List.of());
    assertThat(((Map<?, ?>) json.get("setting")).get("dose_j_cm2")).isNotNull();
  }

  @Test
  void the_start_of_a_window_has_the_same_risk_either_way() {
    Map<?, ?> start = (Map<?, ?>) shell.json("window latex pine --json").get("start");
    Map<String, Object> risk =
        shell.json(
            "risk latex pine --json --power %s%% --hand %s --passes %s"
                .formatted(start.get("power_pct"), start.get("hand_mm_s"), start.get("passes")));

    for (String key : List.of("char_risk_upper", "clear_chance_lower", "char_risk_mean")) {
      assertThat(((Number) risk.get(key)).doubleValue())
          .as(key)
          .isCloseTo(
              ((Number) start.get(key)).doubleValue(),
              org.assertj.core.data.Offset.offset(1e-4)); // the start is printed in few digits
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " --overlap 0%", " --overlap 25%"})
  void removal_and_risk_give_one_area_rate_for_one_setting(String overlap) {
    Map<?, ?> rate =
        (Map<?, ?>)
            ((List<?>) shell.json("removal latex pine --json" + overlap).get("rates")).get(0);
    String settings = (String) rate.get("settings");
    Matcher dialled = Pattern.compile("([\\d.]+) %.*?([\\d.]+) mm/s").matcher(settings);
    assertThat(dialled.find()).as(settings).isTrue();
    Map<?, ?> passes = (Map<?, ?>) rate.get("passes_for_90_pct");
    int whole = (int) Math.ceil(((Number) passes.get("median")).doubleValue());
    String risk =
        shell.flat(
            "risk latex pine --power %s%% --hand %s --passes %d%s"
                .formatted(dialled.group(1), dialled.group(2), whole, overlap));
    double net = ((Number) rate.get("net_area_rate_cm2_min")).doubleValue();
    assertThat(risk).contains("net rate, cm2/min " + Figures.three(net) + " ");
  }

  @Test
  void an_overlap_is_no_matter_of_a_classical_fit() {
    assertThat(shell.run("removal latex pine --classical ml --overlap 20%").err())
        .isEqualTo("--overlap: a classical fit gives no area rate; leave one of the two out.\n");
    assertThat(shell.flat("removal latex pine"))
        .contains("in strokes that overlap by 10 %. It ignores char");
    assertThat(shell.flat("removal latex pine --overlap 0"))
        .contains("clear 90 % of patches. It ignores char");
  }

  @Test
  void what_was_not_tried_is_named() {
    assertThat(shell.flat("risk latex pine --power 100% --hand 4mm/s --passes 3"))
        .contains("UNTRIED: a higher dose than any trial")
        .contains("a hand speed of 4 mm/s (tried: ")
        .contains("Beyond the trials these figures are a guess.")
        .doesNotContain("inside what was tried");
    Map<String, Object> json = shell.json("risk latex pine --power 100% --hand 4mm/s --json");
    assertThat(json).containsEntry("tried", false);
    assertThat((List<?>) json.get("beyond")).isNotEmpty();
    assertThat((List<?>) json.get("untried")).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource({"--confidence 99%", "--overlap 40%", "--piece 'wall panel offcut 1'"})
  void every_option_of_a_question_counts(String option) {
    assertThat(upper(SETTING + " --json " + option.replace('\'', '"')))
        .isNotEqualTo(upper(SETTING + " --json"));
  }

  @Test
  void more_strokes_over_the_same_wood_risk_more() {
    assertThat(upper(SETTING + " --json --overlap 40%"))
        .isGreaterThan(upper(SETTING + " --json --overlap 0%"));
  }

  @Test
  void a_piece_is_compared_with_any_other_board() {
    String piece = SETTING + " --piece \"wall panel offcut 1\"";
    assertThat(shell.flat(piece))
        .contains("on wall panel offcut 1: 64 %, hand 41 mm/s")
        .contains("For board wall panel offcut 1 alone: it rests on 6 patches of its own.")
        .contains("On any other board it may char up to 1 in ")
        .contains("per 30 cm² on wall panel offcut 1,")
        .doesNotContain("not seen yet");
    Map<?, ?> own = (Map<?, ?>) shell.json(piece + " --json").get("piece");
    assertThat(own.get("board")).isEqualTo("wall panel offcut 1");
    assertThat(((Map<?, ?>) own.get("general")).get("char_risk_upper")).isNotNull();
  }

  @Test
  void a_job_and_own_priors_are_said() throws IOException {
    Path priors = Files.writeString(folder.resolve("own.prior"), "char dose = 40 x/ 1.5\n");
    assertThat(shell.flat(SETTING + " --job-area 4.5m2 --prior " + priors))
        .contains("Job of 4.5 m², 1500 areas of 30 cm²: chance of any char at this setting ")
        .contains("Priors: from own.prior, in place of the usual priors.")
        .contains("Boards: as the file of priors says; nothing is learned from the log.");
    assertThat(shell.json(SETTING + " --json --prior " + priors).get("prior"))
        .isEqualTo(Map.of("file", priors.toString()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --power 60% | --hand: the speed is missing; give --hand or --scan.
          --power 60% --hand 30 --scan 3000 | --hand: give --hand or --scan, not both.
          --power 60% --scan 3000 | --scan: these patches were led by hand; give --hand, or the spacing with --at spacing=0.1mm.
          --power 60% --hand 30 --at spacing=0.1mm | --hand: a line spacing goes with a scan speed; give --scan, or a width with --at.
          --power 0% --hand 30 | Power must be above 0 %, not 0 %.
          --power 60% --hand 0 | --hand must be above 0 mm/s, not 0 mm/s.
          --power 60% --hand 30 --passes 0 | --passes: the number of passes must be a whole number, 1 or more, not "0".
          """)
  void what_cannot_be_meant_is_refused_in_a_sentence(String options, String sentence) {
    Shell.Result result = shell.run("risk latex pine " + options);

    assertThat(result.code()).isEqualTo(2);
    assertThat(result.err().strip()).isEqualTo(sentence);
    assertThat(result.out()).isEmpty();
  }

  @Test
  void a_scanner_and_watts_may_be_asked_about_too() {
    Map<?, ?> setting =
        (Map<?, ?>)
            shell
                .json("risk latex pine --power 150W --scan 3m/s --at spacing=0.1mm --json")
                .get("setting");
    assertThat(setting.get("power_w")).isEqualTo(150);
    assertThat(setting.get("scan_mm_s")).isEqualTo(3000);
    assertThat(shell.flat("risk alkyd pine --rig otter --power 20% --hand 45"))
        .startsWith("alkyd on pine, cw 1080 nm, rig otter");
  }

  @Test
  void no_figure_is_shown_where_the_models_do_not_fit(@TempDir Path own) throws IOException {
    Shell fresh = new Shell(own).at("2026-11-01T09:00:00Z");
    StringBuilder sheet =
        new StringBuilder(
            "patch,burned_at,rig,board,wood,finish,family,power_pct,rep_khz,pulse_ns,spot_mm,"
                + "width_mm,hand_mm_s,passes,outcome,patch_cm2\n");
    for (int k = 0; k < 24; k++) { // the cooler, the sooner it chars
      sheet.append(
          "Q-%02d,2026-10-%02dT10:00+01:00,heron,slat %d,pine,wall,latex,60,60,100,0.5,60,%d,3,%s,25\n"
              .formatted(k, k + 1, k % 4, 10 + 2 * k, k < 12 ? "clean" : "char"));
    }
    Path file = Files.writeString(own.resolve("odd.csv"), sheet);
    fresh.mustDo(
        "import %s --sure --rigs sample-trials/rigs.csv --power-checks".formatted(file)
            + " sample-trials/power-checks.csv");

    Shell.Result result = fresh.run("risk latex pine --power 60% --hand 30 --passes 3");
    assertThat(result.code()).isEqualTo(3);
    assertThat(result.flat())
        .contains("The models do not fit the trials of latex on pine")
        .doesNotContain("at most");
    assertThat(
            JSON.std.mapFrom(
                fresh.run("risk latex pine --power 60% --hand 30 --passes 3 --json").out()))
        .containsEntry("reliable", false)
        .containsEntry("char_risk_upper", null)
        .containsEntry("charred_spots_per_m2", null);
  }

  @Test
  void a_coat_that_the_beam_stays_off_has_no_risk(@TempDir Path own) {
    Shell fresh = Shell.withBench(own);
    Shell.Result result = fresh.run("risk \"pvc film\" pine --power 60% --hand 30");
    assertThat(result.code()).isEqualTo(1);
    assertThat(result.out()).contains("no beam");
  }
}
