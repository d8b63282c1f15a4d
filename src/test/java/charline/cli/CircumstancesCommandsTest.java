package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How a pass was made, beside its settings, on the command line. */
class CircumstancesCommandsTest {
  private static final String ADD =
      "patch add --board boathouse-1 --finish wall-latex --power 60% --passes 1 --outcome residue ";

  @TempDir Path folder;
  private Shell shell;

  @BeforeEach
  void open() {
    shell = Shell.withBench(folder);
  }

  private String show(String code) {
    return shell.run("patch show " + code).out().replaceAll("\\s+", " ");
  }

  @Test
  void a_patch_without_circumstances_says_nothing_of_them() {
    shell.mustDo(ADD + "--hand 20mm/s");
    assertThat(show("last"))
        .doesNotContain("figure", "distance", "place", "worked", "strokes", "spot runs at", "rims");
    assertThat(shell.run("find latex --csv").out()).doesNotContain("figure", "lines_s", "wetted");
    assertThat(shell.run("export").out()).doesNotContain("figure", "lines_s", "wetted");
  }

  @Test
  void a_rig_has_usual_values_and_like_copies_what_was_given() {
    shell.mustDo("rig amend Heron --figure line --lines 100 --standoff 20cm --air yes");
    shell.mustDo(ADD + "--hand 20mm/s --place arris --part heartwood --wetted no --rest 1min");
    shell.mustDo("patch add --like last --outcome clean --temperature 68F");
    assertThat(show("last"))
        .contains(
            "figure line, 100 lines/s ",
            "distance stand-off 200 mm ",
            "place arris, heartwood ",
            "worked 60 s rest between passes, not wetted, air assist, wood at 20 °C ",
            "place arris, power 60%, rest 1min, temperature 68F, wetted no");
    shell.mustDo("patch add --like last --outcome clean --figure none --air none");
    assertThat(show("last")).contains("figure 100 lines/s ").doesNotContain("air assist");
  }

  @Test
  void spot_speed_spacing_and_overlaps_follow_from_figure_width_and_rate() {
    shell.mustDo(ADD + "--hand 20mm/s --figure line --lines 100");
    // 60 mm x 100/s; 20/100 mm under a spot of 0.6 mm; dots 6000/40000 mm apart
    assertThat(show("last"))
        .contains("spot runs at 6000 mm/s, lines 0.2 mm apart")
        .contains("overlap 75 % between pulses, 0.15 mm apart; 66.7 % between lines");
    assertThat(shell.run("patch show last --json").out())
        .contains(
            "\"spot_speed_mm_s\" : 6000",
            "\"line_spacing_mm\" : 0.2",
            "\"line_overlap_pct\" : 66.6666667",
            "\"rim_dose_ratio\" : null");
  }

  @Test
  void the_rims_of_a_circle_are_hot_and_said_to_be() {
    shell.mustDo(ADD + "--hand 20mm/s --width 20mm --figure circle --lines 100 --spot 2mm --sure");
    // π x 20 mm x 100/s; 2/π acos(0.8) of the time in a fifth of the width
    assertThat(show("last"))
        .contains(
            "spot runs at 6283 mm/s, turns 0.2 mm apart",
            "rims 2.05 times the mean dose along either rim, as wide as the spot;",
            "0.64 times in the middle");
    assertThat(shell.run("patch show last --json").out())
        .contains("\"middle_dose_ratio\" : 0.636619772", "\"rim_dose_ratio\" : 2.0483");
  }

  @Test
  void a_defocus_makes_the_spot_where_the_optics_are_known_and_else_is_only_noted() {
    shell.mustDo(ADD + "--hand 20mm/s --defocus 5mm");
    assertThat(show("last")).contains("spot 0.6 mm", "only noted");
    shell.mustDo("rig amend Heron --focus-spot 0.4mm --beam-quality 20");
    shell.mustDo("patch add --like last --defocus 5mm --outcome clean");
    // d0 sqrt(1 + (z/zR)^2), ISO 11146-1: 0.4 mm, M2 20, 1064 nm
    assertThat(show("last")).contains("spot 0.524123 mm", "which makes the spot");
    shell.mustDo("patch add --like last --defocus 5mm --spot 0.55mm --outcome clean");
    assertThat(show("last")).contains("spot 0.55 mm", "which would make a spot of 0.524 mm");
  }

  @Test
  void timed_strokes_give_the_hand_speed_and_stay_with_their_patch() {
    shell.mustDo(ADD + "--strokes \"12.5 15.0 17.5\" --stroke-length 30cm");
    assertThat(show("last"))
        .contains(
            "speed hand 20 mm/s",
            "strokes 3 of 300 mm in 12.5, 15, 17.5 s; the dose varies from stroke to stroke by"
                + " 16.7 % (standard deviation)");
    shell.mustDo("patch add --like last --outcome clean");
    assertThat(show("last")).contains("speed hand 20 mm/s").doesNotContain("strokes 3 of");
    shell.mustDo("patch amend 1 --place knot");
    assertThat(show("1")).contains("strokes 3 of 300 mm");
    shell.mustDo("patch amend 1 --hand 22mm/s --why misread");
    assertThat(show("1"))
        .doesNotContain("strokes 3")
        .contains("stroke times from 12.5 15 17.5 s to nothing");
    assertThat(shell.run(ADD + "--hand 25mm/s --strokes 15.0 --stroke-length 300").err())
        .isEqualTo(
            "Timed strokes make a hand speed of 20 mm/s, not 25 mm/s; leave out --hand, or correct"
                + " the strokes.\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --hand 20 --figure circel | Scan figure "circel" is none of line, circle, spiral, ring, zigzag, sine; choose one of them, or add --sure.
          --hand 80 --figure line --lines 100 | Lines 0.8 mm apart are farther apart than the spot is wide (0.6 mm), so that they leave stripes; lower the hand speed or raise the lines per second, or add --sure.
          --scan 5000 --spacing 0.9mm | Lines 0.9 mm apart are farther apart than the spot is wide (0.6 mm), so that they leave stripes; give a spacing of 0.6 mm or less, or add --sure.
          --hand 20 --place roof | A place on the board must be face, arris, end grain, moulding or knot, not "roof".
          --hand 20 --part bark | A part of the wood must be sap or heart, not "bark".
          --hand 20 --wetted maybe | Wetted must be yes or no, not "maybe".
          --hand 20 --temperature 500 | Temperature of the wood must be between -60 and 150 C, not 500 C.
          --hand 20 --lines 0 | Lines or turns must be above 0 /s, not 0 /s.
          --hand 20 --rest -3 | Rest between passes must be 0 or more s, not -3 s.
          --hand 20 --standoff 2 | Stand-off of 2 mm is outside 5 to 2000 mm (usual: 100 to 500); correct it, or add --sure.
          --strokes 4.1 | Timed strokes need their times and the length of a stroke; give --strokes with --stroke-length.
          --strokes 4,1 --stroke-length 300 | Stroke times of 4,1 can be read in two ways; give the time of each stroke with blanks between, such as 4.1 3.9.
          """)
  void what_cannot_be_is_one_sentence(String options, String sentence) {
    Shell.Result refused = shell.run(ADD + options);
    assertThat(refused.err()).isEqualTo(sentence + "\n");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(shell.run("find latex").code()).isEqualTo(1);
  }

  @Test
  void an_own_figure_is_asked_about_once() {
    assertThat(shell.run(ADD + "--hand 20 --figure star").code()).isEqualTo(2);
    shell.mustDo(ADD + "--hand 20 --figure star --sure");
    shell.mustDo("patch add --like last --outcome clean");
    assertThat(show("last")).contains("figure star");
  }

  @Test
  void find_and_the_sheet_show_what_some_patch_has() throws IOException {
    shell.mustDo(ADD + "--hand 20mm/s");
    shell.mustDo(ADD + "--hand 20mm/s --figure circle --lines 100 --place knot --wetted yes");
    assertThat(shell.run("find latex").out().replaceAll("\\s+", " "))
        .contains("boathouse-1, circle, 100/s, knot, wetted");
    assertThat(shell.run("find latex --csv").out())
        .contains(",figure,lines_s,place,wetted,")
        .contains(",circle,100,knot,true,");
    Path sheet = folder.resolve("out.csv");
    Path rigs = folder.resolve("rigs.csv");
    shell.mustDo("rig amend Heron --figure circle");
    shell.mustDo("export --to %s --rigs %s".formatted(sheet, rigs));
    assertThat(Files.readString(sheet))
        .contains(",coats,figure,lines_s,place,wetted\n", ",circle,100,knot,yes\n");
    Files.delete(folder.resolve("boathouse.db"));
    shell.mustDo("import %s --rigs %s".formatted(sheet, rigs));
    assertThat(shell.run("export").out()).isEqualTo(Files.readString(sheet));
    assertThat(show("1")).as("what was not noted is not made up").doesNotContain("figure");
  }

  @Test
  void a_sheet_with_an_unknown_figure_or_place_names_the_cell() throws IOException {
    Path sheet = folder.resolve("in.csv");
    Files.writeString(
        sheet,
        "patch,burned_at,rig,board,wood,family,power_pct,hand_mm_s,passes,outcome,figure,place\n"
            + "A,2026-05-03,Heron,b1,pine,latex,60,20,1,clean,circel,roof\n");
    assertThat(shell.run("import " + sheet).err())
        .contains(
            "line 2, place \"roof\": A place on the board must be face, arris, end grain, moulding"
                + " or knot, not \"roof\".");
    Files.writeString(sheet, Files.readString(sheet).replace("roof", "knot"));
    assertThat(shell.run("import " + sheet).err())
        .contains("line 2, figure \"circel\": Scan figure \"circel\" is none of line, circle");
    shell.mustDo("import --sure " + sheet);
    assertThat(show("A")).contains("figure circel", "place knot");
  }
}
