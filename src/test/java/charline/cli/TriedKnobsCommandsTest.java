package charline.cli;

import static charline.cli.Shell.part;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A window never leaves what was tried in any knob, or says so. Invented trials. */
class TriedKnobsCommandsTest {
  private static final Map<String, Shell.Result> ANSWERS = new HashMap<>();

  @TempDir static Path folder;
  private static Shell shell;

  @BeforeAll
  static void import_the_boathouse() {
    shell =
        new Shell(folder)
            .at("2026-11-01T09:00:00Z")
            .mustDo(
                "import sample-trials/latex-on-pine.csv sample-trials/varnish-on-ash.csv --rigs"
                    + " sample-trials/rigs.csv --power-checks sample-trials/power-checks.csv");
  }

  private static String said(String line) {
    return ANSWERS.computeIfAbsent(line, shell::run).flat();
  }

  private static Map<String, Object> json(String line) {
    return ANSWERS.computeIfAbsent(line, shell::run).json();
  }

  @SuppressWarnings("unchecked")
  private static List<Map<String, Object>> list(Object part) {
    return (List<Map<String, Object>>) part;
  }

  /** Every latex patch was burned at 100 ns, 60 kHz, 0.5 mm and 60 mm. */
  @ParameterizedTest
  @CsvSource({
    "pulse=350, pulse duration of 350 ns (tried: 100 ns)",
    "rep=90, repetition rate of 90 kHz (tried: 60 kHz)",
    "width=40, scan width of 40 mm (tried: 60 mm)"
  })
  void a_knob_outside_the_trials_is_named_with_what_was_tried(String knob, String words) {
    assertThat(said("window latex pine --at " + knob))
        .contains("UNTRIED: No trial had a " + words)
        .contains("`charline next latex pine --at " + knob);
  }

  @Test
  void a_knob_as_it_was_tried_is_not_doubted() {
    assertThat(said("window latex pine --at pulse=100,rep=60,width=60,spot=0.5"))
        .isEqualTo(said("window latex pine"))
        .doesNotContain("UNTRIED");
  }

  @Test
  void no_window_asks_for_a_faster_hand_than_any_trial() {
    for (String stratum : List.of("latex pine", "varnish ash")) {
      Map<String, Object> json = json("window %s --json".formatted(stratum));
      assertThat(json).containsEntry("verdict", "window");
      List<Double> hand = numbers(part(json, "ranges").get("hand_mm_s"));
      assertThat(hand.get(0)).as(stratum).isGreaterThanOrEqualTo(8);
      assertThat(hand.get(1)).as(stratum).isLessThanOrEqualTo(45);
      Map<String, Object> tried = part(json, "tried");
      assertThat(numbers(tried.get("hand_mm_s"))).containsExactly(8.0, 45.0);
      assertThat(numbers(tried.get("pulse_ns"))).containsExactly(100.0);
      assertThat(list(json.get("untried"))).isEmpty();
    }
  }

  private static List<Double> numbers(Object part) {
    return ((List<?>) part).stream().map(n -> ((Number) n).doubleValue()).toList();
  }

  @Test
  void json_names_the_untried_knob() {
    Map<String, Object> json = json("window latex pine --at pulse=350 --json");
    assertThat(list(json.get("untried"))).hasSize(1);
    Map<String, Object> knob = list(json.get("untried")).get(0);
    assertThat(knob).containsEntry("knob", "pulse_ns");
    assertThat(((Number) knob.get("value")).doubleValue()).isEqualTo(350);
    assertThat(numbers(knob.get("tried"))).containsExactly(100.0);
  }

  /** The first patches with an untried knob begin two rungs below the start setting. */
  @Test
  void next_lists_the_patches_that_would_try_it() {
    Map<String, Object> window = json("window latex pine --at pulse=350 --json");
    double start = ((Number) part(window, "start").get("dose_j_cm2")).doubleValue();
    Map<String, Object> next = json("next latex pine --at pulse=350 --json");
    List<Map<String, Object>> patches = list(next.get("patches"));
    assertThat(patches).allMatch(p -> ((Number) p.get("pulse_ns")).doubleValue() == 350);
    assertThat(((Number) patches.get(0).get("dose_j_cm2")).doubleValue())
        .isLessThanOrEqualTo(start / (1.25 * 1.25) + 1e-9);
    assertThat(patches.get(0)).containsEntry("purpose", "climb");
    assertThat(list(window.get("next_patches"))).isEqualTo(patches);
    assertThat(window.get("next_step")).isEqualTo(next.get("advice"));
    assertThat(said("next latex pine --at pulse=350"))
        .contains("with a pulse duration of 350 ns (tried: 100 ns)");
  }

  /** Lines 0.6 mm apart under a spot of 0.5 mm leave stripes of finish between them. */
  @Test
  void lines_that_do_not_touch_make_no_window_and_no_patches() {
    assertThat(said("window latex pine --at spacing=0.6"))
        .contains("no window yet.")
        .contains("The lines lie 0.6 mm apart under a spot of 0.5 mm: they do not touch");
    Shell.Result next = shell.run("next latex pine --at spacing=0.6");
    assertThat(next.code()).isEqualTo(1);
    assertThat(next.out()).contains("nothing to burn");
    assertThat(said("window latex pine --at spacing=0.2")).doesNotContain("do not touch");
  }
}
