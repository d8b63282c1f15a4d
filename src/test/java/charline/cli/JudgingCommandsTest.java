package charline.cli;

import static charline.cli.Shell.part;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.jr.ob.JSON;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Judges the sample trials, which are invented: these tests hold the form of answers, not a truth.
 */
class JudgingCommandsTest {
  private static final Path SAMPLES = Path.of("sample-trials");

  private static final Map<String, Shell.Result> ANSWERS = new HashMap<>();

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void import_the_boathouse() throws IOException {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    try (Stream<Path> files = Files.list(SAMPLES)) {
      String sheets =
          String.join(
              " ",
              files
                  .map(Path::toString)
                  .filter(name -> name.contains("-on-") && name.endsWith(".csv"))
                  .sorted()
                  .toList());
      shell.mustDo(
          "import %s --rigs %s --power-checks %s"
              .formatted(sheets, SAMPLES.resolve("rigs.csv"), SAMPLES.resolve("power-checks.csv")));
    }
  }

  /** Fits take seconds, and nothing changes this log: a question is asked once. */
  private static Shell.Result answer(String line) {
    return ANSWERS.computeIfAbsent(line, shell::run);
  }

  @Test
  void a_window_gives_start_ranges_risks_and_cautions() {
    Shell.Result result = shell.run("window latex pine --job-area 48ft2");

    assertThat(result.code()).isZero();
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .startsWith(
            "latex on pine, pulsed 1064 nm, rig heron: a window, to confirm.\n"
                + "BEFORE THE BEAM: lead: not tested.\nCounted: 24 patches on 4")
        .contains("START  ", "STAY   power ", "FIXED  spot ", "char risk", "clearing chance")
        .contains("Job of 4.45935 m², ")
        .contains("Caution, older coats: ", "With every patch: class 4 laser, eyewear");
    assertThat(result.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @ParameterizedTest
  @CsvSource({
    "latex pine, 5, 50", "latex pine, 5, 51", "latex pine, 5, 55", "latex pine, 2, 90",
    "latex pine, 5, 90", "varnish ash, 5, 50", "varnish ash, 5, 90", "varnish ash, 3, 80"
  })
  void the_corners_of_a_window_keep_what_was_asked_by_their_own_numbers(
      String stratum, int risk, int confidence) {
    Map<String, Object> json =
        json("window %s --risk %d%% --confidence %d%% --json".formatted(stratum, risk, confidence));

    assertThat(json).containsEntry("verdict", "window");
    assertThat((Double) part(json, "hot_corner").get("char_risk_upper"))
        .isLessThanOrEqualTo(risk / 100.0);
    assertThat((Double) part(json, "cold_corner").get("clear_chance_lower"))
        .isGreaterThanOrEqualTo(0.9);
  }

  /**
   * Seven patches on one board, the dirty ones cool and the charred ones hot with nothing between.
   */
  @Test
  void no_method_is_given_up_on_one_board(@TempDir Path own) {
    Shell few = new Shell(own);
    few.mustDo("rig add Heron --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --width 60mm");
    few.mustDo("board add plank --wood pine");
    few.mustDo("finish add wall-latex --coat latex:pale");
    String add = "patch add --board plank --finish wall-latex --power 60% --passes 1 --hand ";
    for (String seen :
        List.of(
            "22 --outcome residue",
            "20 --outcome residue",
            "18 --outcome residue",
            "12.7 --outcome char+residue",
            "12.5 --outcome char+residue",
            "12.5 --outcome char")) {
      few.mustDo(add + seen);
    }
    few.mustDo(
        "patch add --board plank --finish wall-latex --power 60% --passes 1 --scan 3000 --spacing"
            + " 0.1 --outcome residue");
    assertThat(few.run("window latex pine").flat())
        .contains("no window yet.", "7 patches on 1 board are not enough")
        .doesNotContain("another method");
  }

  @Test
  void the_json_of_a_window_has_the_agreed_keys() {
    Map<String, Object> json = json("window latex pine --json");

    assertThat(json.keySet())
        .containsSequence("stratum", "rig", "figure", "place", "overlap", "asked")
        .containsSubsequence("evidence", "verdict", "standing", "reason")
        .contains("next_step", "next_patches", "tried", "untried")
        .contains("chance_any_window", "start", "ranges", "hot_corner", "cold_corner", "models");
    assertThat(part(json, "stratum"))
        .containsEntry("family", "latex")
        .containsKeys("wood", "source");
    assertThat(part(json, "evidence").keySet())
        .containsExactly("patches", "boards", "readings", "charred_patches", "cleared_patches");
    assertThat(part(json, "start").keySet())
        .containsExactly(
            "power_pct",
            "power_w",
            "rep_khz",
            "pulse_ns",
            "spot_mm",
            "width_mm",
            "hand_mm_s",
            "scan_mm_s",
            "spacing_mm",
            "passes",
            "dose_j_cm2",
            "fluence_j_cm2",
            "char_risk_mean",
            "char_risk_upper",
            "charred_spots_per_m2",
            "clear_chance_mean",
            "clear_chance_lower",
            "area_rate_cm2_min");
    assertThat(part(json, "hot_corner").keySet()).isEqualTo(part(json, "start").keySet());
    assertThat(part(json, "ranges").keySet()).containsExactly("power_pct", "hand_mm_s", "passes");
    assertThat(part(part(json, "models"), "char").keySet())
        .containsExactly(
            "tau",
            "phi",
            "psi",
            "sigma",
            "omega",
            "omega_prior",
            "dose_even_j_cm2",
            "f0_j_cm2",
            "shifts",
            "left_out",
            "pareto_k",
            "draws");
  }

  @Test
  void no_window_is_a_plain_no() {
    Shell.Result result = shell.run("window clear coat larch");

    assertThat(result.code()).isEqualTo(1);
    assertThat(result.out())
        .startsWith(
            "clear coat on larch, pulsed 1064 nm, rig heron: no window; use another method.")
        .contains("Next: Use another method")
        .doesNotContain("START");
    Map<String, Object> json = json("window clear coat larch --json");
    assertThat(json).containsEntry("verdict", "none").containsEntry("start", null);
  }

  /** A limit that is tightened makes a window provisional before it takes it away. */
  @Test
  void a_window_that_more_patches_may_take_away_is_provisional_on_every_face() throws IOException {
    String limit = "";
    for (int risk : new int[] {5, 4, 3, 2}) {
      limit = " --risk " + risk + "%";
      if ("provisional".equals(json("window latex pine --json" + limit).get("standing"))) {
        break;
      }
    }
    assertThat(json("window latex pine --json" + limit))
        .containsEntry("verdict", "window")
        .containsEntry("standing", "provisional");
    assertThat(answer("window latex pine" + limit).flat())
        .contains("rig heron: a window, provisional.")
        .contains("The window is provisional: more patches may still move its limits by ");
    assertThat(shell.run("window --all" + limit).out()).contains("window, provisional");
    assertThat(shell.run("quote latex pine --area 4.5m2" + limit).out())
        .contains("The window behind these hours is provisional.");
    Path sheet = folder.resolve("provisional.html");
    assertThat(shell.run("sheet latex pine --to " + sheet + limit).out())
        .contains("verdict window, provisional.");
    assertThat(Files.readString(sheet))
        .contains(
            "<dt>Standing</dt><dd>provisional: more patches may still take it away; no control");
    assertThat(json("window clear coat larch --json")).containsEntry("standing", null);
  }

  @Test
  void too_few_patches_are_a_not_yet_with_a_next_step() {
    Shell.Result result = shell.run("window shellac over oak");

    assertThat(result.code()).isEqualTo(1);
    assertThat(result.out())
        .startsWith("shellac on oak, pulsed 1064 nm, rig heron: no window yet.")
        .contains("Next: Burn them in this order", "  1  ", "next rung up");
  }

  @Test
  void every_stratum_is_listed_at_once() throws IOException {
    Shell.Result table = shell.run("window --all");

    assertThat(table.code()).isZero();
    assertThat(table.out()).contains("latex on pine", "alkyd on pine, cw", "shellac on oak");
    assertThat(table.out().lines()).allMatch(line -> line.length() <= 80);
    List<Object> all = JSON.std.listFrom(shell.run("window --all --json").out());
    assertThat(all).hasSize(7);
  }

  @Test
  void stricter_limits_give_no_wider_window() {
    List<?> usual = (List<?>) part(json("window latex pine --json"), "ranges").get("hand_mm_s");
    Map<String, Object> strict = json("window latex pine --risk 2% --confidence 95 --json");

    assertThat(part(strict, "asked")).containsEntry("confidence", 0.95);
    if (strict.get("ranges") != null) {
      List<?> narrow = (List<?>) part(strict, "ranges").get("hand_mm_s");
      assertThat(ratio(narrow)).isLessThanOrEqualTo(ratio(usual));
    } else {
      assertThat(strict.get("verdict")).isNotEqualTo("window");
    }
  }

  @Test
  void a_share_without_a_sign_is_in_percent() {
    Map<String, Object> asked =
        part(json("window latex pine --risk 2 --confidence 95 --clear 80 --json"), "asked");

    assertThat(asked)
        .containsEntry("char_risk", 0.02)
        .containsEntry("confidence", 0.95)
        .containsEntry("clear_chance", 0.8);
    assertThat(part(json("window latex pine --risk 0.5% --json"), "asked"))
        .containsEntry("char_risk", 0.005);
  }

  @Test
  void fixed_knobs_may_be_given() {
    Map<String, Object> json = json("window latex pine --at spot=0.55mm,rep=50,width=5cm --json");

    assertThat(json).containsKey("verdict");
    assertThat(shell.run("window latex pine --at spt=0.6").err())
        .isEqualTo(
            "--at: knobs must read like spot=0.6mm,rep=40kHz,width=60mm, not \"spt=0.6\"; known are"
                + " spot, rep, pulse, width, spacing (did you mean spot?).\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          window | 2 | Name a coating family and a wood, such as `charline window latex pine`, or give --all.
          window latex pine --all | 2 | Name a coating family and a wood, such as `charline window latex pine`, or give --all.
          window latex pine --risk 90% | 2 | --risk: the share must be between 0.0001 and 50 %, not "90%".
          window latex pine --risk 0.5 | 2 | --risk: a share of 1 or less needs its % sign, as 0.5 can mean 50% or 0.5%; type 50% or 0.5%.
          window latex pine --risk 0.05 | 2 | --risk: a share of 1 or less needs its % sign, as 0.05 can mean 5% or 0.05%; type 5% or 0.05%.
          window latex pine --risk 1 | 2 | --risk: a share of 1 or less needs its % sign, as 1 can mean 100% or 1%; type 100% or 1%.
          window latex pine --confidence 0.9 | 2 | --confidence: a share of 1 or less needs its % sign, as 0.9 can mean 90% or 0.9%; type 90% or 0.9%.
          window latex pine --clear 0,9 | 2 | --clear: a share of 1 or less needs its % sign, as 0,9 can mean 90% or 0.9%; type 90% or 0.9%.
          next latex pine --risk 0.05 | 2 | --risk: a share of 1 or less needs its % sign, as 0.05 can mean 5% or 0.05%; type 5% or 0.05%.
          onset latex pine --classical firth --risk 0.02 | 2 | --risk: a share of 1 or less needs its % sign, as 0.02 can mean 2% or 0.02%; type 2% or 0.02%.
          quote latex pine --area 2 --efficiency 0.55 | 2 | --efficiency: a share of 1 or less needs its % sign, as 0.55 can mean 55% or 0.55%; type 55% or 0.55%.
          window latex pine --risk 0 | 2 | --risk: the share must be between 0.0001 and 50 %, not "0".
          window latex pine --risk 0.00005% | 2 | --risk: the share must be between 0.0001 and 50 %, not "0.00005%".
          window latex pine --overlap 60% | 2 | --overlap: the share must be between 0 and 50 %, not "60%".
          window latex pine --job-risk 10% | 2 | --job-risk: the job's area is missing; give it with --job-area.
          window latex pine --job-area 4 --job-risk 10% --risk 5% | 2 | --job-risk: give --risk for one area or --job-risk for the whole job, not both.
          window latex pine --job-area 400000 --job-risk 0.1% | 2 | A job of 400000 m² at 0.1 % is a char risk of 0.00000000075 % for each of its 133333334 patch-sized areas, below the 0.0001 % that can be asked; ask for less area, or allow more.
          quote latex pine --area 2 --lead maybe | 2 | --lead: Lead must be one of free, found, untested, not "maybe".
          quote latex pine --area 2 --lead free --clearance 30 | 2 | --lead: where it is free, nothing is contained or cleared; leave those times out.
          quote latex pine --area 2 --second-rate 30 | 2 | --second-rate: there is no second person; give their share with --second-person.
          quote latex pine --area 2 --day 4h | 2 | A day of 4 h has no time for the work: set-up, waste and fire watch alone take up to 4 h. Make the day longer, or name shorter times for them.
          window latex pine --clear 101% | 2 | --clear: the share must be between 5 and 99.9 %, not "101%".
          window latex pine --job-area -4m2 | 2 | Area of the job must be above 0 m2, not -4 m2.
          window lates pine | 2 | No coating family "lates" in this log; nearest: latex.
          window alkyd any | 2 | Trials with different light are never judged together, and the log has alkyd on any wood, pulsed 1064 nm (24 patches); alkyd on any wood, cw 1080 nm (18 patches). Name the rig that the answer is for with --rig.
          sheet latex pine --to x.pdf | 2 | --to: the file must end in .html, not "x.pdf"; a browser prints it to paper or PDF.
          """)
  void what_cannot_be_judged_is_refused(String line, int code, String sentence) {
    Shell.Result result = answer(line);

    assertThat(result.out()).isEmpty();
    assertThat(result.code()).isEqualTo(code);
    assertThat(result.err().lines().sorted().toList().toString())
        .isEqualTo(List.of(sentence).toString());
  }

  @Test
  void what_was_never_tried_answers_no_and_says_what_was() {
    Shell.Result result = shell.run("window latex oak");

    assertThat(result.code()).isEqualTo(1);
    assertThat(result.err())
        .startsWith("The log has no patches of latex over oak; it has ")
        .contains("latex on pine, pulsed 1064 nm (24 patches)");
  }

  @Test
  void the_burn_onset_is_told_in_words_with_intervals() {
    Shell.Result result = answer("onset latex pine");

    assertThat(result.code()).isZero();
    assertThat(result.out())
        .startsWith("Burn onset, latex on pine, pulsed 1064 nm\nCounted: 24 patches on 4 boards")
        .contains("even-chance dose", "chars a patch on an average board as")
        .contains("Pareto k-hat");
    assertThat(result.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void a_dose_that_nobody_tried_is_called_so() {
    assertThat(shell.run("onset alkyd pine").flat())
        .contains("with 90 % confidence (an untried dose: trials run from ");
    assertThat(answer("onset latex pine").out()).doesNotContain("nobody tried");
  }

  @Test
  void removal_tells_passes_depth_and_rate() {
    assertThat(shell.run("removal latex pine").out())
        .contains("Passes to clear on a new board", "um/pass", "cm2/min");
    Map<String, Object> json = json("removal latex pine --json");
    assertThat(json).containsEntry("event", "clearing").containsEntry("reliable", true);
    assertThat((List<?>) json.get("rates")).hasSize(5);
  }

  @Test
  void both_models_say_how_well_they_fit() {
    for (String command : List.of("onset latex pine", "removal latex pine")) {
      Shell.Result result = answer(command);

      assertThat(result.out())
          .contains("How well the model fits: no sign of misfit.\n")
          .contains("  fine   No patch surprises the model fitted to the others;")
          .contains("readings", "expected", "board wall panel offcut 1", "chance given");
      assertThat(result.out().lines()).allMatch(line -> line.length() <= 80);
      Map<?, ?> checks = (Map<?, ?>) json(command + " --json").get("checks");
      assertThat(checks.get("worst")).isEqualTo("fine");
      assertThat((List<?>) checks.get("patches")).hasSize(24);
      assertThat((List<?>) checks.get("boards")).hasSize(4);
    }
  }

  @Test
  void the_same_question_gets_the_same_digits() {
    assertThat(shell.run("onset latex pine --json"))
        .isEqualTo(shell.run("onset latex pine --json"));
  }

  @Test
  void a_sheet_is_written_and_never_over_another() throws IOException {
    Path file = folder.resolve("latex.html");

    Shell.Result written = shell.run("sheet latex pine --to " + file);

    assertThat(written.out())
        .isEqualTo(file + " written: latex on pine, pulsed 1064 nm, verdict window, to confirm.\n");
    assertThat(Files.readString(file)).startsWith("<!DOCTYPE html>");
    assertThat(shell.run("sheet latex pine --to " + file).err())
        .isEqualTo(file + " already exists; give another name, or --replace to overwrite it.\n");
  }

  private static Map<String, Object> json(String line) {
    return answer(line).json();
  }

  private static double ratio(List<?> range) {
    return ((Number) range.get(1)).doubleValue() / ((Number) range.get(0)).doubleValue();
  }

  @Test
  void a_window_says_what_it_owes_to_the_priors() {
    assertThat(answer("window latex pine").flat())
        .contains(
            "Priors: the usual. With their spreads doubled the verdict stays,"
                + " and the start would be ")
        .contains("(dose per pass ");
    Map<?, ?> doubled =
        (Map<?, ?>) part(json("window latex pine --json"), "prior").get("spreads_doubled");
    assertThat(doubled.get("verdict")).isEqualTo("window");
    assertThat((Double) doubled.get("dose_j_cm2")).isPositive();
  }

  @Test
  void a_prior_file_moves_the_answer_and_is_named(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("boathouse.prior");
    Files.writeString(file, "# boards of this stack differ a lot\nchar omega = 0 +/- 1\n");
    Shell.Result usual = answer("window latex pine");
    Shell.Result other = shell.run("window latex pine --prior " + file);
    assertThat(other.out()).contains("Priors: from boathouse.prior.").isNotEqualTo(usual.out());
    Files.writeString(file, "char omega = 1\n");
    assertThat(shell.run("window latex pine --prior " + file).err())
        .isEqualTo(
            "--prior: boathouse.prior, line 1: omega must look like \"omega = 0 +/- 0.2\", not"
                + " \"1\".\n");
  }

  @Test
  void the_printed_priors_are_a_file_that_changes_nothing(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("usual.prior");
    Files.writeString(file, shell.run("prior").out());
    Path nothing = Files.writeString(folder.resolve("nothing.prior"), "# as usual\n");
    assertThat(unfolded("window latex pine --prior " + file).replace("usual.prior", ""))
        .isEqualTo(unfolded("window latex pine --prior " + nothing).replace("nothing.prior", ""));
  }

  private static String unfolded(String command) {
    return answer(command).flat();
  }
}
