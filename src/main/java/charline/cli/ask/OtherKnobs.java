package charline.cli.ask;

import static charline.quantity.Figures.plain;

import charline.exposure.Settings;
import charline.trial.Circumstances;
import charline.trial.Knob;
import charline.trial.KnobValues;
import charline.trial.Patch;
import charline.wording.CircumstancesText;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Knobs that a list leaves out as long as they are the same all over: settings that look alike and
 * are not must not be taken for one.
 */
final class OtherKnobs {
  private static final List<Knob> KNOBS =
      List.of(Knob.SPOT, Knob.RATE, Knob.PULSE, Knob.WIDTH, Knob.SPACING);

  private final List<Knob> differing;
  private final boolean described;

  private OtherKnobs(List<Knob> differing, boolean described) {
    this.differing = differing;
    this.described = described;
  }

  /** Those in which these patches differ, and how they were made where that is known of any. */
  static OtherKnobs of(List<Patch> patches) {
    return new OtherKnobs(
        of(patches.stream().map(Patch::settings).toList()).differing,
        patches.stream().anyMatch(p -> !p.circumstances().equals(Circumstances.UNKNOWN)));
  }

  /** Those in which these settings differ. */
  static OtherKnobs of(Collection<Settings> all) {
    List<Map<Knob, Double>> knobs = all.stream().distinct().map(KnobValues::of).toList();
    return new OtherKnobs(
        KNOBS.stream()
            .filter(knob -> knobs.stream().map(k -> k.get(knob)).distinct().count() > 1)
            .toList(),
        false);
  }

  boolean any() {
    return !differing.isEmpty() || described;
  }

  /** A text, and after it what is particular of a patch: "spot 0.9 mm, circle 100/s, arris". */
  String after(String text, Patch patch) {
    String made = CircumstancesText.brief(patch.circumstances());
    return after(text, patch.settings()) + (made.isEmpty() ? "" : ", " + made);
  }

  /** A text, and after it "spot 0.9 mm, 40 kHz" of one of the settings. */
  String after(String text, Settings settings) {
    Map<Knob, Double> values = KnobValues.of(settings);
    return Stream.concat(
            Stream.of(text),
            differing.stream().filter(values::containsKey).map(k -> words(k, values.get(k))))
        .collect(Collectors.joining(", "));
  }

  private static String words(Knob knob, double value) {
    String named = knob == Knob.RATE || knob == Knob.PULSE ? "" : knob.key() + " ";
    return named + plain(value) + " " + knob.unit();
  }
}
