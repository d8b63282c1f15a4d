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
import org.junit.jupiter.params.provider.ValueSource;

/** Questions about one piece of the boathouse: its doors have patches of their own. */
class PieceCommandsTest {
  private static final String HEAD =
      "patch,burned_at,rig,board,wood,finish,family,power_pct,rep_khz,pulse_ns,spot_mm,width_mm,"
          + "hand_mm_s,passes,outcome,patch_cm2\n";

  private static final String SAMPLES =
      "import sample-trials/latex-on-pine.csv sample-trials/shellac-on-oak.csv"
          + " sample-trials/alkyd-on-plywood.csv sample-trials/varnish-on-ash.csv"
          + " --rigs sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv";

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void burn_patches_on_the_doors() throws IOException {
    shell = new Shell(folder).at("2026-11-01T09:00:00Z");
    shell.mustDo(SAMPLES);
    shell.mustDo("board add \"south door\" --wood pine");
    StringBuilder sheet = new StringBuilder(HEAD);
    northDoor(sheet);
    add(sheet, "HD-01", "hatch door", 41, "clean", "clean");
    shell.mustDo("import %s --sure".formatted(Files.writeString(folder.resolve("d.csv"), sheet)));
    shell.mustDo("patch void HD-01 --why \"another coat\"");
    String shellac = HEAD + row("HD-02", "hatch door", "door shellac,shellac", 41, 1, "clean");
    Files.writeString(folder.resolve("h.csv"), shellac);
    shell.mustDo("import %s --sure".formatted(folder.resolve("h.csv")));
  }

  /** Four patches that begin where the boathouse's window does and end in brown. */
  private static void northDoor(StringBuilder sheet) {
    add(sheet, "ND-01", "north door", 41, "residue", "clean", "clean", "clean", "clean");
    add(sheet, "ND-02", "north door", 33, "clean", "clean", "clean", "clean", "clean", "char");
    add(sheet, "ND-03", "north door", 26, "clean", "clean", "clean", "clean", "char");
    add(sheet, "ND-04", "north door", 21, "clean", "clean", "char");
  }

  private static void add(
      StringBuilder sheet, String code, String board, double hand, String... outcomes) {
    for (int k = 0; k < outcomes.length; k++) {
      sheet.append(row(code, board, "wall panel latex,latex", hand, k + 1, outcomes[k]));
    }
  }

  private static String row(
      String code, String board, String coat, double hand, int passes, String outcome) {
    return "%s,2026-10-30T10:00+01:00,heron,%s,pine,%s,64,60,100,0.5,60,%s,%d,%s,30\n"
        .formatted(code, board, coat, hand, passes, outcome);
  }

  @Test
  void a_piece_that_may_not_brown_gets_control_patches_at_the_start_alone() {
    assertThat(shell.flat("next latex pine --piece \"south door\" --spare"))
        .contains("on the piece: 3 patches to burn next.")
        .contains("confirms the start setting")
        .doesNotContain("begins to char", "will not be seen");
    Shell.Result refused = shell.run("next latex pine --spare");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("it takes the piece that may not brown; add --piece BOARD.");
  }

  @Test
  void a_window_for_a_piece_says_what_its_own_patches_changed() {
    String text = shell.flat("window latex pine --piece \"north door\"");

    assertThat(text)
        .startsWith("latex on pine, pulsed 1064 nm, rig heron, for north door: a window, to conf")
        .contains("For board north door alone: it rests on 4 patches of its own.")
        .containsPattern("They weigh the models of the other boards \\(k-hat [-\\d.]+, good up to")
        .containsPattern(
            "north door takes [\\d.]+ times \\([\\d.]+ to [\\d.]+\\) the dose of your average board"
                + " before it chars, and [\\d.]+ times \\([\\d.]+ to [\\d.]+\\) before it"
                + " clears\\.")
        .contains("Any other board, by the patches on the others: a window; start ")
        .containsPattern(
            "Standing: to confirm: (clean on north door: ND-|no control patch on north door yet;"
                + " 3)")
        .contains("per 30 cm² on north door,")
        .contains("each with 90 % confidence, on north door.")
        .doesNotContain("on a new board", "not seen yet", "unlike your boards");
    assertThat(shell.flat("window latex pine"))
        .contains("on a new board", "ask with --piece BOARD");
  }

  @Test
  void a_window_for_a_piece_in_json() {
    Map<String, Object> json = shell.json("window latex pine --json --piece \"north door\"");
    Map<String, Object> piece = part(json, "piece");

    assertThat(json).containsEntry("standing", "to confirm");
    assertThat(piece)
        .containsEntry("board", "north door")
        .containsEntry("patches", 4)
        .containsEntry("refitted", false)
        .containsEntry("unlike", false)
        .containsKey("pareto_k");
    assertThat(part(piece, "controls"))
        .containsOnlyKeys("clean", "charred", "wanting")
        .containsEntry("charred", List.of());
    assertThat(((List<?>) part(piece, "controls").get("clean")).size() + wanting(json))
        .isEqualTo(3);
    assertThat(part(piece, "char_shift")).containsOnlyKeys("median", "low", "high");
    assertThat(part(piece, "clearing_shift")).containsOnlyKeys("median", "low", "high");
    assertThat(part(piece, "general")).containsEntry("verdict", "window");
    assertThat(part(part(piece, "general"), "start")).containsKey("power_pct");
    assertThat(part(part(piece, "general"), "ranges")).containsKey("hand_mm_s");
    assertThat(shell.json("window latex pine --json")).containsEntry("piece", null);
  }

  @Test
  void both_models_show_the_shift_of_a_piece() {
    assertThat(shell.flat("onset latex pine --piece \"north door\""))
        .contains("For board north door alone: it rests on 4 patches of its own.")
        .containsPattern("takes [\\d.]+ times \\([^)]*\\) the dose of your average board before it")
        .contains("char risk on north door is at most 5 %")
        .doesNotContain("a new board");
    assertThat(shell.flat("removal latex pine --piece \"north door\""))
        .contains("a patch on north door clears in at least 90 %")
        .contains("Passes to clear on north door, with 90 % intervals")
        .doesNotContain("a new board");
    assertThat(part(shell.json("onset latex pine --json --piece \"north door\""), "piece"))
        .containsEntry("board", "north door")
        .containsEntry("patches", 4)
        .containsKeys("shift", "pareto_k", "refitted");
    assertThat(shell.json("onset latex pine --json")).containsEntry("piece", null);
  }

  @Test
  void a_quote_and_a_sheet_are_for_the_piece_that_was_named() throws IOException {
    assertThat(shell.flat("quote latex pine --area 2 --piece \"north door\""))
        .contains("The window behind these hours, for board north door alone, is to confirm.")
        .contains("it rests on 4 patches of its own");
    assertThat(part(shell.json("quote latex pine --area 2 --json --piece \"north door\""), "piece"))
        .containsEntry("board", "north door");
    Path sheet = folder.resolve("door.html");
    shell.mustDo("sheet latex pine --piece \"north door\" --to " + sheet);
    assertThat(Files.readString(sheet).replace("&nbsp;", " ").replace('\u00a0', ' '))
        .contains("<h1>latex on pine, for north door</h1>")
        .contains("4 patches of its own (k-hat ")
        .contains("<dt>Standing</dt><dd>to confirm: ")
        .contains("per 30 cm² on north door.")
        .contains("Any other board: not this sheet.")
        .doesNotContain("on a new board", "New board: one control patch");
  }

  @Test
  void a_piece_that_contradicts_the_other_boards_is_called_unlike_them(@TempDir Path own)
      throws IOException {
    Shell fresh = new Shell(own).at("2026-11-01T09:00:00Z");
    fresh.mustDo(SAMPLES);
    StringBuilder sheet = new StringBuilder(HEAD);
    for (int k = 1; k <= 4; k++) { // char at a sixth of the dose that the other boards take
      add(sheet, "AD-0" + k, "attic door", 140 - 20 * k, "residue", "char+residue");
    }
    fresh.mustDo("import %s --sure".formatted(Files.writeString(own.resolve("d.csv"), sheet)));

    String window = "window latex pine --piece \"attic door\"";
    assertThat(fresh.run(window).flat())
        .contains("This piece is unlike your boards: it chars at a lower dose than any of them")
        .containsPattern("could not be weighed by them \\(k-hat [\\d.]+, above 0.5\\), so the");
    assertThat(part(fresh.run(window + " --json").json(), "piece"))
        .containsEntry("unlike", true)
        .containsEntry("refitted", true);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"window", "onset", "removal", "quote --area 2", "risk --power 60% --hand 30"})
  void what_names_no_fitting_piece_is_refused_in_a_sentence(String command) {
    String[] words = command.split(" ", 2);
    String line = words[0] + " latex pine " + (words.length > 1 ? words[1] : "") + " --piece ";

    assertThat(shell.run(line + "\"north dor\"").err().strip())
        .isEqualTo("No board \"north dor\" in this log; nearest: north door.");
    assertThat(shell.run(line + "\"locker side\"").err().strip())
        .isEqualTo(
            "The piece must be of pine, and board locker side is of plywood; ask about latex over"
                + " plywood.");
    Shell.Result bare = shell.run(line + "\"south door\"");
    assertThat(bare.code()).isEqualTo(1);
    assertThat(bare.err().strip())
        .isEqualTo(
            "An answer for a piece rests on patches of its own: board south door must have one of"
                + " latex on pine, pulsed 1064 nm, and it has no patches at all yet. Plan them with"
                + " `charline next` and the same --piece.");
    assertThat(shell.run(line + "\"hatch door\"").err().strip())
        .contains(
            "board hatch door must have one of latex on pine, pulsed 1064 nm, and it has shellac on"
                + " pine, pulsed 1064 nm (1 patch).");
  }

  @Test
  void a_piece_goes_neither_with_every_stratum_nor_with_a_classical_fit() {
    Shell.Result all = shell.run("window --all --piece \"north door\"");
    assertThat(all.code()).isEqualTo(2);
    assertThat(all.err().strip())
        .isEqualTo(
            "--piece: a piece is of one wood with one coat, and --all asks about every one; leave"
                + " one out.");
    assertThat(shell.run("onset latex pine --classical ml --piece \"north door\"").err().strip())
        .isEqualTo("--classical: a classical fit is of all boards together; leave out --piece.");
  }

  /** Burned where the answer says to start, until it asks for no more. */
  @Test
  void controls_confirm_a_window_and_a_charred_one_takes_that_back(@TempDir Path own)
      throws IOException {
    Shell fresh = new Shell(own).at("2026-11-01T09:00:00Z");
    fresh.mustDo(SAMPLES);
    StringBuilder first = new StringBuilder(HEAD);
    northDoor(first);
    fresh.mustDo("import %s --sure".formatted(Files.writeString(own.resolve("d.csv"), first)));
    String window = "window latex pine --piece \"north door\"";

    Map<String, Object> answer = json(fresh, window);
    int code = 10;
    for (int round = 0; round < 2 && wanting(answer) > 0; round++) {
      for (int k = wanting(answer); k > 0; k--) {
        burn(fresh, own, answer, code++, "clean");
      }
      answer = json(fresh, window);
    }
    assertThat(answer).containsEntry("standing", "confirmed");
    assertThat(fresh.run(window).flat())
        .contains("for north door: a window, confirmed.")
        .containsPattern("Standing: confirmed: clean on north door: ND-\\d+, ND-\\d+, ND-\\d+")
        .doesNotContain("control patch at the start", "control patches at the start");

    burn(fresh, own, answer, 99, "char");
    assertThat(json(fresh, window).get("standing")).isNotEqualTo("confirmed");
  }

  private static Map<String, Object> json(Shell shell, String window) {
    return shell.json(window + " --json");
  }

  private static int wanting(Map<String, Object> answer) {
    return (Integer) part(part(answer, "piece"), "controls").get("wanting");
  }

  /** A control patch at the start setting. */
  private static void burn(
      Shell shell, Path own, Map<String, Object> answer, int code, String outcome)
      throws IOException {
    Map<String, Object> start = part(answer, "start");
    String row =
        "ND-%d,2026-10-31T10:00+01:00,heron,north door,pine,wall panel latex,latex,%s,60,100,0.5,60,%s,%s,%s,30\n"
            .formatted(
                code, start.get("power_pct"), start.get("hand_mm_s"), start.get("passes"), outcome);
    Path file = Files.writeString(own.resolve("c%d.csv".formatted(code)), HEAD + row);
    shell.mustDo("import %s --sure".formatted(file));
  }
}
