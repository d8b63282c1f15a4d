package charline.wording;

import charline.answer.TrialCase;
import charline.quantity.Figures;
import charline.trial.Place;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Patches on other places of a board than those that an answer is for. */
public final class PlaceText {
  private PlaceText() {}

  /** That they are not counted; empty where there are none. */
  public static Optional<String> notCounted(TrialCase subject) {
    Map<Place, Integer> elsewhere = subject.elsewhere();
    return elsewhere.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Not counted: %s; another place need not do the same."
                .formatted(
                    elsewhere.entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(e -> Figures.patches(e.getValue()) + " on " + e.getKey().word())
                        .collect(Collectors.joining(", "))));
  }

  /** Counts by place. */
  static Json json(TrialCase subject) {
    Json json = new Json();
    subject.elsewhere().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(e -> json.put(e.getKey().word(), e.getValue()));
    return json;
  }
}
