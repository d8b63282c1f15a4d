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
      phone.fresh().size(390, 844);
      phone.prefers("prefers-color-scheme", theme);
      phone.open(bench.address() + SAFE);
      phone.untilSays("#live", "At most");
      look("safe, " + theme);
      phone.type("#k-hand", "14");
      phone.untilSays("#live", "Hot");
      look("hot, " + theme);
      phone.type("#k-hand", "60");
      phone.untilSays("#live", "Not tried");
      look("not tried, " + theme);
      phone.type("#k-hand", "");
      phone.untilSays("#live", "No setting yet");
      phone.type("#k-power", "100");
      phone.tap("[data-for=k-power][data-step='5']");
      look("at the end of a knob, " + theme);
      phone.unfold("place");
      phone.unfold("lesser");
      phone.unfold("seen-more");
      phone.unfold("made");
      phone.unfold("basis");
      look("unfolded, " + theme);
      phone.tap("#keep");
      phone.untilSays("#trouble", "First tap what you see");
      look("refused, " + theme);
      phone.type("#k-hand", "30");
      phone.tap("#k-hand");
      look("number pad, " + theme);
      phone.tap("#pad-cancel");
      phone.connection(false);
      phone.tap("[data-for=k-hand][data-step='1']");
      phone.untilSays("#link", "No connection");
      look("away, " + theme);
      keep(phone, "residue");
      look("kept on the device, " + theme);
      phone.connection(true);
      phone.untilSays("#title", "Kept in the log");
      look("kept, " + theme);
      phone.tap("#further");
      look("a further reading, " + theme);
    }
    all.assertAll();
  }

  private void look(String what) throws IOException {
    all.assertThat(Accessible.violations(phone)).as(what).isEmpty();
    all.assertThat(Accessible.small(phone)).as("targets, " + what).isEmpty();
    all.assertThat(phone.script("return document.documentElement.scrollWidth"))
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
          phone.size(size[0], size[1]);
          phone.open(bench.address() + SAFE);
          phone.untilSays("#live", "Safe for the wood");
          for (String css :
              List.of("#live", "#k-power", "#k-hand", "#count", "input[value=residue]", "#keep")) {
            all.assertThat(hidden(css)).as(device + ", " + css).isEqualTo("");
          }
        });
    all.assertAll();
  }

  /** Blank where the middle of an element is seen and can be tapped, else what lies there. */
  private static Object hidden(String css) {
    return phone.script(
        "const e = document.querySelector(arguments[0]), r = e.getBoundingClientRect(), top ="
            + " document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2); if (top && (e"
            + " === top || e.contains(top))) return ''; return top ? top.outerHTML.slice(0, 90) :"
            + " 'outside';",
        css);
  }

  @Test
  void nothing_moves_by_itself_for_a_person_who_wants_no_motion() {
    phone.prefers("prefers-reduced-motion", "reduce");
    phone.open(bench.address() + SAFE);
    phone.script("document.getElementById('keep').setAttribute('aria-busy', 'true')");
    assertThat(
            phone.script(
                "return getComputedStyle(document.getElementById('keep'),"
                    + " '::before').animationName"))
        .isEqualTo("none");
    phone.prefers("prefers-reduced-motion", "no-preference");
  }
}
