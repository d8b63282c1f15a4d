package charline.log;

import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.TimedArea;
import charline.quantity.Figures;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * Recorded values that are far from what is usual and may have been mistyped. The ranges are those
 * usual on hand-held units (common practice, no published source), taken three times wider, so that
 * a slipped decimal point is caught and an odd machine is not.
 */
final class Doubts {
  private static final double SLACK = 3;

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
    range(who, "wavelength", rig.wavelengthNanometres(), 355, 10_600, "nm");
    range(who, "rated power", rig.ratedWatts(), 50, 3000, "W");
    for (PowerCheck check : rig.checks()) {
      double factor = check.factor(rig.ratedWatts());
      if (factor < 0.5 || factor > 1.2) {
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
    board
        .moisturePercent()
        .ifPresent(m -> range("Board " + board.name(), "moisture", m, 4, 30, "%"));
  }

  private void patch(Patch patch) {
    String who = patch.code();
    Settings settings = patch.settings();
    range(who, "spot diameter", settings.spot().diameterMillimetres(), 0.1, 2, "mm");
    settings.pulses().ifPresent(pulses -> pulses(who, pulses));
    if (settings.form() instanceof HandPass hand) {
      range(who, "hand speed", hand.handSpeedMillimetresPerSecond(), 5, 60, "mm/s");
      range(who, "scan width", hand.scanWidthMillimetres(), 10, 100, "mm");
    } else if (settings.form() instanceof LineScan lines) {
      range(who, "spot speed", lines.spotSpeedMillimetresPerSecond(), 500, 15_000, "mm/s");
      range(who, "line spacing", lines.lineSpacingMillimetres(), 0.03, 0.5, "mm");
    } else if (settings.form() instanceof TimedArea timed) {
      range(who, "marked area", timed.areaSquareCentimetres(), 5, 100, "cm2");
      range(who, "time per pass", timed.secondsPerPass(), 1, 60, "s");
    }
    patch.areaSquareCentimetres().ifPresent(cm2 -> range(who, "patch size", cm2, 5, 60, "cm2"));
    boolean tooStrong =
        settings.power().unit() == PowerSetting.Unit.WATTS
            && settings.power().value() > 1.2 * patch.rig().ratedWatts();
    if (tooStrong) {
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
    for (Reading reading : patch.readings()) {
      if (reading.at().isBefore(patch.burnedAt()) && !patch.burnedAt().isAfter(now)) {
        doubt(
            "%s was judged (%s) before it was burned (%s); amend the time if a clock was wrong."
                .formatted(who, reading.at(), patch.burnedAt()));
      }
      range(who, "number of passes", reading.passes(), 1, 10, "passes");
      reading.depthMicrometres().ifPresent(um -> range(who, "depth removed", um, 0, 200, "um"));
    }
  }

  private void pulses(String who, Pulses pulses) {
    range(who, "repetition rate", pulses.repetitionKilohertz(), 10, 100, "kHz");
    pulses.durationNanoseconds().ifPresent(ns -> range(who, "pulse duration", ns, 20, 500, "ns"));
  }

  private void range(String who, String what, double value, double low, double high, String unit) {
    if (value < low / SLACK || value > high * SLACK) {
      doubt(
          "%s has a %s of %s %s, far from the usual %s to %s %s; amend it if it was mistyped."
              .formatted(
                  who,
                  what,
                  Figures.plain(value),
                  unit,
                  Figures.plain(low),
                  Figures.plain(high),
                  unit));
    }
  }

  private void doubt(String text) {
    found.add(new Finding(Finding.Kind.DOUBT, text));
  }
}
