package charline.cli.patch;

import charline.cli.command.TypedTime;
import charline.cli.command.TypedValues;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.wording.SettingsText;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;

/** When a patch is judged: not before it was burned. */
final class Judging {
  private Judging() {}

  /**
   * The moment of a reading as typed, which means the burning where it is no more exact than that.
   *
   * @param text what was typed
   * @param when the moment that it names
   */
  static OffsetDateTime at(String text, OffsetDateTime when, Patch patch) {
    OffsetDateTime burned = patch.burnedAt();
    if (!when.isBefore(burned)) {
      return when;
    }
    boolean sameDay = when.toLocalDate().equals(burned.toLocalDate());
    boolean sameMinute = !when.isBefore(burned.truncatedTo(ChronoUnit.MINUTES));
    if (sameDay && TypedTime.isDay(text) || sameMinute) {
      return burned;
    }
    throw TypedValues.refused(
        "--at",
        "a patch must be judged after it was burned, and %s was burned on %s; correct the %s."
            .formatted(
                patch.code(),
                sameDay ? SettingsText.minute(burned) : burned.toLocalDate(),
                sameDay ? "time" : "day"));
  }

  /** This moment, unless the clock of this computer stands before the burning. */
  static OffsetDateTime now(OffsetDateTime now, Patch patch) {
    if (Patch.isJudgedBefore(patch.burnedAt(), now)) {
      throw Refusal.data(
          "The clock of this computer says %s, before %s was burned on %s; set the clock, or give the time with --at."
              .formatted(
                  SettingsText.minute(now), patch.code(), SettingsText.minute(patch.burnedAt())));
    }
    return now;
  }

  /** Refuses a time of burning after which a patch was not judged any more. */
  static void requireAfterBurning(Patch patch) {
    for (Reading reading : patch.readings()) {
      if (reading.at().isBefore(patch.burnedAt().truncatedTo(ChronoUnit.MINUTES))) {
        throw TypedValues.refused(
            "--at",
            "%s was judged after %s on %s, which is before %s; put that reading right first with --reading %d --at."
                .formatted(
                    patch.code(),
                    SettingsText.passes(reading.passes()),
                    SettingsText.minute(reading.at()),
                    SettingsText.minute(patch.burnedAt()),
                    reading.passes()));
      }
    }
  }
}
