package charline.log;

import charline.exposure.DoseForm;
import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Tone;
import charline.trial.WoodForm;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The lakeside boathouse in a log: one pulsed rig, one board, one finish, and patches at will. */
public final class Boathouse {
  public static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-03-10T09:30:00+01:00");
  public static final Clock CLOCK = Clock.fixed(MORNING.toInstant(), ZoneId.of("Europe/Zurich"));

  public final Logbook log;
  public final Rig rig;
  public final Board board;
  public final Finish finish;

  public Boathouse(Logbook log) {
    this.log = log;
    rig =
        RigBuilder.heron(log.newId())
            .named("shop-200")
            .spotMillimetres(0.5)
            .repetitionKilohertz(20)
            .lens(Optional.of("F254 lens"))
            .build();
    board =
        new Board(
            log.newId(),
            "door stile",
            "pine",
            WoodForm.SOLID,
            Optional.of("dry, one knot"),
            OptionalDouble.of(9.2),
            Optional.of("slip doors"));
    finish =
        new Finish(
            log.newId(),
            "white over grey",
            "latex",
            List.of(
                new Coat("latex", Optional.of(Tone.PALE), OptionalDouble.of(90)),
                new Coat("primer", Optional.empty(), OptionalDouble.empty())));
    log.add(rig, "Ada");
    log.add(board, "Ada");
    log.add(finish, "Ada");
  }

  private Boathouse(Logbook log, Rig rig, Board board, Finish finish) {
    this.log = log;
    this.rig = rig;
    this.board = board;
    this.finish = finish;
  }

  /** The same from a log that holds it already. */
  public static Boathouse alreadySetUp(Logbook log) {
    return new Boathouse(
        log, log.rig("shop-200"), log.board("door stile"), log.finish("white over grey"));
  }

  public static Settings pulsed(DoseForm form) {
    return new Settings(
        PowerSetting.percent(60),
        form,
        new Spot(0.5, SpotDefinition.ONE_OVER_E_SQUARED),
        Optional.of(new Pulses(20, OptionalDouble.of(100))));
  }

  public Reading reading(int passes, String outcome) {
    return new Reading(
        log.newId(),
        passes,
        Outcome.parse(outcome),
        Optional.empty(),
        OptionalDouble.empty(),
        MORNING,
        Optional.of("Ada"),
        Optional.empty());
  }

  public Patch patch(String code, OffsetDateTime burnedAt, Reading... readings) {
    return new Patch(
        log.newId(),
        code,
        burnedAt,
        rig,
        board,
        finish,
        pulsed(new HandPass(60, 30)),
        OptionalDouble.empty(),
        List.of(readings));
  }

  public static PatchEntry entry(Patch patch) {
    return new PatchEntry(
        patch, Map.of("power", "60%"), Optional.of("Ada"), Optional.empty(), Optional.empty());
  }

  /** Records a patch with one reading and the next code. */
  public PatchEntry burn(String outcome) {
    return burn(MORNING, outcome);
  }

  public PatchEntry burn(OffsetDateTime at, String outcome) {
    return log.inTransaction(
        () -> {
          PatchEntry entry = entry(patch(log.nextPatchCode(), at, reading(1, outcome)));
          log.add(entry);
          return entry;
        });
  }
}
