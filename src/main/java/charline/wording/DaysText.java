package charline.wording;

import charline.ask.Question;
import charline.log.search.Condition.Burned;
import charline.trial.Patch;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/** On which days patches were burned, which are those of the bench that recorded them. */
public final class DaysText {
  private DaysText() {}

  /** "burned on 2026-05-20" or "burned 2026-05-20 to 2026-06-01", for one patch or more. */
  public static String burned(List<Patch> patches) {
    List<LocalDate> days = patches.stream().map(p -> p.burnedAt().toLocalDate()).sorted().toList();
    LocalDate first = days.get(0);
    LocalDate last = days.get(days.size() - 1);
    return first.equals(last) ? "burned on " + first : "burned " + first + " to " + last;
  }

  /**
   * The same, where a question about days means those of the person who asks: it says so where a
   * day is another one there.
   *
   * @param patches what was found, one or more in any order
   * @param here the zone of the person who asks
   */
  public static String burned(List<Patch> patches, Question question, ZoneId here) {
    long elsewhere = patches.stream().filter(patch -> onAnotherDay(patch, here)).count();
    return elsewhere == 0 || question.condition().leaves().noneMatch(Burned.class::isInstance)
        ? burned(patches)
        : "%s, %s on another day by your clock: their bench is in another zone"
            .formatted(
                burned(patches), elsewhere == patches.size() ? "all" : elsewhere + " of them");
  }

  private static boolean onAnotherDay(Patch patch, ZoneId here) {
    return !patch
        .burnedAt()
        .toLocalDate()
        .equals(patch.burnedAt().atZoneSameInstant(here).toLocalDate());
  }
}
