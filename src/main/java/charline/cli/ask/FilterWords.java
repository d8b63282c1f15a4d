package charline.cli.ask;

import charline.log.Filter;
import charline.log.Logbook;
import charline.trial.Mark;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** A filter in words: what was searched. */
final class FilterWords {
  private FilterWords() {}

  /** "clean, latex, on pine, since 2026-05-01", or "all patches". */
  static String of(Filter filter, Logbook log) {
    List<String> words = new ArrayList<>();
    if (!filter.marks().isEmpty()) {
      words.add(filter.marks().stream().map(Mark::word).collect(Collectors.joining("+")));
    }
    add(words, "", filter.families());
    add(words, "on ", generic(filter.woods(), log));
    add(words, "finish ", filter.finishes());
    add(words, "rig ", filter.rigs());
    add(words, "board ", filter.boards());
    add(words, "job ", filter.jobs());
    add(words, "by ", filter.people());
    filter.since().ifPresent(moment -> words.add("since " + moment.toLocalDate()));
    filter.until().ifPresent(moment -> words.add("until " + moment.minusNanos(1).toLocalDate()));
    return words.isEmpty() ? "all patches" : String.join(", ", words);
  }

  /** Leaves out species that a generic wood among them includes. */
  private static Set<String> generic(Set<String> woods, Logbook log) {
    Set<String> named = new LinkedHashSet<>(woods);
    for (String wood : woods) {
      Set<String> kinds = log.reference().kindsOf(wood);
      if (woods.containsAll(kinds)) {
        named.removeIf(other -> !other.equals(wood) && kinds.contains(other));
      }
    }
    return named;
  }

  private static void add(List<String> words, String lead, Set<String> values) {
    if (!values.isEmpty()) {
      words.add(lead + String.join(" or ", values));
    }
  }
}
