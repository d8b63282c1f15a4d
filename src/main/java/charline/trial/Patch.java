package charline.trial;

import charline.exposure.Exposure;
import charline.exposure.Settings;
import charline.quantity.Invariant;
import charline.refusal.Refusal;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * One trial: a board, a finish, a rig and its settings, and what was seen as passes rose.
 *
 * @param id permanent identity
 * @param code short code as written on the masking tape, such as P-0042
 * @param burnedAt when it was burned
 * @param rig the rig, with all its power checks
 * @param board the wood
 * @param finish the coats
 * @param settings what was dialled in
 * @param circumstances how it was burned beside that, as far as it is known
 * @param areaSquareCentimetres size of the patch, if known
 * @param readings one or more, passes rising
 */
public record Patch(
    UUID id,
    String code,
    OffsetDateTime burnedAt,
    Rig rig,
    Board board,
    Finish finish,
    Settings settings,
    Circumstances circumstances,
    OptionalDouble areaSquareCentimetres,
    List<Reading> readings) {
  private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

  public Patch {
    areaSquareCentimetres.ifPresent(a -> Invariant.positive("Patch size", a, "cm2"));
    readings = List.copyOf(readings);
    if (readings.isEmpty()) {
      throw Refusal.usage("Patch " + code + " must have a reading; it has none.");
    }
    for (int i = 1; i < readings.size(); i++) {
      requireFollows(code, readings.get(i - 1), readings.get(i));
    }
  }

  /** A patch of whose circumstances nothing is known. */
  public Patch(
      UUID id,
      String code,
      OffsetDateTime burnedAt,
      Rig rig,
      Board board,
      Finish finish,
      Settings settings,
      OptionalDouble areaSquareCentimetres,
      List<Reading> readings) {
    this(
        id,
        code,
        burnedAt,
        rig,
        board,
        finish,
        settings,
        Circumstances.UNKNOWN,
        areaSquareCentimetres,
        readings);
  }

  /**
   * The same without notes on readings of which nothing can be seen.
   *
   * @throws Refusal if such a note was to say why char is gone
   */
  public Patch withoutBlankNotes() {
    List<Reading> said = readings.stream().map(Reading::withoutBlankNote).toList();
    return said.equals(readings) ? this : withReadings(said);
  }

  /** The same under a code. */
  public Patch withCode(String given) {
    return new Patch(
        id,
        given,
        burnedAt,
        rig,
        board,
        finish,
        settings,
        circumstances,
        areaSquareCentimetres,
        readings);
  }

  /** The same with other readings. */
  public Patch withReadings(List<Reading> others) {
    return new Patch(
        id,
        code,
        burnedAt,
        rig,
        board,
        finish,
        settings,
        circumstances,
        areaSquareCentimetres,
        others);
  }

  /** The same burned otherwise. */
  public Patch with(Circumstances others) {
    return new Patch(
        id, code, burnedAt, rig, board, finish, settings, others, areaSquareCentimetres, readings);
  }

  /**
   * Refuses a reading that cannot come after another on the same patch: passes must rise, and char
   * does not turn clean unless a note says why.
   *
   * @throws Refusal in one sentence for the person
   */
  public static void requireFollows(String code, Reading earlier, Reading later) {
    if (later.passes() <= earlier.passes()) {
      throw Refusal.usage(
          "Passes on %s must rise: the last reading was after %d, this one says %d; amend the earlier reading if it was wrong."
              .formatted(code, earlier.passes(), later.passes()));
    }
    if (earlier.outcome().charred() && !later.outcome().charred() && later.note().isEmpty()) {
      throw Refusal.usage(
          "Char on %s after %s cannot be gone after %d without a note; say in a note what happened, or amend the earlier reading."
              .formatted(
                  code,
                  earlier.passes() == 1 ? "1 pass" : earlier.passes() + " passes",
                  later.passes()));
    }
  }

  /**
   * Refuses a reading from before the burning. Seconds do not count, as people type minutes.
   *
   * @throws Refusal in one sentence for the person
   */
  public static void requireJudgedAfter(OffsetDateTime burned, String code, Reading reading) {
    if (!isJudgedBefore(burned, reading.at())) {
      return;
    }
    boolean sameDay = reading.at().toLocalDate().equals(burned.toLocalDate());
    throw Refusal.usage(
        "A patch must be judged after it was burned, and %s was burned on %s; correct the %s."
            .formatted(
                code,
                sameDay ? MINUTE.format(burned) : burned.toLocalDate(),
                sameDay ? "time" : "day"));
  }

  /** Whether a moment of judging is before the minute of the burning. */
  public static boolean isJudgedBefore(OffsetDateTime burned, OffsetDateTime judged) {
    return judged.isBefore(burned.truncatedTo(ChronoUnit.MINUTES));
  }

  /** Power delivered, dose per pass and intensity, by the rig's power checks at the time. */
  public Exposure exposure() {
    return Exposure.of(
        rig.emission(),
        rig.deliveredWatts(settings.power(), settings.pulses(), burnedAt),
        settings);
  }

  /** With which figure and on what place it was burned. */
  public Manner manner() {
    return Manner.of(this);
  }

  /** The latest reading. */
  public Reading lastReading() {
    return readings.get(readings.size() - 1);
  }
}
