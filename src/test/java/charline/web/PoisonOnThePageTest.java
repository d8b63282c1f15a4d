package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The bench page names poison and fire first, and gives no beam where the command line gives none.
 */
class PoisonOnThePageTest {
  private static final String LATEX = "?family=latex&wood=pine";
  private static final String TEXTURE = "?family=textured+coat&wood=pine";
  private static final String LIVE =
      "live?rig=heron&board=wall%20panel%20offcut%201&power=40&power_unit=%25&form=hand&hand=40"
          + "&width=60&spot=0.5&rep=60&pulse=100&passes=1&finish=";

  @AutoClose private final ServedLog served;

  PoisonOnThePageTest(@TempDir Path folder) throws IOException {
    served = new ServedLog(folder, "latex-on-pine");
    String sheet =
        Files.readString(Path.of("sample-trials/latex-on-pine.csv"))
            .replace("LP-", "TX-")
            .replace("wall panel latex,latex,", "hall texture,textured coat,")
            .replace("latex:pale:50um + latex:pale:45um", "");
    served.charline("import " + Files.writeString(folder.resolve("texture.csv"), sheet));
  }

  @Test
  void record_shows_the_poison_of_the_chosen_finish_before_it_is_fired() throws Exception {
    String record = served.page("record?like=LP-24");
    assertThat(record)
        .contains(
            "<a id=\"live-poison\" class=\"poison\""
                + " href=\"/finish?name=wall%20panel%20latex\">BEFORE THE BEAM: lead: not"
                + " tested.</a>")
        .contains("data-poison=\"NO BEAM: Finish hall texture may hold asbestos");
    assertThat(served.page("record?like=TX-24"))
        .contains("href=\"/finish?name=hall%20texture\">NO BEAM: Finish hall texture may hold");
  }

  @Test
  void the_live_risk_of_a_coat_without_beam_is_no_figure() throws Exception {
    assertThat(served.page(LIVE + "wall%20panel%20latex"))
        .contains("\"poison\":\"BEFORE THE BEAM: lead: not tested.\"", "\"does\":");
    assertThat(served.page(LIVE + "hall%20texture"))
        .contains("\"poison\":\"NO BEAM: Finish hall texture", "asbestos surveyor")
        .doesNotContain("\"char\"", "\"does\"");
  }

  @Test
  void window_and_sheet_name_it_at_the_top() throws Exception {
    assertThat(served.page("window" + LATEX))
        .containsSubsequence(
            "<h1>", "class=\"poison\">BEFORE THE BEAM: lead: not tested.", "class=\"verdict");
    assertThat(served.page("sheet" + LATEX)).contains("Before the beam: lead: not tested.");
  }

  @Test
  void a_coat_without_beam_has_a_page_that_says_why_and_what_to_do() throws Exception {
    assertThat(served.page("window" + TEXTURE))
        .contains("no beam", "Finish hall texture may hold asbestos")
        .contains("licensed or accredited asbestos surveyor", "Local codes, the insurer")
        .doesNotContain("class=\"start\"");
    assertThat(served.page("window")).contains("<span class=\"verdict\">no beam");
    assertThat(served.post("sheet" + TEXTURE, "")).doesNotContain("Leave as it is");
  }

  @Test
  void a_sample_is_recorded_on_the_page_of_its_finish_and_taken_out_again() throws Exception {
    assertThat(served.page("set-up"))
        .contains("/finish?name=hall%20texture", "NO BEAM: Finish hall texture");
    assertThat(served.page("finish?name=hall%20texture"))
        .contains("No sample result is recorded", "Record a sample result", "asbestos");

    served.post(
        "finish/sample?name=hall%20texture",
        "substance=asbestos&result=free&on=2026-11-02&reference=B-17&tested_by=Shore+Lab");

    assertThat(served.page("finish?name=hall%20texture"))
        .contains("S-0001: asbestos in finish hall texture: not found (2026-11-02, B-17)")
        .doesNotContain("NO BEAM");
    assertThat(served.page("window" + TEXTURE)).contains("asbestos: not found (2026-11-02, B-17)");

    served.post("finish/void?name=hall%20texture", "sample=S-0001&why=wrong+hall");
    assertThat(served.page("finish?name=hall%20texture")).contains("NO BEAM");
    assertThat(served.log().samples().all()).singleElement().matches(s -> s.voided().isPresent());
  }

  @Test
  void a_slip_is_asked_about_and_a_result_for_a_job_needs_the_job() throws Exception {
    String slip = "substance=asbestus&result=free&on=2026-11-02";
    assertThat(served.post("finish/sample?name=hall%20texture", slip))
        .contains("is none of the usual substances (nearest: asbestos)", "I am sure");
    assertThat(served.post("finish/sample?name=hall%20texture", slip + "&whole_job=true"))
        .contains("A result for a whole job needs the name of the job.");
    assertThat(
            served.post(
                "finish/sample?name=hall%20texture", "substance=lead&result=found&on=yesterday"))
        .contains("The day of a sample must read like 2026-05-04, not \"yesterday\".");
    assertThat(served.log().samples().all()).isEmpty();
  }
}
