package charline.cli.ask;

import static charline.quantity.Figures.plain;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Knobs that a list leaves out as long as they are the same all over: settings that look alike and
 * are not must not be taken for one.
 */
final class OtherKnobs {
  private static final List<String> KNOBS = List.of("spot", "rate", "pulse", "width", "spacing");

  private final List<String> differing;

  private OtherKnobs(List<String> differing) {
    this.differing = differing;
  }

  /** Those in which these settings differ. */
  static OtherKnobs of(Collection<Settings> all) {
    List<Map<String, String>> knobs = all.stream().distinct().map(OtherKnobs::values).toList();
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
    Map<String, String> values = values(settings);
    return Stream.concat(
            Stream.of(text), differing.stream().filter(values::containsKey).map(values::get))
        .collect(Collectors.joining(", "));
  }

  private static Map<String, String> values(Settings settings) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("spot", "spot %s mm".formatted(plain(settings.spot().diameterMillimetres())));
    settings
        .pulses()
        .map(Pulses::repetitionKilohertz)
        .ifPresent(rate -> values.put("rate", plain(rate) + " kHz"));
    settings
        .pulses()
        .filter(pulses -> pulses.durationNanoseconds().isPresent())
        .ifPresent(
            pulses ->
                values.put("pulse", plain(pulses.durationNanoseconds().getAsDouble()) + " ns"));
    DoseForm form = settings.form();
    if (form instanceof HandPass hand) {
      values.put("width", "width " + plain(hand.scanWidthMillimetres()) + " mm");
    } else if (form instanceof LineScan lines) {
      values.put("spacing", "spacing " + plain(lines.lineSpacingMillimetres()) + " mm");
    }
    return values;
  }
}
