package charline.cli;

import static charline.cli.Shell.part;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The classical view of the sample trials, which are invented, and of a few bad ones. */
class ClassicalCommandsTest {
  private static final Path SAMPLES = Path.of("sample-trials");
  private static final String HEAD =
      "patch,burned_at,rig,board,wood,finish,family,power_pct,rep_khz,pulse_ns,spot_mm,width_mm,hand_mm_s,passes,outcome\n";

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void import_trials() throws IOException {
    StringBuilder separated = new StringBuilder(HEAD);
    int[] speeds = {60, 50, 40, 30, 20, 15, 10, 8};
    for (int i = 0; i < speeds.length; i++) {
      separated.append(
          "S%d,2026-09-01T09:00+02:00,heron,beam %d,spruce,f,alkyd,50,60,100,0.5,60,%d,1,%s\n"
              .formatted(i + 1, i % 3, speeds[i], i > 3 ? "char" : "residue"));
    }
    Path sheet = Files.writeString(folder.resolve("alkyd.csv"), separated.toString());
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    shell.mustDo(
        "import %s %s --rigs %s --power-checks %s"
            .formatted(
                SAMPLES.resolve("latex-on-pine.csv"),
                sheet,
                SAMPLES.resolve("rigs.csv"),
                SAMPLES.resolve("power-checks.csv")));
  }

  @ParameterizedTest
  @CsvSource({
    "onset, ml, Burn onset by maximum likelihood",
    "onset, firth, Burn onset by Firth's penalised likelihood",
    "removal, ml, Removal by maximum likelihood",
    "removal, firth, Removal by Firth's penalised likelihood"
  })
  void the_classical_view_tells_coefficients_doses_checks_and_how_it_compares(
      String command, String method, String title) {
    Shell.Result result = shell.run("%s latex pine --classical %s".formatted(command, method));

    assertThat(result.code()).isZero();
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .startsWith(title + ", latex on pine, pulsed 1064 nm\nCounted: 24 patches on 4")
        .contains("Fitted: 33 rows of 24 patches: 9 changed between two readings")
        .contains("intercept ", "ln dose (J/cm2) ", "ln fluence / F0 ", "ln passes ")
        .contains("90 % profile limits", "log odds of ", "F0 is 1.33 J/cm2")
        .contains("Brier score", "Hosmer-Lemeshow", "Classical fit and posterior agree");
    assertThat(result.out()).doesNotContain("NaN");
    assertThat(result.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void a_mixed_fit_says_how_much_boards_differ_and_answers_for_a_new_one() {
    Shell.Result result = shell.run("onset latex pine --classical mixed");

    assertThat(result.code()).isZero();
    assertThat(result.flat())
        .startsWith(
            "Burn onset by maximum likelihood with a random intercept by board, latex on pine")
        .contains(
            "90 % Wald limits", "log odds differ between the 4 boards", "as dose, a factor of")
        .containsPattern("One pass at F0 chars 5 % of patches at [0-9.]+ J/cm2 per pass")
        .containsPattern(
            "Up to [0-9.]+ J/cm2 char risk is at most 5 % with 90 % confidence, on a new")
        .contains("estimates how much boards differ from these 4 boards alone")
        .doesNotContain("NaN", "treats all boards as one");
    Map<String, Object> json = shell.json("onset latex pine --classical mixed --json");
    assertThat(json).containsEntry("limits_by", "Wald").containsEntry("passes_by_share", null);
    assertThat(part(json, "boards")).containsEntry("boards", 4).containsKey("omega");
    assertThat(number(part(json, "boards"), "low"))
        .isLessThan(number(part(json, "boards"), "standard_deviation_log_odds"));
  }

  @Test
  void a_mixed_fit_without_a_likeliest_spread_says_so() {
    Shell.Result result = shell.run("removal latex pine --classical mixed");

    assertThat(result.code()).isEqualTo(3);
    assertThat(result.flat())
        .startsWith("Removal by maximum likelihood with a random intercept by board, latex on pine")
        .contains(
            "no most likely spread between boards: the more boards may differ, the better the fit",
            "or ask for ml or firth.")
        .doesNotContain("approximation");
  }

  @Test
  void passes_to_clear_are_timed_where_readings_differ_in_passes() {
    Shell.Result result = shell.run("removal latex pine --classical aft");

    assertThat(result.code()).isZero();
    assertThat(result.flat())
        .startsWith("Removal by log-logistic accelerated failure time on passes, latex on pine")
        .contains(
            "ln of the passes to clearing for each unit", " scale ", "As parameters of the model")
        .containsPattern("50 % of patches clear by [0-9.]+ passes \\([0-9.]+ to [0-9.]+\\)")
        .containsPattern("From [0-9.]+ J/cm2 at least 95 % of patches clear with 90 % confidence");
    Map<String, Object> json = shell.json("removal latex pine --classical aft --json");
    assertThat((List<?>) json.get("passes_by_share")).hasSize(2);
    assertThat(part(json, "risk_dose")).containsEntry("bound_is", "lowest clearing dose");
    assertThat(json).containsEntry("boards", null).containsEntry("method", "aft");

    Shell.Result once = shell.run("removal alkyd spruce --classical aft");
    assertThat(once.code()).isEqualTo(3);
  }

  @ParameterizedTest
  @ValueSource(strings = {"mixed", "aft"})
  void separated_trials_have_no_mixed_or_timed_fit_either(String method) {
    Shell.Result result = shell.run("onset alkyd spruce --classical " + method);

    assertThat(result.code()).isEqualTo(3);
    assertThat(result.flat())
        .contains("Every charred patch had more dose than every uncharred one")
        .contains("ask for firth instead.");
  }

  @Test
  void a_stricter_risk_or_confidence_gives_a_lower_dose() {
    double usual = bound("onset latex pine --classical firth");

    assertThat(bound("onset latex pine --classical firth --confidence 97%")).isLessThan(usual);
    assertThat(bound("onset latex pine --classical firth --risk 2%")).isLessThan(usual);
    assertThat(bound("removal latex pine --classical firth --risk 2%"))
        .isGreaterThan(bound("removal latex pine --classical firth"));
  }

  @Test
  void json_has_the_numbers_with_their_units() {
    Map<String, Object> json = shell.json("onset latex pine --classical ml --json");

    assertThat(json.keySet())
        .containsExactly(
            "stratum",
            "evidence",
            "event",
            "method",
            "rows",
            "notes",
            "separation",
            "no_fit_reason",
            "limits_confidence",
            "coefficients",
            "limits_by",
            "boards",
            "passes_by_share",
            "at",
            "even_dose",
            "risk_dose",
            "checks",
            "posterior");
    assertThat((List<?>) json.get("coefficients")).hasSize(4);
    assertThat(part(json, "at")).containsEntry("passes", 1).containsKey("f0_j_cm2");
    assertThat(part(json, "risk_dose"))
        .containsEntry("chance", 0.05)
        .containsEntry("bound_is", "highest safe dose");
    assertThat(part(json, "even_dose"))
        .containsEntry("chance", 0.5)
        .containsOnlyKeys("chance", "dose_j_cm2", "rising", "low_j_cm2", "high_j_cm2");
    assertThat(part(json, "posterior")).containsEntry("agreement", "agree");
  }

  @Test
  void separated_trials_have_no_maximum_likelihood_and_are_told_why() {
    Shell.Result ml = shell.run("onset alkyd spruce --classical ml");
    Shell.Result firth = shell.run("onset alkyd spruce --classical firth");

    assertThat(ml.code()).isEqualTo(3);
    assertThat(ml.flat())
        .contains(
            "Every charred patch had more dose than every uncharred one (12.5 J/cm2 against at most"
                + " 8.33)")
        .endsWith("There is no fit by maximum likelihood; ask for firth instead. ");
    assertThat(firth.code()).isZero();
    assertThat(firth.flat())
        .contains(
            "That is complete separation",
            "ln passes is left out: every row has the same number, 1.")
        .contains("(an untried dose: trials run from 4.17 to 31.2 J/cm2)")
        .contains("outcomes are separated, so the penalty sets the slope there and the prior here");
    Map<String, Object> json = shell.json("onset alkyd spruce --classical ml --json");
    assertThat(part(json, "separation")).containsEntry("kind", "complete");
    assertThat(json).containsEntry("coefficients", null);
  }

  @Test
  void a_bound_that_does_not_exist_is_called_unbounded() {
    Shell.Result result = shell.run("onset alkyd spruce --classical firth --confidence 99.9%");

    assertThat(result.flat())
        .contains(
            "Unbounded: there is no dose above 0 up to which char risk is at most 5 % with 99.9"
                + " % confidence");
    assertThat(result.out()).contains("unbounded");
    assertThat(
            part(
                shell.json("onset alkyd spruce --classical firth --confidence 99.9% --json"),
                "risk_dose"))
        .containsEntry("bound_j_cm2", null);
  }

  /** The sample's depths were made with a threshold of 0.45 J/cm2 and 5.2 um per e-fold. */
  @Test
  void removal_fits_the_ablation_law_where_depth_was_measured() {
    Map<String, Object> law = part(shell.json("removal latex pine --json"), "ablation_law");

    assertThat(number(law, "threshold_low_j_cm2")).isLessThan(0.45);
    assertThat(number(law, "threshold_high_j_cm2")).isGreaterThan(0.45);
    assertThat(Math.abs(number(law, "um_per_e_fold") - 5.2))
        .isLessThan(2 * number(law, "um_per_e_fold_standard_error"));
    assertThat(shell.run("removal latex pine").flat())
        .contains("Ablation law, depth per pulse = (1/alpha) ln(F/Fth) Threshold fluence Fth 0.4")
        .contains("interval 0.", "(Fieller)");
    assertThat(shell.json("removal alkyd spruce --json")).containsEntry("ablation_law", null);
    assertThat(shell.run("removal alkyd spruce").out()).doesNotContain("Ablation");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          onset latex pine --classical probit | --classical: the fit must be ml, firth, mixed or aft, not "probit".
          removal latex pine --classical ml --risk 60% | --risk: the share must be between 0.0001 and 50 %, not "60%".
          removal latex pine --classical ml --confidence 50% | --confidence: the share must be between 51 and 99.9 %, not "50%".
          """)
  void options_that_make_no_sense_are_refused(String line, String sentence) {
    Shell.Result result = shell.run(line);

    assertThat(result.code()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err().strip()).isEqualTo(sentence);
  }

  private static double bound(String line) {
    return number(part(shell.json(line + " --json"), "risk_dose"), "bound_j_cm2");
  }

  private static double number(Map<String, Object> json, String key) {
    return ((Number) json.get(key)).doubleValue();
  }
}
