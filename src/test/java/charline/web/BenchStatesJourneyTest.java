package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;

/** Every state of Record for everyone: light and dark, and in the size of each device. */
class BenchStatesJourneyTest extends BenchVisit {
  private static final String SAFE = "record?like=LP-01&power=80&pace=30";

  private final SoftAssertions all = new SoftAssertions();

  @Test
  void every_state_of_record_can_be_read_and_used_by_anyone() throws IOException {
    for (String theme : List.of("light", "dark")) {
      browser.fresh().size(390, 844);
      browser.prefers("prefers-color-scheme", theme);
      browser.open(bench.address() + SAFE);
      browser.untilSays("#live", "At most");
      look("safe, " + theme);
      browser.type("#k-hand", "14");
      browser.untilSays("#live", "Hot");
      look("hot, " + theme);
      browser.type("#k-hand", "60");
      browser.untilSays("#live", "Not tried");
      look("not tried, " + theme);
      browser.type("#k-hand", "");
      browser.untilSays("#live", "No setting yet");
      browser.type("#k-power", "100");
      browser.tap("[data-for=k-power][data-step='5']");
      look("at the end of a knob, " + theme);
      browser.unfold("place");
      browser.unfold("lesser");
      browser.unfold("seen-more");
      browser.unfold("made");
      browser.unfold("basis");
      look("unfolded, " + theme);
      browser.tap("#keep");
      browser.untilSays("#trouble", "First tap what you see");
      look("refused, " + theme);
      browser.type("#k-hand", "30");
      browser.tap("#k-hand");
      look("number pad, " + theme);
      browser.tap("#pad-cancel");
      browser.connection(false);
      browser.tap("[data-for=k-hand][data-step='1']");
      browser.untilSays("#link", "No connection");
      look("away, " + theme);
      keep(browser, "residue");
      look("kept on the device, " + theme);
      browser.connection(true);
      browser.untilSays("#title", "Kept in the log");
      look("kept, " + theme);
      browser.tap("#further");
      look("a further reading, " + theme);
    }
    all.assertAll();
  }

  private void look(String what) throws IOException {
    all.assertThat(Accessible.violations(browser)).as(what).isEmpty();
    all.assertThat(Accessible.small(browser)).as("targets, " + what).isEmpty();
    all.assertThat(browser.script("return document.documentElement.scrollWidth"))
        .as("width, " + what)
        .isEqualTo(390L);
  }

  @Test
  void in_the_size_of_each_device_the_outcome_and_keep_are_in_sight() {
    Map<String, int[]> devices =
        Map.of(
            "phone", new int[] {390, 844},
            "phone on its side", new int[] {844, 390},
            "tablet", new int[] {820, 1180},
            "laptop", new int[] {1280, 800});
    devices.forEach(
        (device, size) -> {
          browser.size(size[0], size[1]);
          browser.open(bench.address() + SAFE);
          browser.untilSays("#live", "Safe for the wood");
          for (String css :
              List.of("#live", "#k-power", "#k-hand", "#count", "input[value=residue]", "#keep")) {
            all.assertThat(hidden(css)).as(device + ", " + css).isEqualTo("");
          }
        });
    all.assertAll();
  }

  /** Blank where the middle of an element is seen and can be tapped, else what lies there. */
  private static Object hidden(String css) {
    return browser.script(
        "const e = document.querySelector(arguments[0]), r = e.getBoundingClientRect(), top ="
            + " document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2); if (top && (e"
            + " === top || e.contains(top))) return ''; return top ? top.outerHTML.slice(0, 90) :"
            + " 'outside';",
        css);
  }

  @Test
  void nothing_moves_by_itself_for_a_person_who_wants_no_motion() {
    browser.prefers("prefers-reduced-motion", "reduce");
    browser.open(bench.address() + SAFE);
    browser.script("document.getElementById('keep').setAttribute('aria-busy', 'true')");
    assertThat(
            browser.script(
                "return getComputedStyle(document.getElementById('keep'),"
                    + " '::before').animationName"))
        .isEqualTo("none");
    browser.prefers("prefers-reduced-motion", "no-preference");
  }
}
