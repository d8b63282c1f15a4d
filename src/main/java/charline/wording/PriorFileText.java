package charline.wording;

import charline.answer.LogPriors;
import charline.answer.PriorLine;
import charline.answer.Priors;
import charline.exposure.Emission;
import charline.model.Event;
import charline.model.Prior;
import charline.model.PriorSet;
import charline.model.borrow.Prediction.Backing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Priors as the file that {@link charline.answer.PriorFile} reads. */
public final class PriorFileText {
  private PriorFileText() {}

  /**
   * The file, with what each line means, why it is so and where that comes from.
   *
   * @param use how this face uses such a file, as in "USE. These alone ..."
   */
  public static String of(Priors priors, String use) {
    StringBuilder text = new StringBuilder();
    remark(text, "What the models assume before any patch. " + howToUse(use));
    lines(text, new Taught(priors.set(), Optional.empty()));
    return text.toString();
  }

  /**
   * The file of priors that a log taught. No name in it comes from the log.
   *
   * @param use how this face uses such a file, as in "USE. These alone ..."
   */
  public static String of(LogPriors learned, String use) {
    StringBuilder text = new StringBuilder();
    remark(
        text,
        "What the models assume before any patch: the usual priors, moved by one log's trials as"
            + " far as they foretell trials that it has not seen. "
            + howToUse(use)
            + " With this file nothing else is learned from your own log.");
    for (Emission emission : Emission.values()) {
      Optional.ofNullable(learned.grounds().get(emission))
          .ifPresent(ground -> remark(text, PriorReasons.ground(emission, ground)));
    }
    lines(text, new Taught(learned.set(), Optional.of(learned)));
    return text.toString();
  }

  private static String howToUse(String use) {
    return "You may change or leave out lines; "
        + use
        + ". A line that begins with pulsed or cw counts for that light alone. These alone never"
        + " make a window: it takes patches.";
  }

  /** Priors and, where a log taught them, what each rests on. */
  private record Taught(PriorSet set, Optional<LogPriors> by) {
    Backing backing(PriorLine parameter, Event event, Emission emission) {
      return by.map(log -> log.backing(parameter, event, emission)).orElse(Backing.NONE);
    }

    PriorReasons reasons(PriorLine parameter, Event event, Emission emission) {
      return by.isPresent()
          ? PriorReasons.of(parameter, event, emission, backing(parameter, event, emission))
          : PriorReasons.of(parameter, event, emission);
    }

    Prior prior(Event event, Emission emission) {
      return set.of(event, emission);
    }
  }

  private static void lines(StringBuilder text, Taught taught) {
    for (PriorLine parameter : PriorLine.values()) {
      text.append('\n');
      remark(text, parameter.word() + ": " + PriorReasons.meaning(parameter) + ".");
      for (Event event : Event.values()) {
        lines(text, parameter, event, taught);
      }
    }
  }

  /** One line where both kinds of light share it, else one for each. */
  private static void lines(StringBuilder text, PriorLine parameter, Event event, Taught taught) {
    if (shared(parameter, event, taught)) {
      Prior either = taught.prior(event, Emission.PULSED);
      why(text, taught.reasons(parameter, event, Emission.PULSED));
      text.append(parameter.write(event, either)).append('\n');
      return;
    }
    for (Emission emission : Emission.values()) {
      why(text, taught.reasons(parameter, event, emission));
      text.append(parameter.write(emission, event, taught.prior(event, emission))).append('\n');
    }
  }

  private static boolean shared(PriorLine parameter, Event event, Taught taught) {
    return parameter
        .of(taught.prior(event, Emission.PULSED))
        .equals(parameter.of(taught.prior(event, Emission.CONTINUOUS)));
  }

  private static void why(StringBuilder text, PriorReasons reasons) {
    remark(text, "Why: %s (%s).".formatted(reasons.why(), reasons.source()));
  }

  private static void remark(StringBuilder text, String words) {
    Table.fold(words, Table.WIDTH - 2).forEach(l -> text.append("# ").append(l).append('\n'));
  }

  /** The same as JSON: one object for each parameter, event and kind of light. */
  public static Json json(Priors priors) {
    return new Json().put("priors", json(new Taught(priors.set(), Optional.empty())));
  }

  /** The same of priors that a log taught, with what was burned under each kind of light. */
  public static Json json(LogPriors learned) {
    Json lights = new Json();
    for (Emission emission : Emission.values()) {
      lights.put(
          emission.word(),
          Optional.ofNullable(learned.grounds().get(emission))
              .map(
                  ground ->
                      new Json()
                          .put("wavelength_nm", ground.wavelengthNanometres())
                          .put("intensity_unit", emission.intensityUnit())
                          .put("least_intensity", ground.leastIntensity())
                          .put("most_intensity", ground.mostIntensity())
                          .put("patches_of_other_wavelength", ground.otherPatches())));
    }
    return new Json()
        .put("priors", json(new Taught(learned.set(), Optional.of(learned))))
        .put("from_log", lights);
  }

  private static List<Json> json(Taught taught) {
    List<Json> all = new ArrayList<>();
    for (PriorLine parameter : PriorLine.values()) {
      for (Event event : Event.values()) {
        for (Emission emission : Emission.values()) {
          all.add(json(parameter, event, emission, taught));
        }
      }
    }
    return all;
  }

  private static Json json(PriorLine parameter, Event event, Emission emission, Taught taught) {
    Prior prior = taught.prior(event, emission);
    PriorLine.Value value = parameter.of(prior);
    PriorReasons reasons = taught.reasons(parameter, event, emission);
    Backing backing = taught.backing(parameter, event, emission);
    boolean factor = parameter.factor(prior);
    return new Json()
        .put("parameter", parameter.word())
        .put("event", event.word())
        .put("light", emission.word())
        .put("line", parameter.write(emission, event, prior))
        .put("middle", factor ? Math.exp(value.normal().mean()) : value.normal().mean())
        .put("spread", factor ? Math.exp(value.normal().sd()) : value.normal().sd())
        .put("spread_is_factor", factor)
        .put("least", value.least())
        .put("at_um", value.atMicrometres())
        .put("meaning", PriorReasons.meaning(parameter))
        .put("why", reasons.why())
        .put("source", reasons.source())
        .put("strata", backing.strata())
        .put("patches", backing.patches());
  }
}
