package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Boards, rigs, models and samples have pages that say what the command line says. */
class WholeJobPagesTest {
  private static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";

  @AutoClose private final ServedLog served;

  WholeJobPagesTest(@TempDir Path folder) {
    served = new ServedLog(folder, "latex-on-pine");
  }

  @Test
  void a_board_shows_its_patches_in_the_order_they_were_burned() throws Exception {
    String board = served.log().patch("LP-01").patch().board().name();
    String page = served.page("board?of=" + board.replace(" ", "%20"));
    assertThat(page)
        .contains("Board " + board, "in the order they were burned", "Burn next on it", "LP-01")
        .contains("&amp;piece=" + board.replace(" ", "%20"));
    int last = -1;
    for (var entry : served.log().patches(charline.log.Filter.onBoard(board))) {
      int at = page.indexOf("/patch/" + entry.patch().code() + "\"");
      assertThat(at).isGreaterThan(last);
      last = at;
    }
    assertThat(served.page("boards?q=panel")).contains(board, "patches");
    assertThat(served.page("boards?q=nothing+like+it")).contains("0 boards");
    assertThat(served.page("recent")).contains("2026-09-10", "LP-24");
  }

  @Test
  void onset_and_removal_say_what_the_command_line_says() throws Exception {
    String onset = served.charline("onset latex pine");
    String page = served.page("onset" + LATEX);
    assertThat(ServedLog.flat(page.replace("&#39;", "'").replace("&lt;", "<").replace("&gt;", ">")))
        .contains(ServedLog.flat(onset.lines().skip(2).findFirst().orElseThrow()))
        .contains("chars a patch on an average board as often as not", "class=\"curve\"");
    assertThat(served.page("onset" + LATEX + "&passes=3")).contains("Chance to char by 3 passes");
    assertThat(served.page("removal" + LATEX))
        .contains("clears a patch on an average board", "Passes to clear, with 90 % intervals")
        .contains("Every number", "even-chance dose");
    assertThat(served.refusal("onset" + LATEX + "&passes=none")).contains("Passes must be a whole");
  }

  @Test
  void other_priors_another_rig_and_fixed_knobs_are_asked_on_the_page() throws Exception {
    String priors = "&prior=char+dose+%3D+30+x/+4.5";
    assertThat(served.page("onset" + LATEX + priors))
        .contains("priors-", "char dose = 30 x/ 4.5</textarea>");
    String window = served.page("window" + LATEX + priors + "&spot=0.6&rig=heron");
    assertThat(window)
        .contains("prior=priors-", "spot=0.6", "rig=heron", "name=\"spot\" value=\"0.6\"")
        .contains("<option selected>heron</option>");
    assertThat(served.refusal("window" + LATEX + "&prior=nonsense"))
        .contains("a line must look like");
    assertThat(served.refusal("window" + LATEX + "&prior=priors-00000000"))
        .contains("are not known any more");
    assertThat(served.refusal("window" + LATEX + "&spot=-1")).contains("Spot diameter");
  }

  @Test
  void a_rig_shows_its_drift_as_the_command_line_finds_it() throws Exception {
    String drift = served.charline("rig drift heron");
    String page = served.page("rig?of=heron");
    assertThat(page)
        .contains("Rig heron", "It shows no drift.", "class=\"up\"", "power checks: metered over")
        .contains("/put-right/check?rig=heron");
    assertThat(drift).contains("Rig heron shows no drift.");
    assertThat(served.answer("rig?of=heroin")).contains("heron");
  }

  @Test
  void a_sample_result_is_put_right_for_a_reason() throws Exception {
    String finish = served.log().finishes().get(0).name().replace(" ", "%20");
    served.post("finish/sample?name=" + finish, "substance=lead&result=free&on=2026-11-02");
    String code = served.log().samples().all().get(0).code();
    assertThat(served.page("finish?name=" + finish)).contains("Put " + code + " right");
    assertThat(served.page("finish/sample?name=" + finish + "&sample=" + code))
        .contains("Sample " + code, "value=\"lead\"", "value=\"2026-11-02\"");
    String form = "sample=" + code + "&substance=lead&result=found&on=2026-11-02&why=";
    assertThat(served.post("finish/amend?name=" + finish, form)).contains("The reason is missing");
    served.post("finish/amend?name=" + finish, form + "report+came");
    assertThat(served.log().samples().all().get(0).result().word()).isEqualTo("found");
    assertThat(served.page("finish/sample?name=" + finish + "&sample=" + code))
        .contains("report came");
  }
}
