package charline.record;

import charline.log.Logbook;
import charline.trial.Plausibility.Doubt;
import charline.trial.Rig;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A doubt about a clock that was set back, as after an empty battery: the power checks of a rig
 * then lie in the future, and a patch gets the dose of an earlier check.
 */
final class ClockDoubt {
  /** What two benches and a clock that is set right may differ by (common practice). */
  private static final Duration SLACK = Duration.ofMinutes(10);

  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private ClockDoubt() {}

  static List<Doubt> about(Logbook log, Rig rig) {
    OffsetDateTime now = log.now();
    Optional<OffsetDateTime> latest =
        Stream.concat(log.lastRecordedAt().stream(), rig.checks().stream().map(check -> check.at()))
            .max(OffsetDateTime::compareTo)
            .filter(at -> at.isAfter(now.plus(SLACK)));
    return latest
        .map(
            at ->
                new Doubt(
                    null,
                    "The clock of this computer says %s, earlier than the last record in this log (%s)"
                        .formatted(
                            MINUTE.format(now),
                            MINUTE.format(at.withOffsetSameInstant(now.getOffset()))),
                    "set the clock"))
        .stream()
        .toList();
  }
}
