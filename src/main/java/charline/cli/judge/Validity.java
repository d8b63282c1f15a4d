package charline.cli.judge;

import charline.cli.render.Json;
import charline.cli.render.Table;
import charline.model.Fitter;
import charline.plan.Drift;
import charline.trial.Caution;
import charline.trial.Patch;
import charline.trial.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether a window may be used: not where the rig has drifted since it was burned, and only with
 * confirming patches where the rig has burned none of the trials.
 *
 * @param drifted what to do about a drift, in sentences; empty where there is none
 * @param untried what to do on a rig that is new to the trials; empty where it is not
 */
record Validity(Optional<String> drifted, Optional<String> untried) {
  static Validity of(StratumOptions.Case chosen) {
    Rig rig = chosen.bench().rig();
    List<Patch> patches = chosen.trials().patches();
    Drift drift = Drift.of(rig, List.of(chosen.trials()), Fitter.withDefaults());
    boolean own = patches.stream().anyMatch(p -> p.rig().id().equals(rig.id()));
    return new Validity(
        drift
            .advice()
            .filter(advice -> drift.outdates(patches))
            .map(advice -> advice + " Trials from before do not speak for the rig as it is."),
        own
            ? Optional.empty()
            : Optional.of(
                "Rig %s has burned none of these trials: dose and intensity are translated to its knobs, within what was tried. Confirm it first with `charline next %s %s --rig %s`."
                    .formatted(
                        rig.name(),
                        chosen.trials().stratum().family(),
                        chosen.trials().stratum().wood(),
                        rig.name())));
  }

  /** "not valid", "untried" or both in a list of windows, empty where it may be used. */
  String mark() {
    List<String> marks = new ArrayList<>();
    drifted.ifPresent(why -> marks.add("not valid"));
    untried.ifPresent(why -> marks.add("untried"));
    return String.join(", ", marks);
  }

  /** Lines that stand before a window, none where it may be used. */
  String text() {
    StringBuilder text = new StringBuilder();
    drifted.ifPresent(why -> text.append(Table.paragraph("NOT VALID: " + why)).append('\n'));
    untried.ifPresent(why -> text.append(Table.paragraph("UNTRIED: " + why)).append('\n'));
    return text.toString();
  }

  /** The same as cautions of a sheet, before all others. */
  List<Caution> caution() {
    List<Caution> all = new ArrayList<>();
    drifted.ifPresent(
        why -> all.add(new Caution("Not valid", why, "common practice, no published source")));
    untried.ifPresent(
        why ->
            all.add(
                new Caution("Untried on this rig", why, "common practice, no published source")));
    return all;
  }

  Json json(Json window) {
    return window
        .put("valid", drifted.isEmpty())
        .put("drift", drifted)
        .put("untried_on_rig", untried.isPresent());
  }
}
