package charline.trial;

import charline.exposure.Settings;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** Invented rigs, boards, finishes and patches with what a test says of them, and no more. */
public final class Pieces {
  public static final OffsetDateTime NOON = OffsetDateTime.parse("2026-06-01T12:00:00+02:00");

  private Pieces() {}

  /** A pulsed rig of 1064 nm whose usual settings are 0.6 mm, 40 kHz, 100 ns and 60 mm. */
  public static Rig rig(int id, String name, double ratedWatts, PowerCheck... checks) {
    return RigBuilder.heron(new UUID(1, id))
        .named(name)
        .ratedWatts(ratedWatts)
        .checks(List.of(checks))
        .build();
  }

  /** A solid board named after its number. */
  public static Board board(int id, String wood) {
    return new Board(
        new UUID(2, id),
        "board " + id,
        wood,
        WoodForm.SOLID,
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }

  public static Finish finish(int id, String family, Coat... coats) {
    return new Finish(new UUID(3, id), family + " " + id, family, List.of(coats));
  }

  /** A patch without a size, burned so many hours after {@link #NOON}. */
  public static Patch patch(
      int number, Rig rig, Board board, Finish finish, Settings settings, Reading... readings) {
    return new Patch(
        new UUID(4, number),
        "P-%04d".formatted(number),
        NOON.plusHours(number),
        rig,
        board,
        finish,
        settings,
        OptionalDouble.empty(),
        List.of(readings));
  }

  /** What was seen, with nothing else noted. */
  public static Reading reading(int passes, String outcome) {
    return new Reading(
        new UUID(5, passes),
        passes,
        Outcome.parse(outcome),
        Optional.empty(),
        OptionalDouble.empty(),
        NOON,
        Optional.empty(),
        Optional.empty());
  }

  /** The same patch with other readings. */
  public static Patch withReadings(Patch patch, List<Reading> readings) {
    return new Patch(
        patch.id(),
        patch.code(),
        patch.burnedAt(),
        patch.rig(),
        patch.board(),
        patch.finish(),
        patch.settings(),
        patch.areaSquareCentimetres(),
        readings);
  }

  /** The same reading after so many passes. */
  public static Reading after(int passes, Reading r) {
    return new Reading(
        r.id(), passes, r.outcome(), r.soot(), r.depthMicrometres(), r.at(), r.by(), r.note());
  }

  /** The same reading with another outcome. */
  public static Reading seen(String outcome, Reading r) {
    return new Reading(
        r.id(),
        r.passes(),
        Outcome.parse(outcome),
        r.soot(),
        r.depthMicrometres(),
        r.at(),
        r.by(),
        r.note());
  }
}
