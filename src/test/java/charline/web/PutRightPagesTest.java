package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Figure;
import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was set up is put right on the page, as on the command line. */
class PutRightPagesTest {
  @AutoClose private final ServedLog served;

  PutRightPagesTest(@TempDir Path folder) {
    served = new ServedLog(folder, "latex-on-pine");
  }

  private String checkId() {
    return served.log().rig("heron").checks().get(1).id().toString();
  }

  @Test
  void a_power_check_is_put_right_and_void_and_brought_back() throws Exception {
    String id = checkId();
    assertThat(served.page("set-up")).contains("/put-right/check?rig=heron&amp;of=" + id);
    assertThat(served.page("put-right/check?rig=heron&of=" + id))
        .contains("Power check of rig heron on 2026-10-14", "value=\"144.4\"");

    String form = "rig=heron&of=" + id + "&percent=50&metered=";
    assertThat(served.post("put-right/check", form + "40"))
        .contains("40 W at 50 % is 26.7 % of what heron should give", "I am sure of these values");
    served.post("put-right/check", form + "140&why=misread");
    assertThat(served.log().rig("heron").checks().get(1).meteredWatts()).isEqualTo(140);
    assertThat(served.page("put-right/check?rig=heron&of=" + id))
        .contains("metered power from 144.4 W to 140 W. misread");

    assertThat(served.post("put-right/check/void", "rig=heron&of=" + id + "&why="))
        .contains("The reason is missing.");
    served.post("put-right/check/void", "rig=heron&of=" + id + "&why=cold");
    assertThat(served.log().rig("heron").checks()).hasSize(1);
    assertThat(served.page("put-right/check?rig=heron&of=" + id))
        .contains("Void: cold.", "Let it count again");
    assertThat(served.page("set-up")).contains("Void: 2026-10-14, 140 W at 50 %");
    served.post("put-right/check/bring-back", "rig=heron&of=" + id);
    assertThat(served.log().rig("heron").checks()).hasSize(2);
  }

  @Test
  void upkeep_is_recorded_put_right_void_and_brought_back() throws Exception {
    assertThat(served.post("set-up/upkeep", "rig=heron&what=widow-cleaned"))
        .contains("is none of window-cleaned", "I am sure of these values");
    served.post("set-up/upkeep", "rig=heron&what=window-cleaned&hours=412&note=burnt");
    String id = served.log().rig("heron").upkeep().get(0).id().toString();
    assertThat(served.page("set-up")).contains(": window-cleaned at 412 h</a>");
    assertThat(served.page("put-right/upkeep?rig=heron&of=" + id))
        .contains("Upkeep of rig heron on", "value=\"burnt\"");
    String form = "rig=heron&of=" + id;
    served.post("put-right/upkeep", form + "&what=lens&hours=&note=burnt");
    assertThat(served.log().rig("heron").upkeep().get(0).work()).isEqualTo("lens");
    served.post("put-right/upkeep/void", form + "&why=wrong");
    assertThat(served.log().rig("heron").upkeep()).isEmpty();
    assertThat(served.page("put-right/upkeep?rig=heron&of=" + id))
        .contains("Void: wrong.", "what was done from window-cleaned to lens");
    served.post("put-right/upkeep/bring-back", form);
    assertThat(served.log().rig("heron").upkeep()).hasSize(1);
  }

  @Test
  void what_is_usual_of_a_rig_is_on_its_form_and_where_patches_are_recorded() throws Exception {
    served.post(
        "put-right/rig",
        "of=heron&name=heron&rated=300&wavelength=1064&spot=0.5&spot_means=1/e2&rep=60&pulse=100"
            + "&width=60&lens=&figure=circle&lines=100&standoff=200&air=yes&focus-spot=0.4"
            + "&beam-quality=20");
    assertThat(served.log().rig("heron").usual().head().figure()).contains(Figure.CIRCLE);
    assertThat(served.log().rig("heron").optics().beamQuality()).hasValue(20);
    assertThat(served.page("set-up"))
        .contains("circle, 100 turns/s, stand-off 200 mm, air assist, spot 0.4 mm");
    assertThat(served.page("put-right/rig?of=heron"))
        .contains("value=\"circle\"", "scan figure from nothing to circle");
    assertThat(served.page("record"))
        .contains("data-figure=\"circle\"", "data-air=\"yes\"", "Place on the board");
  }

  @Test
  void rigs_boards_and_finishes_are_put_right_and_joined() throws Exception {
    served.post(
        "put-right/rig",
        "of=heron&name=egret&rated=300&wavelength=1064&spot=0.5&spot_means=1/e2&rep=60&pulse="
            + "&width=60&max_pulse=6&lens=");
    assertThat(served.log().rig("heron").name()).isEqualTo("egret");
    assertThat(served.log().rig("egret").pulseNanoseconds()).isEmpty();
    assertThat(served.log().rig("egret").largestPulseMillijoules()).hasValue(6);
    assertThat(served.page("put-right/rig?of=egret")).contains("name from heron to egret.");

    String board = served.log().boards().get(0).name();
    String other = served.log().boards().get(1).name();
    String of = board.replace(" ", "+");
    served.post(
        "put-right/board", "of=" + of + "&name=" + of + "&wood=pine&form=solid&job=boathouse");
    served.post("put-right/board/join", "of=" + of + "&into=" + other.replace(" ", "+"));
    assertThat(served.log().board(board).name()).isEqualTo(other);
    served.post("put-right/board/void", "of=" + other.replace(" ", "+") + "&why=treated");
    assertThat(served.page("set-up"))
        .doesNotContain("<b>" + other + "</b>")
        .contains(other + "</a>: void, no analysis uses it");

    String finish = served.log().finishes().get(0).name();
    String named = finish.replace(" ", "+");
    served.post(
        "put-right/finish",
        "of=" + named + "&name=" + named + "&family=latex&coat1=latex&tone1=dark&thickness1=70");
    assertThat(served.log().finish(finish).coats()).hasSize(1);
    assertThat(served.page("put-right/finish?of=" + finish.replace(" ", "%20")))
        .contains("coat 1: ");
  }

  @Test
  void a_slip_is_asked_about_before_it_is_kept() throws Exception {
    String live =
        served.page(
            "live?rig=heron&board=%s&finish=%s&power=50&form=hand&hand=25&width=60&spot=6&rep=60&passes=1"
                .formatted(
                    served.log().boards().get(0).name().replace(" ", "%20"),
                    served.log().finishes().get(0).name().replace(" ", "%20")));
    assertThat(live).contains("Spot diameter of 6 mm is far from what rig heron had so far");
  }

  /** What an import brought is nobody's last patch, so nothing is copied from it. */
  @Test
  void the_record_page_begins_with_ones_own_last_patch() throws Exception {
    assertThat(served.page("record")).contains("name=\"hand\" value=\"\"");
    served.charline("patch add --like LP-24 --hand 26mm/s --outcome clean");
    assertThat(served.page("record")).contains("name=\"hand\" value=\"26\"");
  }
}
