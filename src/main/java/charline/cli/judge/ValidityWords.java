package charline.cli.judge;

import charline.cli.render.Json;
import charline.cli.render.Table;
import charline.model.Fitter;
import charline.plan.Validity;
import charline.trial.Caution;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether a window may be used, as the command line says it.
 *
 * @param validity what was decided
 * @param untried what to do on a rig that is new to the trials; empty where it is not
 */
record ValidityWords(Validity validity, Optional<String> untried) {
  static ValidityWords of(StratumOptions.Case chosen) {
    Validity validity = Validity.of(chosen.bench().rig(), chosen.trials(), Fitter.withDefaults());
    String rig = chosen.bench().rig().name();
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
            : Optional.empty());
  }

  /** "not valid", "untried" or both in a list of windows, empty where it may be used. */
  String mark() {
    List<String> marks = new ArrayList<>();
    validity.drifted().ifPresent(why -> marks.add("not valid"));
    untried.ifPresent(why -> marks.add("untried"));
    return String.join(", ", marks);
  }

  /** Lines that stand before a window, none where it may be used. */
  String text() {
    StringBuilder text = new StringBuilder();
    validity
        .drifted()
        .ifPresent(why -> text.append(Table.paragraph("NOT VALID: " + why)).append('\n'));
    untried.ifPresent(why -> text.append(Table.paragraph("UNTRIED: " + why)).append('\n'));
    return text.toString();
  }

  /** The same as cautions of a sheet, before all others. */
  List<Caution> caution() {
    List<Caution> all = new ArrayList<>();
    validity.notValid().ifPresent(all::add);
    untried.ifPresent(why -> all.add(new Caution("Untried on this rig", why, Validity.SOURCE)));
    return all;
  }

  Json json(Json window) {
    return window
        .put("valid", validity.drifted().isEmpty())
        .put("drift", validity.drifted())
        .put("untried_on_rig", validity.untried());
  }
}
