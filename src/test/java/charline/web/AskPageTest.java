package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The log is asked on the page by words and by every filter, and every patch found can be seen. */
class AskPageTest {
  @AutoClose private final ServedLog served;

  AskPageTest(@TempDir Path folder) {
    served =
        new ServedLog(
            folder, "latex-on-pine", "varnish-on-ash", "shellac-on-oak", "alkyd-on-pine-cw");
  }

  private static List<String> codes(String page) {
    return Pattern.compile("<th scope=\"row\"><a href=\"/patch/[^\"]+\">([^<]+)</a>")
        .matcher(page)
        .results()
        .map(m -> m.group(1))
        .toList();
  }

  private List<String> ofCommandLine(String options) {
    return served
        .charline("find " + options + " --csv")
        .lines()
        .skip(1)
        .map(line -> line.split(",")[0])
        .distinct()
        .toList();
  }

  private List<String> everyPage(String address) throws Exception {
    List<String> all = new ArrayList<>();
    for (int page = 1; ; page++) {
      String text = served.page(address + "&page=" + page);
      all.addAll(codes(text));
      if (!text.contains("rel=\"next\"")) {
        return all;
      }
    }
  }

  @Test
  void pages_go_on_to_the_last_patch() throws Exception {
    List<String> all = ofCommandLine("");
    assertThat(all.size()).isGreaterThan(50);
    assertThat(served.page("ask"))
        .contains(all.size() + " patches on ", "1 to 50 of " + all.size(), ">Further</a>");
    List<String> newestFirst = new ArrayList<>(all);
    Collections.reverse(newestFirst);
    assertThat(everyPage("ask?q=")).containsExactlyElementsOf(newestFirst);
  }

  @Test
  void days_are_the_first_and_the_last_in_whatever_order_patches_come() throws Exception {
    for (String question : List.of("latex", "latex,+newest+first", "latex+sorted+by+power+desc")) {
      assertThat(served.page("ask?q=" + question))
          .as(question)
          .contains(", burned 2026-09-03 to 2026-09-10");
    }
  }

  @Test
  void a_patch_of_another_zone_is_told_from_one_of_another_day() throws Exception {
    String remark = "on another day by your clock: their bench is in another zone";
    served.charline("patch add --like LP-01 --at 2026-07-15T23:30-05:00 --sure --outcome clean");
    assertThat(served.page("ask?q=&since=2026-07-16&until=2026-07-16"))
        .contains("1 patch on 1 board, burned on 2026-07-15, all " + remark);
    assertThat(served.page("ask?q=latex")).doesNotContain(remark);
  }

  @Test
  void a_column_sorts_both_ways() throws Exception {
    List<String> rising = everyPage("ask?q=&sort=dose&order=rising");
    List<String> falling = everyPage("ask?q=&sort=dose&order=falling");
    Collections.reverse(falling);
    assertThat(rising).containsExactlyInAnyOrderElementsOf(ofCommandLine(""));
    double before = 0;
    for (String code : rising) {
      double dose = served.log().patch(code).patch().exposure().doseJoulesPerCm2();
      assertThat(dose).isGreaterThanOrEqualTo(before);
      before = dose;
    }
    assertThat(falling.get(0)).isIn(rising.subList(0, 3));
    assertThat(served.page("ask?q=&sort=dose&order=rising"))
        .contains("aria-sort=\"ascending\"", "sort=dose&amp;order=falling");
  }

  @Test
  void every_filter_finds_what_the_command_line_finds() throws Exception {
    String board = served.log().patch("LP-01").patch().board().name();
    String finish = served.log().patch("LP-01").patch().finish().name();
    for (String[] filter :
        new String[][] {
          {"family=varnish", "--family varnish"},
          {"wood=oak", "--wood oak"},
          {"outcome=char", "--outcome char"},
          {"outcome=char&outcome=residue", "--outcome char+residue"},
          {"rig=heron", "--rig heron"},
          {"by=Runa", "--by Runa"},
          {"job=boathouse", "--job boathouse"},
          {"since=2026-09-10", "--since 2026-09-10"},
          {"until=2026-09-03", "--until 2026-09-03"},
          {
            "since=2026-09-04&until=2026-10-01&family=latex",
            "--since 2026-09-04 --until 2026-10-01 --family latex"
          }
        }) {
      assertThat(everyPage("ask?q=&" + filter[0]))
          .as(filter[0])
          .containsExactlyInAnyOrderElementsOf(ofCommandLine(filter[1]))
          .isNotEmpty();
    }
    assertThat(everyPage("ask?q=&board=" + board.replace(" ", "%20")))
        .contains("LP-01")
        .allSatisfy(
            code -> assertThat(served.log().patch(code).patch().board().name()).isEqualTo(board));
    assertThat(everyPage("ask?q=&finish=" + finish.replace(" ", "%20"))).contains("LP-01");
  }

  @Test
  void words_and_filters_narrow_together_and_each_filter_can_be_left_out() throws Exception {
    assertThat(everyPage("ask?q=clean&family=latex"))
        .containsExactlyInAnyOrderElementsOf(ofCommandLine("clean latex"));
    assertThat(served.page("ask?q=clean&family=latex"))
        .contains("family: latex", "href=\"/ask?q=clean\"", "By dose: ", "clean ");
  }

  @Test
  void where_nothing_is_found_the_page_offers_what_would_be() throws Exception {
    assertThat(served.page("ask?q=&family=latex&wood=oak"))
        .contains("No patch found", "The log has ", "without oak: 24 patches", "All patches");
    assertThat(served.page("ask?q=&family=latez")).contains("latex");
    assertThat(served.page("ask?q=&since=lately")).contains("A day must read like 2026-05-04");
  }
}
