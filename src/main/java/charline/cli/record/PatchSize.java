package charline.cli.record;

import charline.cli.desk.Sure;
import charline.cli.desk.Typed;
import charline.log.PatchEntry;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.trial.Plausibility.Knob;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The size of a patch, as given or copied. */
final class PatchSize {
  private static final String KNOB = "patch";

  private PatchSize() {}

  static OptionalDouble read(
      String given, Optional<PatchEntry> base, Map<String, String> typed, Sure sure) {
    if (given == null) {
      base.map(entry -> entry.typed().get(KNOB)).ifPresent(text -> typed.put(KNOB, text));
      return base.map(entry -> entry.patch().areaSquareCentimetres())
          .orElse(OptionalDouble.empty());
    }
    typed.put(KNOB, given.strip());
    double value =
        Invariant.positive(
            "Patch size", Typed.measure("--patch-area", given, Quantity.AREA), "cm2");
    sure.require(Knob.PATCH_AREA.doubts(value));
    return OptionalDouble.of(value);
  }
}
