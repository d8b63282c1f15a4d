package charline.cli.judge;

import static charline.quantity.Figures.plain;

import charline.cli.render.Json;
import charline.cli.render.Table;
import charline.drift.Validity;
import charline.exposure.Spot;
import charline.model.Fitter;
import charline.trial.Caution;
import charline.wording.DriftText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether a window may be used, as the command line says it.
 *
 * @param validity what was decided
 * @param untried what to do on a rig that is new to the trials; empty where it is not
 * @param otherSpot what to do where the rig's last patch had another spot than the window, and
 *     nobody said which; else empty
 * @param lastSpotMillimetres that other spot
 */
record ValidityWords(
    Validity validity,
    Optional<String> untried,
    Optional<String> otherSpot,
    OptionalDouble lastSpotMillimetres) {
  static ValidityWords of(StratumOptions.Case chosen) {
    Validity validity = Validity.of(chosen.bench().rig(), chosen.trials(), Fitter.withDefaults());
    String rig = chosen.bench().rig().name();
    Optional<Spot> other =
        chosen.spotAsked()
            ? Optional.empty()
            : chosen.bench().otherSpotOfLate(chosen.trials().patches());
    return new ValidityWords(
        validity,
        validity.untried()
            ? Optional.of(
                "Rig %s has burned none of these trials: dose and intensity are translated to its knobs, within what was tried. Confirm it first with `charline next %s %s --rig %s`."
                    .formatted(
                        rig,
                        chosen.trials().stratum().family(),
                        chosen.trials().stratum().wood(),
                        rig))
            : Optional.empty(),
        other.map(
            last ->
                "The last patch on rig %s had a spot of %s mm, and this is for %s mm, as most patches had. If the lens or the stand-off is another one now, ask with --at spot=%smm."
                    .formatted(
                        rig,
                        plain(last.diameterMillimetres()),
                        plain(chosen.bench().spot().diameterMillimetres()),
                        plain(last.diameterMillimetres()))),
        other
            .map(last -> OptionalDouble.of(last.diameterMillimetres()))
            .orElse(OptionalDouble.empty()));
  }

  /**
   * "not valid", "untried", "other spot" or several in a list of windows, empty where it may be
   * used.
   */
  String mark() {
    List<String> marks = new ArrayList<>();
    validity.drifted().ifPresent(why -> marks.add("not valid"));
    untried.ifPresent(why -> marks.add("untried"));
    otherSpot.ifPresent(why -> marks.add("other spot"));
    return String.join(", ", marks);
  }

  /** Lines that stand before a window, none where it may be used. */
  String text() {
    StringBuilder text = new StringBuilder();
    DriftText.drifted(validity)
        .ifPresent(why -> text.append(Table.paragraph("NOT VALID: " + why)).append('\n'));
    untried.ifPresent(why -> text.append(Table.paragraph("UNTRIED: " + why)).append('\n'));
    otherSpot.ifPresent(why -> text.append(Table.paragraph("OTHER SPOT: " + why)).append('\n'));
    return text.toString();
  }

  /** The same as cautions of a sheet, before all others. */
  List<Caution> caution() {
    List<Caution> all = new ArrayList<>();
    DriftText.notValid(validity).ifPresent(all::add);
    untried.ifPresent(why -> all.add(new Caution("Untried on this rig", why, DriftText.SOURCE)));
    otherSpot.ifPresent(why -> all.add(new Caution("Other spot of late", why, DriftText.SOURCE)));
    return all;
  }

  Json json(Json window) {
    return window
        .put("valid", validity.drifted().isEmpty())
        .put("drift", DriftText.drifted(validity))
        .put("untried_on_rig", validity.untried())
        .put("last_spot_mm", lastSpotMillimetres);
  }
}
