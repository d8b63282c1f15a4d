package charline.trial;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.Optional;

/** Times as a person read them off a clock, which leaves some out and shows some twice. */
public final class ClockTime {
  private ClockTime() {}

  /**
   * Why a time names no one moment in a zone, as a sentence without its capital; empty where it
   * does.
   */
  public static Optional<String> trouble(LocalDateTime time, ZoneId zone) {
    return Optional.ofNullable(zone.getRules().getTransition(time))
        .map(change -> change.isGap() ? leftOut(time, change) : shownTwice(time, change));
  }

  private static String leftOut(LocalDateTime time, ZoneOffsetTransition change) {
    return "clocks were put forward from %s to %s on %s, so there was no %s; give the time that the clock showed."
        .formatted(
            change.getDateTimeBefore().toLocalTime(),
            change.getDateTimeAfter().toLocalTime(),
            time.toLocalDate(),
            time.toLocalTime());
  }

  private static String shownTwice(LocalDateTime time, ZoneOffsetTransition change) {
    return "clocks were put back from %s to %s on %s, so %s came twice; give %s or %s."
        .formatted(
            change.getDateTimeBefore().toLocalTime(),
            change.getDateTimeAfter().toLocalTime(),
            time.toLocalDate(),
            time.toLocalTime(),
            time.atOffset(change.getOffsetBefore()),
            time.atOffset(change.getOffsetAfter()));
  }
}
