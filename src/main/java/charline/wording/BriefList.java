package charline.wording;

import charline.plan.NextPatches;
import charline.plan.Suggestion;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The patches to burn next in few words, beside a window: those alike in one line. */
public final class BriefList {
  private BriefList() {}

  /**
   * One line.
   *
   * @param numbers "1" or "1, 3"
   * @param words "60 %, hand 27 mm/s, up to 8 passes, on new board 1: narrows the hot side"
   */
  public record Line(String numbers, String words) {}

  /** The lines, by the number of the first patch of each. */
  public static List<Line> lines(NextPatches next) {
    Map<String, List<Suggestion>> alike = new LinkedHashMap<>();
    next.suggestions().forEach(s -> alike.computeIfAbsent(key(s), k -> new ArrayList<>()).add(s));
    return alike.values().stream().map(BriefList::line).toList();
  }

  private static String key(Suggestion s) {
    return setting(s) + reason(s);
  }

  private static Line line(List<Suggestion> alike) {
    Suggestion first = alike.get(0);
    return new Line(
        alike.stream().map(s -> String.valueOf(s.number())).collect(Collectors.joining(", ")),
        "%s, on %s: %s"
            .formatted(
                setting(first),
                alike.stream()
                    .map(s -> s.place().name())
                    .distinct()
                    .collect(Collectors.joining(", ")),
                reason(first)));
  }

  private static String setting(Suggestion s) {
    return SettingsText.settings(s.settings())
        + ", "
        + SettingsText.plannedPasses(s.passes(), s.purpose());
  }

  private static String reason(Suggestion s) {
    return PlanText.motive(s.motive())
        + (s.onlyAfter().isPresent()
            ? "; only if %d did not char".formatted(s.onlyAfter().getAsInt())
            : "");
  }

  /** How to go on, then the patches, in one paragraph. */
  public static String paragraph(NextPatches next) {
    return PlanText.advice(next.advice())
        + lines(next).stream()
            .map(line -> "(%s) %s".formatted(line.numbers(), line.words()))
            .collect(Collectors.joining("; ", lines(next).isEmpty() ? "" : " ", ""));
  }
}
