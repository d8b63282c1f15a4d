package charline.log;

import charline.exposure.Settings;
import charline.quantity.Figures;
import charline.trial.Board;
import charline.trial.DepthClash;
import charline.trial.Knob;
import charline.trial.KnobValues;
import charline.trial.Patch;
import charline.trial.Plausibility;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** Recorded values that are far from what is usual ({@link Knob}) and may have been mistyped. */
final class Doubts {
  private final List<Finding> found = new ArrayList<>();
  private final OffsetDateTime now;

  Doubts(OffsetDateTime now) {
    this.now = now;
  }

  List<Finding> of(List<Rig> rigs, List<Board> boards, List<PatchEntry> patches) {
    rigs.forEach(this::rig);
    boards.forEach(this::board);
    patches.forEach(entry -> patch(entry.patch()));
    return List.copyOf(found);
  }

  private void rig(Rig rig) {
    String who = "Rig " + rig.name();
    range(who, Knob.WAVELENGTH, rig.wavelengthNanometres());
    range(who, "rated power", Knob.ratedPower(rig.emission()), rig.ratedWatts());
    for (PowerCheck check : rig.checks()) {
      double factor = check.factor(rig.ratedWatts());
      if (!Plausibility.isOfNominal(factor)) {
        doubt(
            "%s metered %s W at %s %% on %s, %s times what its rating says; record a new power check if that was wrong."
                .formatted(
                    who,
                    Figures.plain(check.meteredWatts()),
                    Figures.plain(check.percent()),
                    check.at().toLocalDate(),
                    Figures.plain(Math.round(factor * 100) / 100.0)));
      }
    }
  }

  private void board(Board board) {
    board.moisturePercent().ifPresent(m -> range("Board " + board.name(), Knob.MOISTURE, m));
  }

  private void patch(Patch patch) {
    String who = patch.code();
    Settings settings = patch.settings();
    KnobValues.of(settings).forEach((knob, value) -> range(who, knob, value));
    patch.areaSquareCentimetres().ifPresent(cm2 -> range(who, Knob.PATCH_AREA, cm2));
    if (Plausibility.isTooStrong(settings.power(), patch.rig().ratedWatts())) {
      doubt(
          "%s has a power of %s W, more than rig %s is rated for (%s W); amend it if it was mistyped."
              .formatted(
                  who,
                  Figures.plain(settings.power().value()),
                  patch.rig().name(),
                  Figures.plain(patch.rig().ratedWatts())));
    }
    if (patch.burnedAt().isAfter(now)) {
      doubt("%s was burned in the future (%s); amend the time.".formatted(who, patch.burnedAt()));
    }
    DepthClash.of(patch)
        .map(Plausibility::about)
        .ifPresent(
            d ->
                doubt(
                    "%s: %s; %s, and amend what is wrong."
                        .formatted(who, d.finding(), d.correction())));
    for (Reading reading : patch.readings()) {
      if (reading.at().isBefore(patch.burnedAt()) && !patch.burnedAt().isAfter(now)) {
        doubt(
            "%s was judged (%s) before it was burned (%s); amend the time if a clock was wrong."
                .formatted(who, reading.at(), patch.burnedAt()));
      }
      range(who, "number of passes", Knob.PASSES, reading.passes());
      reading.depthMicrometres().ifPresent(um -> range(who, Knob.DEPTH, um));
    }
  }

  private void range(String who, Knob knob, double value) {
    range(who, knob.noun(), knob, value);
  }

  private void range(String who, String what, Knob knob, double value) {
    if (knob.isFarFromUsual(value)) {
      String unit = knob == Knob.PASSES ? "passes" : knob.unit();
      doubt(
          "%s has a %s of %s %s, far from the usual %s %s; amend it if it was mistyped."
              .formatted(who, what, Figures.plain(value), unit, knob.usually(), unit));
    }
  }

  private void doubt(String text) {
    found.add(new Finding(Finding.Kind.DOUBT, text));
  }
}
