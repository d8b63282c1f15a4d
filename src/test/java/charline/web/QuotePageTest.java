package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page asks and answers what the command line does: hours, overlap, a job's limit. */
class QuotePageTest {
  private static final String LATEX = "?family=latex&wood=pine&light=pulsed-1064";
  private static final Pattern ROW =
      Pattern.compile(
          "<tr class=\"(sum)?\"><th scope=\"row\">([a-z -]+?) ?(?:<span>[^<]*</span>)?</th>"
              + "<td>([\\d.]+)</td><td>([\\d.]+)</td><td>([\\d.]+)</td></tr>");

  @AutoClose private final ServedLog served;

  QuotePageTest(@TempDir Path folder) {
    served = new ServedLog(folder, "latex-on-pine");
  }

  @Test
  void without_an_area_the_page_asks_for_one() throws Exception {
    assertThat(served.page("quote" + LATEX))
        .contains("Quote: latex on pine", "name=\"job\"", "placeholder=\"10 min (5 to 20) a square")
        .contains("BEFORE THE BEAM: lead: not tested.")
        .doesNotContain("Hours, which add up");
  }

  @Test
  void a_quote_on_the_page_has_every_part_and_adds_up_as_printed() throws Exception {
    String page =
        served.page(
            "quote"
                + LATEX
                + "&job=20m2&second=50&rate=65&machineday=240&smallest=90000&lead=found");
    assertThat(page)
        .contains("20 m² in strokes overlapping 10 %", "Lead was found.", "machine, by the day")
        .contains("charged", "90000.00");

    List<MatchResult> rows = ROW.matcher(page).results().toList();
    assertThat(rows.stream().map(row -> row.group(2)))
        .contains("beam and handling", "rework of char", "lead containment", "contingency")
        .contains("second person", "all hours");
    for (int column = 3; column <= 5; column++) {
      BigDecimal sum = BigDecimal.ZERO;
      for (MatchResult row : rows) {
        BigDecimal value = new BigDecimal(row.group(column));
        if (row.group(2).equals("on site")) {
          assertThat(value).isEqualByComparingTo(sum);
          break;
        }
        sum = sum.add(value);
      }
    }
  }

  @Test
  void the_window_page_takes_overlap_and_a_limit_for_the_job() throws Exception {
    assertThat(served.page("window" + LATEX))
        .contains("strokes overlap 10 %", "charred spots per m², at most ")
        .contains("Asked: char risk at most 5 % (at most 16.7 charred spots per m²)")
        .contains("/quote?family=latex&amp;wood=pine&amp;light=pulsed-1064&amp;risk=5")
        .doesNotContain("<b>Mind:</b>");
    assertThat(served.page("window" + LATEX + "&overlap=20"))
        .contains("strokes overlap 20 %", "name=\"overlap\" value=\"20\"");
    assertThat(served.page("window" + LATEX + "&job=4.5&jobrisk=10"))
        .contains("Job of 4.5 m² with at most 10 % chance of any charred spot")
        .contains("<b>Mind:</b> At a char risk of 0.00702 %, 24 patches most likely show no char");
  }

  @Test
  void the_risk_of_a_place_on_the_map_and_of_a_dialled_patch_names_the_spots() throws Exception {
    assertThat(served.page("window/at" + LATEX + "&overlap=20&power=70&speed=40&passes=1"))
        .containsPattern(
            "[\\d.]+ charred spots per m², at most [\\d.]+ with strokes overlapping 20 %");
  }

  @Test
  void what_cannot_be_quoted_is_refused_in_a_sentence() throws Exception {
    assertThat(served.answer("quote" + LATEX + "&job=4&day=4"))
        .contains("A day of 4 h has no time for the work");
    assertThat(served.answer("quote" + LATEX + "&jobrisk=4"))
        .contains("A limit for the whole job needs the job");
    assertThat(served.answer("quote" + LATEX + "&job=4&lead=maybe"))
        .contains("Lead must be one of free, found, untested");
  }
}
