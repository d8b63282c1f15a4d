package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.jr.ob.JSON;
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
  void a_stricter_risk_or_confidence_gives_a_lower_dose() throws IOException {
    double usual = bound("onset latex pine --classical firth");

    assertThat(bound("onset latex pine --classical firth --confidence 97%")).isLessThan(usual);
    assertThat(bound("onset latex pine --classical firth --risk 2%")).isLessThan(usual);
    assertThat(bound("removal latex pine --classical firth --risk 2%"))
        .isGreaterThan(bound("removal latex pine --classical firth"));
  }

  @Test
  void json_has_the_numbers_with_their_units() throws IOException {
    Map<String, Object> json = json("onset latex pine --classical ml --json");

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
    assertThat(part(json, "posterior")).containsEntry("agreement", "agree");
  }

  @Test
  void separated_trials_have_no_maximum_likelihood_and_are_told_why() throws IOException {
    Shell.Result ml = shell.run("onset alkyd spruce --classical ml");
    Shell.Result firth = shell.run("onset alkyd spruce --classical firth");

    assertThat(ml.code()).isEqualTo(3);
    assertThat(flat(ml))
        .contains(
            "Every charred patch had more dose than every uncharred one (12.5 J/cm2 against at most 8.33)")
        .endsWith("There is no fit by maximum likelihood; ask for firth instead. ");
    assertThat(firth.code()).isZero();
    assertThat(flat(firth))
        .contains(
            "That is complete separation",
            "ln passes is left out: every row has the same number, 1.")
        .contains("(a dose nobody tried: trials run from 4.17 to 31.2 J/cm2)")
        .contains(
            "outcomes are separated, so the slope is the penalty's there and the prior's here");
    Map<String, Object> json = json("onset alkyd spruce --classical ml --json");
    assertThat(part(json, "separation")).containsEntry("kind", "complete");
    assertThat(json).containsEntry("coefficients", null);
  }

  @Test
  void a_bound_that_does_not_exist_is_called_unbounded() throws IOException {
    Shell.Result result = shell.run("onset alkyd spruce --classical firth --confidence 99.9%");

    assertThat(flat(result))
        .contains(
            "Unbounded: no dose above 0 can be named up to which char risk is at most 5 % with 99.9 % confidence");
    assertThat(result.out()).contains("unbounded");
    assertThat(
            part(
                json("onset alkyd spruce --classical firth --confidence 99.9% --json"),
                "risk_dose"))
        .containsEntry("bound_j_cm2", null);
  }

  /** The sample's depths were made with a threshold of 0.45 J/cm2 and 5.2 um per e-fold. */
  @Test
  void removal_fits_the_ablation_law_where_depth_was_measured() throws IOException {
    Map<String, Object> law = part(json("removal latex pine --json"), "ablation_law");

    assertThat(number(law, "threshold_low_j_cm2")).isLessThan(0.45);
    assertThat(number(law, "threshold_high_j_cm2")).isGreaterThan(0.45);
    assertThat(Math.abs(number(law, "um_per_e_fold") - 5.2))
        .isLessThan(2 * number(law, "um_per_e_fold_standard_error"));
    assertThat(flat(shell.run("removal latex pine")))
        .contains("Ablation law, depth per pulse = (1/alpha) ln(F/Fth) Threshold fluence Fth 0.4")
        .contains("interval 0.", "(Fieller)");
    assertThat(json("removal alkyd spruce --json")).containsEntry("ablation_law", null);
    assertThat(shell.run("removal alkyd spruce").out()).doesNotContain("Ablation");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          onset latex pine --classical probit | --classical: the fit must be ml or firth, not "probit".
          onset latex pine --risk 1% | --risk: it goes with --classical ml or firth; the model's own limits are asked of `charline window`.
          removal latex pine --classical ml --risk 60% | --risk: the share must be between 0.1 and 50 %, not "60%".
          removal latex pine --classical ml --confidence 50% | --confidence: the share must be between 51 and 99.9 %, not "50%".
          """)
  void options_that_make_no_sense_are_refused(String line, String sentence) {
    Shell.Result result = shell.run(line);

    assertThat(result.code()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err().strip()).isEqualTo(sentence);
  }

  private static String flat(Shell.Result result) {
    return result.out().replaceAll("\\s+", " ");
  }

  private static double bound(String line) throws IOException {
    return number(part(json(line + " --json"), "risk_dose"), "bound_j_cm2");
  }

  private static double number(Map<String, Object> json, String key) {
    return ((Number) json.get(key)).doubleValue();
  }

  private static Map<String, Object> json(String line) throws IOException {
    return JSON.std.mapFrom(shell.run(line).out());
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> part(Map<String, Object> json, String key) {
    return (Map<String, Object>) json.get(key);
  }
}
