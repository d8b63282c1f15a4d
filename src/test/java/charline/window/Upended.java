package charline.window;

import charline.exposure.PowerSetting;
import charline.exposure.Settings;
import charline.trial.Patch;
import charline.trial.Pieces;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Trials spoiled: outcomes turned on their head, a setting mistyped. */
final class Upended {
  private Upended() {}

  /** The hottest patch is given the outcomes of the coolest, and so on. */
  static List<Patch> outcomes(List<Patch> patches) {
    List<Patch> byDose = new ArrayList<>(patches);
    byDose.sort(Comparator.comparingDouble(p -> p.exposure().doseJoulesPerCm2()));
    List<Patch> turned = new ArrayList<>();
    for (int i = 0; i < byDose.size(); i++) {
      turned.add(Pieces.withReadings(byDose.get(i), byDose.get(byDose.size() - 1 - i).readings()));
    }
    return turned;
  }

  static Patch withTenthOfThePower(Patch patch) {
    Settings s = patch.settings();
    return new Patch(
        patch.id(),
        patch.code(),
        patch.burnedAt(),
        patch.rig(),
        patch.board(),
        patch.finish(),
        new Settings(PowerSetting.percent(s.power().value() / 10), s.form(), s.spot(), s.pulses()),
        patch.areaSquareCentimetres(),
        patch.readings());
  }
}
