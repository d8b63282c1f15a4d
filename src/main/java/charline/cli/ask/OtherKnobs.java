package charline.cli.ask;

import static charline.quantity.Figures.plain;

import charline.exposure.Settings;
import charline.trial.Knob;
import charline.trial.KnobValues;
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

  private OtherKnobs(List<Knob> differing) {
    this.differing = differing;
  }

  /** Those in which these settings differ. */
  static OtherKnobs of(Collection<Settings> all) {
    List<Map<Knob, Double>> knobs = all.stream().distinct().map(KnobValues::of).toList();
    return new OtherKnobs(
        KNOBS.stream()
            .filter(knob -> knobs.stream().map(k -> k.get(knob)).distinct().count() > 1)
            .toList());
  }

  boolean any() {
    return !differing.isEmpty();
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
