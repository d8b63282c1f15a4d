package charline.cli;

import static charline.cli.Shell.part;
import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.HandPass;
import charline.shops.Scenario;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.ways.TwoFigures;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines and circles on the sills of the boathouse, where circles char at a third of the dose. */
class CompareCommandsTest {
  private static final String HEAD =
      "patch,burned_at,rig,board,wood,finish,family,power_pct,rep_khz,pulse_ns,spot_mm,width_mm,"
          + "hand_mm_s,passes,outcome,patch_cm2,figure,place\n";

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void burn_lines_and_circles() throws IOException {
    shell = new Shell(folder).at("2026-11-20T09:00:00Z");
    shell.mustDo(
        "rig add Heron --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --pulse 100ns --width"
            + " 60mm");
    shell.mustDo(
        "rig add Grebe --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz --pulse 100ns --width"
            + " 60mm");
    shell.mustDo("rig add Otter --kind cw --rated 1500W --spot 1.2mm --width 80mm");
    TwoFigures shop =
        TwoFigures.draw(
            new TwoFigures.Kind("commands", Math.log(1 / 3.0), 0, 2), Scenario.usual(), 3);
    StringBuilder sheet = new StringBuilder(HEAD);
    for (Patch patch : shop.patches()) {
      for (Reading reading : patch.readings()) {
        sheet.append(row(patch, reading));
      }
    }
    sheet.append(
        "AR-1,2026-11-19T12:00Z,Heron,board"
            + " 0,pine,shutter,latex,50,40,100,0.6,60,27,1,clean,9,line,arris\n");
    shell.mustDo("import %s --sure".formatted(Files.writeString(folder.resolve("t.csv"), sheet)));
  }

  private static String row(Patch patch, Reading reading) {
    return String.join(
            ",",
            patch.code(),
            "2026-11-18T12:00Z,Heron",
            patch.board().name(),
            "pine,shutter,latex",
            String.valueOf(patch.settings().power().value()),
            "40,100,0.6,60",
            String.valueOf(((HandPass) patch.settings().form()).handSpeedMillimetresPerSecond()),
            String.valueOf(reading.passes()),
            reading.outcome().text(),
            "9",
            patch.manner().figure().orElseThrow().word(),
            "")
        + "\n";
  }

  @Test
  void the_better_figure_is_named_in_plain_words_first() {
    Shell.Result answer = shell.run("compare latex pine --figure circle --figure line");
    assertThat(answer.code()).isZero();
    assertThat(answer.flat())
        .startsWith("latex on pine, pulsed 1064 nm: circle against line")
        .containsPattern(
            "Circle chars at 0\\.\\d+ times \\(0\\.\\d+ to 0\\.\\d+\\) the dose that line does, and"
                + " clears at .*\\. Line is better, (over )?9\\d % sure: it leaves more room"
                + " between clearing and charring\\.")
        .contains("3 boards carry patches of both.")
        .contains("Counted: 9 patches with circle, 9 patches with line.")
        .containsPattern("room: char dose over clearing")
        .contains("Caution");
  }

  @Test
  void json_has_the_keys_that_were_agreed() {
    Map<String, Object> json =
        shell.json("compare latex pine --figure circle --figure line --json");
    assertThat(json)
        .containsEntry("char_taken_as_alike", false)
        .containsKeys("char_dose_ratio", "clear_dose_ratio", "cautions")
        .containsEntry("boards_shared", 3)
        .containsEntry("pairs_to_settle", 0)
        .containsEntry("settled", true);
    assertThat(((Number) json.get("probability_a_better")).doubleValue()).isBetween(1e-6, 0.05);
    assertThat(part(json, "a"))
        .containsEntry("name", "circle")
        .containsEntry("patches", 9)
        .containsKeys(
            "verdict", "char_dose_j_cm2", "clear_dose_j_cm2", "room", "area_rate_cm2_min");
    assertThat(part(part(json, "b"), "room")).containsOnlyKeys("median", "low", "high");
  }

  /** The model of char has no term for tone, so that its ratio of 1 is no finding. */
  @Test
  void what_the_model_takes_for_granted_is_not_told_as_found() throws IOException {
    Shell tones =
        new Shell(Files.createDirectory(folder.resolve("tones"))).at("2026-11-20T09:00:00Z");
    String sheet = Files.readString(Path.of("sample-trials/latex-on-pine.csv"));
    String dark =
        sheet
            .replaceAll("(?m)^LP-", "LD-")
            .replace("wall panel latex", "wall panel dark latex")
            .replace("latex:pale", "latex:dark")
            .replace(",latex,pale,", ",latex,dark,");
    assertThat(dark).isNotEqualTo(sheet).contains("dark");
    Path both = folder.resolve("both.csv");
    Files.writeString(both, sheet + dark.substring(dark.indexOf('\n') + 1));
    tones.mustDo(
        "import %s --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv --sure"
            .formatted(both));
    assertThat(tones.flat("compare latex pine --tone pale --tone dark"))
        .containsPattern(
            "A pale coat clears at .* times [^;]*, and both are taken to char at"
                + " the same dose\\.")
        .contains("an assumption of the model, which these trials do not test")
        .doesNotContain("1 times");
    assertThat(tones.json("compare latex pine --tone pale --tone dark --json"))
        .containsEntry("char_taken_as_alike", true);
  }

  @Test
  void pass_counts_are_compared_on_the_same_patches() {
    assertThat(shell.flat("compare latex pine --figure line --passes 1 --passes 3"))
        .contains("work in 1 pass against work in 3 passes")
        .containsPattern("Work in 1 pass chars at [12]\\.\\d+ times");
  }

  @Test
  void a_page_with_both_on_one_map_is_written_once() throws IOException {
    Path page = folder.resolve("c.html");
    String command = "compare latex pine --figure circle --figure line --to " + page;
    assertThat(shell.run(command).out()).contains("c.html written.");
    assertThat(Files.readString(page))
        .contains("<svg class=\"plot\"", "no room", "Line is better", "Class 4 laser")
        .doesNotContain("http:", "https:", "<script");
    Shell.Result again = shell.run(command);
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("already exists");
    assertThat(shell.run(command + " --replace").code()).isZero();
  }

  @Test
  void two_ways_must_differ_and_be_no_more_than_two() {
    for (String same : List.of("", "--figure line --figure line", "--passes 2")) {
      Shell.Result refused = shell.run("compare latex pine " + same);
      assertThat(refused.code()).as(same).isEqualTo(2);
      assertThat(refused.err()).contains("nothing differs between the two ways");
    }
    assertThat(shell.run("compare latex pine --passes 1 --passes 2 --passes 3").err())
        .contains("--passes: two ways are compared, not 3.");
    assertThat(shell.run("compare latex pine --wetted maybe --wetted no").err())
        .contains("it must be yes or no, not \"maybe\".");
    assertThat(shell.run("compare latex pine --light pulsed --light cw").err())
        .contains("latex over pine was not tried with light of that kind (cw, 1064 nm)");
  }

  @Test
  void an_answer_is_for_one_rig_and_figure_and_what_was_not_tried_is_refused() {
    double line = even(shell.json("onset latex pine --figure line --json"));
    double circle = even(shell.json("onset latex pine --figure circle --json"));
    assertThat(circle / line).isBetween(0.2, 0.6);
    Shell.Result spiral = shell.run("window latex pine --figure spiral");
    assertThat(spiral.code()).isEqualTo(1);
    assertThat(spiral.err())
        .contains("was not tried with rig Heron, figure spiral")
        .contains("9 patches with rig Heron, figure circle");
    assertThat(shell.run("window latex pine --rig Grebe").err())
        .contains("was not tried with rig Grebe");
    assertThat(shell.flat("window latex pine --figure line"))
        .contains("For figure line.")
        .contains("circle against line: char at 0.")
        .contains("figure line; power as dialled");
    assertThat(shell.flat("onset latex pine --figure line"))
        .contains("figure circle", "figure line");
  }

  private static double even(Map<String, Object> json) {
    return ((Number) part(part(json, "model"), "dose_even_j_cm2").get("median")).doubleValue();
  }

  @Test
  void a_rig_that_is_new_to_the_stock_begins_at_the_bottom() {
    String next = shell.flat("next latex pine --rig Grebe");
    assertThat(next).contains("lowest rung").contains("rig Grebe");
    assertThat(shell.run("next latex pine --rig Grebe").code()).isZero();
  }

  @Test
  void patches_off_the_face_are_counted_only_where_asked_for() {
    assertThat(shell.flat("window latex pine"))
        .contains("Counted: 18 patches")
        .contains("Not counted: 1 patch on arris; another place need not do the same.");
    assertThat(shell.flat("window latex pine --figure line --place arris"))
        .contains("Counted: 19 patches")
        .contains("place arris")
        .doesNotContain("Not counted");
    assertThat(part(shell.json("window latex pine --json"), "not_counted"))
        .containsEntry("arris", 1);
    assertThat(shell.run("window latex pine --place knot").err())
        .contains("was not tried with rig Heron, place knot");
  }

  /** None of these patches says how long it rested or that it was wetted. */
  @Test
  void a_wetted_finish_and_another_rest_are_refused_where_nothing_says_they_were_tried() {
    assertThat(shell.run("window latex pine --wetted").err())
        .contains("was not tried with rig Heron, the finish wetted");
    assertThat(shell.run("window latex pine --rest 3s").err())
        .contains("was not tried with rig Heron, passes that follow while the wood is hot");
    assertThat(shell.run("window latex pine --rest=-3").err()).contains("--rest must be 0 or more");
  }

  @Test
  void pairs_lie_side_by_side_at_one_dose() throws IOException {
    assertThat(shell.flat("next latex pine --figure circle --compare figure=line --count 3"))
        .contains("Burn both patches of a pair side by side on one board")
        .containsPattern("About \\d of the 6 brown before they are done")
        .contains("circle: ", "line: ");
    Map<String, Object> json =
        shell.json("next latex pine --figure circle --compare figure=line --count 4 --json");
    List<?> pairs = (List<?>) json.get("pairs");
    assertThat(pairs).hasSize(4);
    double hottest = 0;
    for (Object each : pairs) {
      List<?> patches = (List<?>) ((Map<?, ?>) each).get("patches");
      double one = dose(patches.get(0));
      assertThat(dose(patches.get(1))).isEqualTo(one);
      assertThat(one).as("the cooler pairs first").isGreaterThanOrEqualTo(hottest);
      hottest = one;
    }
    double bore = 0;
    for (String line : Files.readAllLines(folder.resolve("t.csv"))) {
      String[] cells = line.split(",");
      if (line.contains("circle") && !cells[14].contains("char")) {
        bore =
            Math.max(
                bore, 200 * Double.parseDouble(cells[7]) / (60 * Double.parseDouble(cells[12])));
      }
    }
    assertThat(hottest).as("a quarter above what circles bore").isLessThanOrEqualTo(1.25 * bore);
    assertThat(shell.flat("next latex pine --figure circle --compare figure=line --on piece"))
        .contains("take an offcut");
    assertThat(shell.run("next latex pine --compare colour=red").err())
        .contains("a way is rig, figure, light, tone, place, rest, wetted with its value");
  }

  private static double dose(Object patch) {
    return ((Number) ((Map<?, ?>) patch).get("dose_j_cm2")).doubleValue();
  }

  @Test
  void pairs_are_planned_and_printed_with_their_codes() throws IOException {
    Path page = folder.resolve("pairs.html");
    String command = "next latex pine --figure circle --compare figure=line --count 2 --to ";
    String plans = shell.flat("plan list");
    assertThat(shell.run(command + folder.resolve("nowhere").resolve("pairs.html")).code())
        .isNotZero();
    assertThat(shell.flat("plan list")).as("no code is taken without a page").isEqualTo(plans);
    String listed = shell.flat(command + page);
    assertThat(listed)
        .containsPattern("P-\\d{4} circle: ")
        .containsPattern("P-\\d{4} line: ")
        .containsPattern("P-\\d{4} to P-\\d{4} are reserved");
    assertThat(Files.readString(page))
        .contains("<h1>latex on pine: circle beside line</h1>")
        .contains("pair 1: circle, beside line", "pair 2: line, beside circle")
        .contains("Eyewear marked for 1064 nm", "side by side on one board")
        .containsPattern("<td class=\"code\">P-\\d{4}</td>")
        .doesNotContain("<br></td>");
    assertThat(shell.flat("plan list"))
        .contains("pair 1: circle, beside line")
        .containsPattern("P-\\d{4}");
  }
}
