package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a window to the record of a patch at its start. */
class RecordStartTest {
  private static final String LATEX = "?family=latex&wood=pine";

  @AutoClose private final ServedLog served;

  RecordStartTest(@TempDir Path folder) {
    served = new ServedLog(folder, "latex-on-pine");
  }

  @Test
  void the_start_is_recorded_on_the_rig_of_the_window_whatever_was_used_last() throws Exception {
    served.charline(
        "rig add gull --kind pulsed --rated 500W --spot 0.6mm --rep 100kHz --pulse 80ns --width"
            + " 40mm");
    served.charline(
        "patch add --like LP-24 --rig gull --power 30% --hand 40mm/s --passes 3 --outcome clean");

    String window = served.page("window" + LATEX);
    assertThat(window)
        .contains(
            "Rig heron: spot 0.5 mm (1/e2), 60 kHz, 100 ns, scan width 60 mm, strokes overlap 10"
                + " %.");
    Matcher link = Pattern.compile("href=\"/(record[^\"]+)\"").matcher(window);
    assertThat(link.find()).isTrue();
    String record = served.page(link.group(1).replace("&amp;", "&"));

    assertThat(value(record, "spot")).isEqualTo("0.5");
    assertThat(value(record, "rep")).isEqualTo("60");
    assertThat(value(record, "pulse")).isEqualTo("100");
    assertThat(value(record, "width")).isEqualTo("60");
    assertThat(record).containsPattern("<option[^>]* selected[^>]*>heron");
    assertThat(record).doesNotContainPattern("<option[^>]* selected[^>]*>gull");
  }

  @Test
  void a_scan_width_that_is_none_is_said_to_be_none() throws Exception {
    assertThat(served.page("window" + LATEX + "&width=-5"))
        .contains("Scan width must be above 0 mm");
    assertThat(served.page("window" + LATEX + "&width=wide")).contains("A length must be a number");
  }

  @Test
  void what_cannot_be_dialled_is_said_in_place_of_figures() throws Exception {
    String at = "window/at" + LATEX + "&passes=1&speed=%s&power=%s";
    assertThat(served.page(at.formatted("30", "150")))
        .contains("Power must be between 0 and 100 %, not 150 %.")
        .doesNotContain("about");
    assertThat(served.page(at.formatted("0", "80"))).contains("Speed must be above 0 mm/s");
    assertThat(served.page(at.formatted("30mm%2Fs", "80")))
        .contains("about")
        .doesNotContain("note");
    assertThat(served.page(at.formatted("30,5", "80"))).contains("about");
  }

  @Test
  void a_doubtful_power_check_and_half_a_coat_are_not_taken() throws Exception {
    assertThat(served.post("set-up/check", "rig=heron&percent=50&metered=900"))
        .contains(
            "900 W at 50 % is 623.3 % of what heron should give, as metered on 2026-10-14",
            "I am sure of these values");
    assertThat(served.log().rig("heron").checks()).hasSize(2);
    assertThat(served.post("set-up/finish", "name=wall&coat1=&thickness1=40&coat2=latex"))
        .contains("Coat 1 has a tone or a thickness but no coating");
    assertThat(served.post("set-up/check", "rig=heron&percent=50&metered=900&sure=true"))
        .isEqualTo("Redirected");
    assertThat(served.log().rig("heron").checks()).hasSize(3);
  }

  private static String value(String page, String knob) {
    Matcher input =
        Pattern.compile("<input[^>]*id=\"k-%s\"[^>]*value=\"([^\"]*)\"".formatted(knob))
            .matcher(page);
    assertThat(input.find()).as(knob).isTrue();
    return input.group(1);
  }
}
