package charline.model.classical;

import charline.model.Event;
import charline.model.classical.ClassicalOutcome.Separating;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.Estimator;
import charline.stat.regression.Separated;
import charline.stat.regression.Separation;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What separation means for someone who burned the patches. */
final class SeparationWords {
  private SeparationWords() {}

  /** Empty where outcomes overlap. */
  static Optional<Separating> of(PatchRows rows, BinomialSample sample, Event event) {
    return BinomialRegression.withDefaults().with(Estimator.MAXIMUM_LIKELIHOOD).fit(sample)
            instanceof Separated separated
        ? Optional.of(
            new Separating(
                separated.kind() == Separation.COMPLETE ? "complete" : "quasi-complete",
                found(rows, separated, event) + meaning(separated.kind())))
        : Optional.empty();
  }

  private static String found(PatchRows rows, Separated separated, Event event) {
    String with = event == Event.CHAR ? "charred" : "cleared";
    String without = event == Event.CHAR ? "uncharred" : "uncleared";
    String thing = rows.count() == rows.patchCount() ? "patch" : "reading";
    Columns columns = rows.columns();
    for (int j = 0; j < columns.names().size(); j++) {
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      double[] column = columns.values().get(j);
      for (int i = 0; i < rows.count(); i++) {
        if (rows.outcome(i) == 1) {
          least = Math.min(least, column[i]);
        } else {
          most = Math.max(most, column[i]);
        }
      }
      String name = columns.names().get(j);
      if (least > most) {
        return "Every %s %s had more %s than every %s one%s, so a step anywhere between explains them all."
            .formatted(with, thing, plain(name), without, between(name, most, least));
      }
      if (least == most) {
        return "No %s %s had less %s than any %s one, and only at the same %s were both seen, so a step there explains all the others."
            .formatted(with, thing, plain(name), without, plain(name));
      }
    }
    List<String> together =
        columns.names().stream()
            .filter(n -> separated.terms().stream().anyMatch(t -> t.substring(1).equals(n)))
            .map(SeparationWords::plain)
            .toList();
    return "Together, %s %s every %s %s from every %s one%s, so a step explains them all."
        .formatted(
            listed(together),
            together.size() == 1 ? "separates" : "separate",
            with,
            thing,
            without,
            separated.kind() == Separation.COMPLETE ? "" : " but for some on the line between");
  }

  private static String meaning(Separation kind) {
    return " That is %s separation: the steeper the curve the better it fits, without end, so maximum likelihood has no finite answer; Firth's has, but its steepness depends on the penalty more than on the trials. Patches between the two would settle it."
        .formatted(kind == Separation.COMPLETE ? "complete" : "quasi-complete");
  }

  private static String between(String name, double most, double least) {
    return name.equals(Columns.DOSE)
        ? " (%s J/cm2 against at most %s)"
            .formatted(Columns.figure(Math.exp(least)), Columns.figure(Math.exp(most)))
        : name.equals(Columns.PASSES)
            ? " (%s against at most %s)"
                .formatted(Columns.figure(Math.exp(least)), Columns.figure(Math.exp(most)))
            : "";
  }

  /** "dose", "fluence", "passes". */
  static String plain(String name) {
    return name.split(" ")[1];
  }

  private static String listed(List<String> words) {
    return words.size() < 2
        ? words.stream().findFirst().orElse("the settings")
        : words.stream().limit(words.size() - 1L).collect(Collectors.joining(", "))
            + " and "
            + words.get(words.size() - 1);
  }
}
