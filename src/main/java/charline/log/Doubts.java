package charline.log;

import charline.exposure.Settings;
import charline.quantity.Figures;
import charline.trial.Board;
import charline.trial.DepthClash;
import charline.trial.Knob;
import charline.trial.KnobValues;
import charline.trial.MeteredPlausibility;
import charline.trial.Patch;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.UsualValues;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

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
    strays(patches.stream().map(PatchEntry::patch).toList());
    return List.copyOf(found);
  }

  /** Values far from what else their rig had. */
  private void strays(List<Patch> patches) {
    Map<UUID, UsualValues> byRig = new HashMap<>();
    patches.forEach(
        p -> byRig.computeIfAbsent(p.rig().id(), id -> new UsualValues(p.rig())).add(p));
    Map<UUID, Map<Knob, Map<Double, Doubt>>> strays = new HashMap<>();
    byRig.forEach((rig, values) -> strays.put(rig, values.strays()));
    for (Patch patch : patches) {
      UsualValues.values(patch.settings(), patch.areaSquareCentimetres())
          .forEach(
              (knob, value) -> {
                Doubt doubt = strays.get(patch.rig().id()).getOrDefault(knob, Map.of()).get(value);
                if (doubt != null && !knob.isFarFromUsual(value)) {
                  doubt(
                      "%s: %s; amend it if it was mistyped."
                          .formatted(patch.code(), doubt.finding()));
                }
              });
    }
  }

  private void rig(Rig rig) {
    String who = "Rig " + rig.name();
    range(who, Knob.WAVELENGTH, rig.wavelengthNanometres());
    range(who, "rated power", Knob.ratedPower(rig.emission()), rig.ratedWatts());
    rig.upkeep().forEach(upkeep -> year(who + ", upkeep", upkeep.at()));
    for (PowerCheck check : rig.checks()) {
      year(who + ", power check", check.at());
      for (Doubt doubt : MeteredPlausibility.about(check, rig)) {
        doubt(
            "%s, power check on %s: %s; amend it if it was mistyped."
                .formatted(who, check.at().toLocalDate(), doubt.finding()));
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
    for (Doubt doubt : Plausibility.aboutPower(patch.rig(), settings, patch.burnedAt())) {
      doubt("%s: %s; amend it if it was mistyped.".formatted(who, doubt.finding()));
    }
    year(who, patch.burnedAt());
    patch.readings().stream()
        .filter(reading -> reading.at().getYear() != patch.burnedAt().getYear())
        .forEach(reading -> year(who, reading.at()));
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
      List<Reading> earlier = patch.readings().subList(0, patch.readings().indexOf(reading));
      for (Doubt doubt : Plausibility.about(reading, earlier)) {
        doubt("%s: %s; amend the wrong reading.".formatted(who, doubt.finding()));
      }
    }
  }

  /** Years to come are doubted as the future. */
  private void year(String who, OffsetDateTime at) {
    if (!at.isAfter(now)) {
      Plausibility.aboutYear(at.getYear(), now.getYear())
          .forEach(d -> doubt("%s: %s; amend the time.".formatted(who, d.finding())));
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
