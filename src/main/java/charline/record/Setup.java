package charline.record;

import charline.exposure.Emission;
import charline.log.Joins;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.GivenName;
import charline.trial.Knob;
import charline.trial.MeteredPlausibility;
import charline.trial.OwnWord;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import java.util.ArrayList;
import java.util.List;

/** Sets up what patches are burned with and on, and puts it right. */
public final class Setup {
  private final Logbook log;
  private final Assurance sure;
  private final String by;

  /**
   * @param by who sets up
   */
  public Setup(Logbook log, Assurance sure, String by) {
    this.log = log;
    this.sure = sure;
    this.by = by;
  }

  /** Records a new rig. */
  public void add(Rig rig) {
    GivenName.checked("rig", rig.name());
    requirePulses(rig);
    List<Doubt> doubts = new ArrayList<>(Plausibility.about(rig));
    doubts.addAll(Plausibility.aboutFigure(rig.usual(), log::figures));
    sure.require(doubts);
    log.add(rig, by);
  }

  /** Records what was done to a rig. */
  public void add(Rig rig, Upkeep upkeep) {
    sure.require(upkeep.doubts());
    log.rigEntries().addUpkeep(rig.name(), upkeep, by);
  }

  /** Replaces what is recorded of the upkeep of a rig. */
  public void amend(Rig rig, Upkeep old, Upkeep amended, String why) {
    requireChange(old, amended, "this upkeep");
    requireSure(amended.doubts(), old.doubts());
    log.rigEntries().amend(rig, amended, by, why);
  }

  private static void requirePulses(Rig rig) {
    if (rig.emission() == Emission.CONTINUOUS
        && (rig.repetitionKilohertz().isPresent() || rig.pulseNanoseconds().isPresent())) {
      throw Refusal.usage(
          "A cw rig has no pulses; leave out its repetition rate and pulse duration.");
    }
    if (rig.emission() == Emission.CONTINUOUS && rig.largestPulseMillijoules().isPresent()) {
      throw Refusal.usage("A cw rig has no pulses; leave out its largest pulse energy.");
    }
  }

  /** Lets void upkeep count again. */
  public void bringBack(Rig rig, Upkeep upkeep, String why) {
    log.rigEntries().bringBack(rig, upkeep, by, why);
  }

  /** Replaces the record of a rig, not its checks; only new values are doubted. */
  public void amend(Rig old, Rig amended, String why) {
    requireChange(old, amended, old.name());
    if (!amended.name().equals(old.name())) {
      GivenName.checked("rig", amended.name());
    }
    requirePulses(amended);
    List<Doubt> doubts = new ArrayList<>(Plausibility.about(amended));
    doubts.addAll(Plausibility.aboutFigure(amended.usual(), log::figures));
    requireSure(doubts, Plausibility.about(old));
    log.amend(amended, by, why);
  }

  /** Records a metered power of a rig. */
  public void add(Rig rig, PowerCheck check) {
    requireFit(rig, check);
    List<Doubt> doubts = new ArrayList<>(MeteredPlausibility.about(check, rig));
    doubts.addAll(ClockDoubt.about(log, rig));
    sure.require(doubts);
    log.rigEntries().addCheck(rig.name(), check, by);
  }

  /** Replaces what a power check says. */
  public void amend(Rig rig, PowerCheck old, PowerCheck amended, String why) {
    requireChange(old, amended, "this power check");
    requireFit(rig, amended);
    sure.require(MeteredPlausibility.about(amended, rig));
    log.rigEntries().amend(rig, amended, by, why);
  }

  /** Lets a void power check count again. */
  public void bringBack(Rig rig, PowerCheck check, String why) {
    sure.require(MeteredPlausibility.about(check, rig));
    log.rigEntries().bringBack(rig, check, by, why);
  }

  private static void requireFit(Rig rig, PowerCheck check) {
    if (rig.emission() == Emission.CONTINUOUS
        && (check.repetitionKilohertz().isPresent() || check.pulseNanoseconds().isPresent())) {
      throw Refusal.usage(
          "Rig %s is cw and has no pulses; leave out the repetition rate and pulse duration of the check."
              .formatted(rig.name()));
    }
  }

  private static void requireChange(Object old, Object amended, String what) {
    if (amended.equals(old)) {
      throw Refusal.usage("Nothing in %s would change; say what to amend.".formatted(what));
    }
  }

  private void requireSure(List<Doubt> doubts, List<Doubt> known) {
    sure.require(doubts.stream().filter(doubt -> !known.contains(doubt)).toList());
  }

  /** Records a new board. */
  public void add(Board board) {
    GivenName.checked("board", board.name());
    requireFit(board, List.of());
    log.add(board, by);
  }

  /** Replaces the record of a board. */
  public void amend(Board old, Board amended, String why) {
    requireChange(old, amended, old.name());
    if (!amended.name().equals(old.name())) {
      GivenName.checked("board", amended.name());
    }
    requireFit(amended, Plausibility.about(old));
    log.amend(amended, by, why);
  }

  /** Takes a board out with its patches; they stay in the log with the reason. */
  public void takeOut(Board board, String why) {
    log.voided(board)
        .ifPresent(
            earlier -> {
              throw Refusal.usage(
                  "Board %s is void already (%s); nothing was changed."
                      .formatted(board.name(), earlier));
            });
    log.voidBoard(board, by, why);
  }

  /** Lets a void board and its patches count again. */
  public void bringBack(Board board, String why) {
    if (log.voided(board).isEmpty()) {
      throw Refusal.usage("Board %s is not void, so it counts already.".formatted(board.name()));
    }
    log.bringBack(board, by, why);
  }

  private void requireFit(Board board, List<Doubt> known) {
    board.moisturePercent().ifPresent(Knob.MOISTURE::checked);
    requireSure(Plausibility.about(board), known);
  }

  /**
   * Adds a wood or a coating family.
   *
   * @param also other words for the same
   * @param like a known word of that sort, whose class and cautions it takes over
   */
  public OwnWord addWord(OwnWords.Sort sort, String name, List<String> also, String like) {
    OwnWord word =
        new OwnWord(
            log.newId(),
            OwnWord.checked(sort.word(), name),
            also.stream().map(each -> OwnWord.checked(sort.word(), each)).toList(),
            known(sort, like));
    log.ownWords().add(sort, word, by);
    return word;
  }

  /** Says anew what a wood or a family is like that somebody added. */
  public OwnWord amendWord(OwnWords.Sort sort, String name, String like, String why) {
    String known = known(sort, name);
    OwnWord old =
        log.ownWords()
            .find(sort, known)
            .map(OwnWords.Added::word)
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "Only a %s that somebody added can be amended; %s comes with the program."
                            .formatted(sort.word(), known)));
    String other = known(sort, like);
    if (other.equals(old.like())) {
      throw Refusal.usage("Nothing in %s would change; say what to amend.".formatted(known));
    }
    log.ownWords().amend(sort, old, other, by, why);
    return new OwnWord(old.id(), old.name(), old.aliases(), other);
  }

  private String known(OwnWords.Sort sort, String word) {
    return sort == OwnWords.Sort.WOOD ? log.reference().wood(word) : log.reference().family(word);
  }

  /**
   * Records a new finish.
   *
   * @param family coating family that it counts as, null for that of the outermost coat
   * @param coats outermost first
   */
  public Finish addFinish(String name, String family, List<Coat> coats) {
    if (coats.isEmpty()) {
      throw Refusal.usage("A finish needs at least one coat; choose the outermost one.");
    }
    Finish finish =
        new Finish(
            log.newId(),
            GivenName.checked("finish", name),
            family == null ? coats.get(0).family() : log.reference().family(family),
            coats);
    sure.require(Plausibility.about(finish));
    log.add(finish, by);
    return finish;
  }

  /** Replaces the record of a finish and its coats. */
  public void amend(Finish old, Finish amended, String why) {
    requireChange(old, amended, old.name());
    if (amended.coats().isEmpty() && !old.coats().isEmpty()) {
      throw Refusal.usage("A finish needs at least one coat; choose the outermost one.");
    }
    if (!amended.name().equals(old.name())) {
      GivenName.checked("finish", amended.name());
    }
    requireSure(Plausibility.about(amended), Plausibility.about(old));
    log.amend(amended, by, why);
  }

  /**
   * Joins a rig that was set up twice into its other record; patches, power checks and open plans
   * follow.
   */
  public void join(Rig from, Rig into, String why) {
    requireOther(Joins.Kind.RIG, from.id().equals(into.id()), into.name());
    requireAlike("kind of light", from.emission().word(), into.emission().word());
    requireAlike(
        "wavelength",
        Figures.plain(from.wavelengthNanometres()) + " nm",
        Figures.plain(into.wavelengthNanometres()) + " nm");
    List<Doubt> doubts = new ArrayList<>();
    if (from.ratedWatts() != into.ratedWatts()) {
      doubts.add(
          new Doubt(
              Knob.ratedPower(into.emission()),
              "Rig %s is rated at %s W and %s at %s W, and %s counts for both"
                  .formatted(
                      from.name(),
                      Figures.plain(from.ratedWatts()),
                      into.name(),
                      Figures.plain(into.ratedWatts()),
                      into.name()),
              "amend the wrong one first"));
    }
    sure.require(doubts);
    log.join(Joins.Kind.RIG, from.id(), into.id(), by, why);
  }

  /** Joins a board that was set up twice into its other record; patches and open plans follow. */
  public void join(Board from, Board into, String why) {
    requireOther(Joins.Kind.BOARD, from.id().equals(into.id()), into.name());
    requireAlike("wood", from.wood(), into.wood());
    requireAlike("form", from.form().word(), into.form().word());
    log.voided(into)
        .ifPresent(
            reason -> {
              throw Refusal.usage(
                  "Board %s is void (%s); bring it back first, or join it into the other one."
                      .formatted(into.name(), reason));
            });
    log.join(Joins.Kind.BOARD, from.id(), into.id(), by, why);
  }

  /** Joins a finish that was set up twice into its other record; patches follow. */
  public void join(Finish from, Finish into, String why) {
    requireOther(Joins.Kind.FINISH, from.id().equals(into.id()), into.name());
    requireAlike("family", from.family(), into.family());
    sure.require(
        from.coats().isEmpty() || from.coats().equals(into.coats())
            ? List.of()
            : List.of(
                new Doubt(
                    Knob.THICKNESS,
                    "Finish %s has other coats than %s, whose coats count for both"
                        .formatted(from.name(), into.name()),
                    "amend the wrong one first")));
    log.join(Joins.Kind.FINISH, from.id(), into.id(), by, why);
  }

  private static void requireOther(Joins.Kind kind, boolean same, String name) {
    if (same) {
      throw Refusal.usage(
          "Both names find the %s %s, so there is nothing to join.".formatted(kind.word(), name));
    }
  }

  private static void requireAlike(String what, String from, String into) {
    if (!from.equals(into)) {
      throw Refusal.usage(
          "Only records of one thing can be joined, and their %s differs (%s and %s); amend the wrong one first."
              .formatted(what, from, into));
    }
  }
}
