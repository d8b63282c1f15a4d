package charline.wording;

import charline.answer.PriorLine;
import charline.answer.Priors;
import charline.exposure.Emission;
import charline.model.Event;
import charline.model.Prior;
import java.util.ArrayList;
import java.util.List;

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
    remark(
        text,
        "What the models assume before any patch. You may change or leave out lines; "
            + use
            + ". A line that begins with pulsed or cw counts for that light alone. These alone"
            + " never make a window: it takes patches.");
    for (PriorLine parameter : PriorLine.values()) {
      text.append('\n');
      remark(text, parameter.word() + ": " + PriorReasons.meaning(parameter) + ".");
      for (Event event : Event.values()) {
        lines(text, parameter, event, priors);
      }
    }
    return text.toString();
  }

  /** One line where both kinds of light share it, else one for each. */
  private static void lines(StringBuilder text, PriorLine parameter, Event event, Priors priors) {
    if (shared(parameter, event, priors)) {
      Prior either = priors.set().of(event, Emission.PULSED);
      why(text, PriorReasons.of(parameter, event, Emission.PULSED));
      text.append(parameter.write(event, either)).append('\n');
      return;
    }
    for (Emission emission : Emission.values()) {
      why(text, PriorReasons.of(parameter, event, emission));
      text.append(parameter.write(emission, event, priors.set().of(event, emission))).append('\n');
    }
  }

  private static boolean shared(PriorLine parameter, Event event, Priors priors) {
    return parameter
        .of(priors.set().of(event, Emission.PULSED))
        .equals(parameter.of(priors.set().of(event, Emission.CONTINUOUS)));
  }

  private static void why(StringBuilder text, PriorReasons reasons) {
    remark(text, "Why: %s (%s).".formatted(reasons.why(), reasons.source()));
  }

  private static void remark(StringBuilder text, String words) {
    Table.fold(words, Table.WIDTH - 2).forEach(l -> text.append("# ").append(l).append('\n'));
  }

  /** The same as JSON: one object for each parameter, event and kind of light. */
  public static Json json(Priors priors) {
    List<Json> all = new ArrayList<>();
    for (PriorLine parameter : PriorLine.values()) {
      for (Event event : Event.values()) {
        for (Emission emission : Emission.values()) {
          all.add(json(parameter, event, emission, priors.set().of(event, emission)));
        }
      }
    }
    return new Json().put("priors", all);
  }

  private static Json json(PriorLine parameter, Event event, Emission emission, Prior prior) {
    PriorLine.Value value = parameter.of(prior);
    PriorReasons reasons = PriorReasons.of(parameter, event, emission);
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
        .put("source", reasons.source());
  }
}
