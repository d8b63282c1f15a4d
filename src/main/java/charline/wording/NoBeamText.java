package charline.wording;

import static charline.wording.Table.line;

import charline.answer.NoBeam;
import charline.answer.Precautions;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Why the beam stays off, and what to do, in sentences. */
public final class NoBeamText {
  /** In place of a verdict. */
  public static final String VERDICT = "no beam";

  private NoBeamText() {}

  /** Why, all reasons. */
  public static String reason(List<NoBeam> bars) {
    return bars.stream().map(NoBeamText::reason).collect(Collectors.joining(" "));
  }

  private static String reason(NoBeam bar) {
    if (bar instanceof NoBeam.Never never) {
      return "%s is never lasered, whatever a sample says."
          .formatted(named(never.substance(), never.finishes()));
    }
    if (bar instanceof NoBeam.Found found) {
      return "In finish %s, %s was %s. %s"
          .formatted(
              found.finish(),
              found.substance(),
              PrecautionText.result(Optional.of(found.sample())),
              found.means());
    }
    NoBeam.Unsampled unsampled = (NoBeam.Unsampled) bar;
    return "%s may hold %s%s, and no sample says that it is free: until then no beam, sanding or scraping."
        .formatted(
            unsampled.finishes().isEmpty()
                ? "This coat"
                : "Finish " + String.join(" and finish ", unsampled.finishes()),
            unsampled.substance(),
            unsampled
                .inconclusive()
                .map(s -> " (the sample of %s was inconclusive)".formatted(s.takenOn()))
                .orElse(""));
  }

  /** That an answer is not for a finish, in a few words. */
  static String notFor(NoBeam bar) {
    if (bar instanceof NoBeam.Never never) {
      return "not for finish %s: %s"
          .formatted(String.join(", ", never.finishes()), never.substance());
    }
    if (bar instanceof NoBeam.Found found) {
      return "not for finish %s: %s found".formatted(found.finish(), found.substance());
    }
    NoBeam.Unsampled unsampled = (NoBeam.Unsampled) bar;
    return "not for finish %s: not known to be free of %s"
        .formatted(String.join(", ", unsampled.finishes()), unsampled.substance());
  }

  private static String named(String substance, List<String> finishes) {
    String what = Character.toUpperCase(substance.charAt(0)) + substance.substring(1);
    return finishes.isEmpty() ? what : what + " (finish " + String.join(", ", finishes) + ")";
  }

  /**
   * What to do, all steps.
   *
   * @param record how this face records a sample, as in "record the result with HOW"
   */
  public static String nextStep(List<NoBeam> bars, String record) {
    return bars.stream()
            .map(bar -> nextStep(bar, record))
            .distinct()
            .collect(Collectors.joining(" "))
        + " "
        + CautionText.DEFERRAL;
  }

  private static String nextStep(NoBeam bar, String record) {
    if (bar instanceof NoBeam.Never) {
      return "Use another method. Patches that were burned all the same can be recorded; void them,"
          + " or amend their finish, to ask about the others of this family.";
    }
    if (bar instanceof NoBeam.Found) {
      return "Keep the beam off and leave the coat to people whom the local rules allow to remove"
          + " it.";
    }
    String substance = ((NoBeam.Unsampled) bar).substance();
    return substance.equals("asbestos")
        ? "Have the coat sampled by a licensed or accredited asbestos surveyor, as the local rules"
            + " say, and record the result with "
            + record
            + "."
        : "Have the coat tested for %s by a laboratory, or use another method, and record the result with %s."
            .formatted(substance, record);
  }

  /** Why and what to do, in one paragraph. */
  public static String inFull(List<NoBeam> bars, String record) {
    return "NO BEAM: %s %s".formatted(reason(bars), nextStep(bars, record));
  }

  /**
   * The answer for a terminal.
   *
   * @param about what was asked about, such as "textured coat on pine"
   */
  public static String text(String about, Precautions known, String record) {
    StringBuilder text = new StringBuilder();
    line(text, about + ": no beam.");
    PrecautionText.headline(known).ifPresent(words -> line(text, words));
    line(text, "Why: " + reason(known.bars()));
    line(text, "Next: " + nextStep(known.bars(), record));
    PrecautionText.inBrief(known).forEach(caution -> line(text, caution));
    return text.toString();
  }

  /** The answer as JSON. */
  public static Json json(Json json, Precautions known, String record) {
    return PrecautionText.put(
        json.put("verdict", VERDICT)
            .put("reason", reason(known.bars()))
            .put("next_step", nextStep(known.bars(), record)),
        known);
  }
}
