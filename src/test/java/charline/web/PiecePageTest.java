package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page asks for one piece wherever the command line may. */
class PiecePageTest {
  private static final String LATEX = "family=latex&wood=pine";
  private static final String DOOR = "&piece=north%20door";
  private static final String DIAL =
      "power=64&power_unit=%25&form=hand&hand=41&width=60&spot=0.5&rep=60&pulse=100&passes=2";

  @TempDir static Path folder;
  private static ServedLog served;

  @BeforeAll
  static void serve() throws IOException {
    served = new ServedLog(folder, "latex-on-pine", "alkyd-on-plywood");
    Path door = folder.resolve("door.csv");
    Files.writeString(
        door,
        """
        patch,burned_at,rig,board,wood,finish,family,power_pct,rep_khz,pulse_ns,spot_mm,width_mm,hand_mm_s,passes,outcome,patch_cm2
        ND-01,2026-10-30T10:00+01:00,heron,north door,pine,wall panel latex,latex,64,60,100,0.5,60,41,2,clean,30
        ND-02,2026-10-30T10:10+01:00,heron,north door,pine,wall panel latex,latex,64,60,100,0.5,60,26,5,char,30
        """);
    served.charline("import " + door + " --sure");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @Test
  void a_window_is_for_any_board_until_a_piece_is_chosen() throws Exception {
    String any = served.page("window?" + LATEX);
    assertThat(any)
        .contains("<option value=\"\">any board</option>", "<option>north door</option>")
        .contains("on a board not seen yet", "Boards: learned from 1 other stratum of this log.")
        .doesNotContain("locker", "of its own");

    String door = served.page("window?" + LATEX + DOOR);
    assertThat(door)
        .contains("<option selected>north door</option>")
        .contains("1064 nm: north door</h1>")
        .contains("For board north door alone: it rests on 2 patches of its own.")
        .contains("the dose of your average board before it chars, and ")
        .contains("Any other board, by the patches on the others:")
        .contains("piece=north%20door")
        .doesNotContain("board not seen yet", "on a new board");
  }

  @Test
  void a_place_on_the_map_and_a_patch_on_the_bench_are_of_the_piece() throws Exception {
    String place = "window/at?" + LATEX + "&power=64&speed=41&passes=2";
    assertThat(served.page(place)).contains("on a board not seen yet.");
    assertThat(served.page(place + DOOR))
        .contains("On north door, by 2 patches of its own: ")
        .contains("on north door, which has 2 patches of its own.");

    String bench = "live?rig=heron&finish=wall%20panel%20latex&" + DIAL + "&board=";
    served.page("window?" + LATEX + DOOR); // the models are ready then
    assertThat(served.page(bench + "north%20door"))
        .contains("On north door, by 2 patches of its own: ");
  }

  @Test
  void a_sheet_and_a_quote_are_of_the_piece() throws Exception {
    assertThat(served.page("sheet?" + LATEX + DOOR)).contains("latex on pine, for north door");
    assertThat(served.page("quote?" + LATEX + DOOR + "&job=4.5"))
        .contains("1064 nm: north door</h1>", "<option selected>north door</option>");
  }

  @Test
  void what_names_no_fitting_piece_is_refused_as_at_the_terminal() throws Exception {
    assertThat(served.refusal("window?" + LATEX + "&piece=north%20dor"))
        .contains("north dor", " in this log; nearest: north door.");
    assertThat(served.refusal("window?" + LATEX + "&piece=locker%20side"))
        .contains("The piece must be of pine, and board locker side is of plywood");
    served.charline("board add southdoor --wood pine");
    assertThat(served.refusal("sheet?" + LATEX + "&piece=southdoor"))
        .contains("board southdoor must have one of latex on pine", "it has no patches at all yet")
        .doesNotContain("charline next", "--piece");
  }
}
