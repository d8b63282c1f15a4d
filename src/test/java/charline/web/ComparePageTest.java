package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.PlannedPatch;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two ways of working are compared on the page as on the command line. */
class ComparePageTest {
  private static final String LATEX = "compare?family=latex&wood=pine";

  @AutoClose private final ServedLog served;

  ComparePageTest(@TempDir Path folder) {
    served = new ServedLog(folder, "latex-on-pine");
  }

  @Test
  void the_page_offers_the_ways_that_were_tried_and_says_what_the_command_line_says()
      throws Exception {
    String choices = served.page(LATEX);
    assertThat(choices)
        .contains("work in 1 against 2 passes", "a=passes%3A1&amp;b=passes%3A2")
        .doesNotContain("figure:", "rig:", "light:");
    String page = ServedLog.flat(served.page(LATEX + "&a=passes%3A1&b=passes%3A2"));
    String cli = ServedLog.flat(served.charline("compare latex pine --passes 1 --passes 2", 1));
    String sentence = cli.substring(cli.indexOf("Work in 1 pass"), cli.indexOf("4 boards carry"));
    assertThat(page)
        .contains(sentence.strip())
        .contains("<svg class=\"plot\"", "BEFORE THE BEAM: lead: not tested.", "Cautions, in full")
        .doesNotContain("Pairs that would tell");
    assertThat(served.page("window?family=latex&wood=pine&light=pulsed-1064"))
        .contains("Compare two ways of working");
  }

  @Test
  void another_figure_can_be_compared_once_it_was_tried_and_pairs_are_listed() throws Exception {
    served.charline("rig amend heron --figure line --why usual");
    served.charline("patch add --like LP-01 --figure circle --passes 2 --outcome char");
    served.charline("patch add --like LP-12 --figure circle --passes 2 --outcome clean");
    assertThat(served.page(LATEX)).contains("figure: circle against line");
    assertThat(ServedLog.flat(served.page(LATEX + "&a=figure%3Acircle&b=figure%3Aline")))
        .contains("circle against line", "Not settled", "Pairs that would tell")
        .contains("J/cm²", "cm²/min", "Eyewear, extraction and a fire watch come before any patch.")
        .doesNotContain("cm2/", "/cm2")
        .containsPattern("1\\. On [\\w ]+</h3> <p>(line|circle): ");
  }

  @Test
  void places_rests_and_a_wetted_finish_are_compared_once_they_were_tried() throws Exception {
    served.charline("patch add --like LP-01 --place arris --outcome char");
    served.charline("patch add --like LP-01 --wetted yes --rest 5s --outcome char");
    served.charline("patch add --like LP-12 --wetted no --rest 60s --outcome clean");
    assertThat(served.page(LATEX))
        .contains(
            "place: arris against face",
            "wood at the next pass: cooled against hot",
            "finish: dry against wetted");
    assertThat(served.page(LATEX + "&a=place%3Aarris&b=place%3Aface"))
        .contains("the arris against the face", "Counted: 1 patch with the arris");
    assertThat(served.page(LATEX + "&a=rest%3Acooled&b=rest%3Ahot"))
        .contains("cooled wood against hot wood", "Counted: 1 patch with cooled wood");
    assertThat(served.page(LATEX + "&a=finish%3Adry&b=finish%3Awetted"))
        .contains("dry against wetted", "1 patch with wetted");
  }

  @Test
  void a_pair_is_planned_by_a_tap_and_each_of_it_fills_the_form() throws Exception {
    served.charline("rig amend heron --figure line --why usual");
    served.charline("patch add --like LP-01 --figure circle --passes 2 --outcome char");
    served.charline("patch add --like LP-12 --figure circle --passes 2 --outcome clean");
    String ways = "&a=figure%3Acircle&b=figure%3Aline";
    String page = served.page(LATEX + ways);
    Matcher pair = Pattern.compile("name=\"said\" value=\"([^\"]+)\"").matcher(page);
    assertThat(pair.find()).as(page).isTrue();
    String said = "said=" + pair.group(1).replace("%", "%25").replace(" ", "+");
    String record = served.led(LATEX.replace("?", "/burn?") + ways, said);
    List<PlannedPatch> plans = served.log().planned().open();
    assertThat(plans).hasSize(2);
    assertThat(plans)
        .extracting(plan -> plan.figure().orElseThrow().word())
        .containsExactlyInAnyOrder("circle", "line");
    assertThat(plans).extracting(PlannedPatch::place).containsOnly(plans.get(0).place());
    assertThat(record).contains("Plan " + plans.get(0).code(), "pair 1: ");
    assertThat(served.page(LATEX + ways))
        .contains("Planned already", "/record?plan=" + plans.get(1).code());
    assertThat(served.post(LATEX.replace("?", "/burn?") + ways, "said=nothing"))
        .contains("The list has changed since, and nothing is not on it; choose again.");
    assertThat(served.log().planned().open()).hasSize(2);
  }

  @Test
  void what_is_no_way_of_working_is_refused() throws Exception {
    assertThat(served.refusal(LATEX + "&a=colour%3Ared&b=colour%3Ablue"))
        .contains("Choose two ways of working from the list.");
    assertThat(served.refusal(LATEX + "&a=figure%3Aspiral&b=figure%3Aline"))
        .contains("was not tried with rig heron, figure spiral");
  }
}
