package charline.record;

import charline.exposure.Emission;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.GivenName;
import charline.trial.Knob;
import charline.trial.OwnWord;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.PowerCheck;
import charline.trial.Rig;
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
    if (rig.emission() == Emission.CONTINUOUS
        && (rig.repetitionKilohertz().isPresent() || rig.pulseNanoseconds().isPresent())) {
      throw Refusal.usage(
          "A cw rig has no pulses; leave out its repetition rate and pulse duration.");
    }
    sure.require(Plausibility.about(rig));
    log.add(rig, by);
  }

  /** Records a metered power of a rig. */
  public void add(Rig rig, PowerCheck check) {
    sure.require(Plausibility.about(check, rig));
    log.addCheck(rig.name(), check, by);
  }

  /** Records a new board. */
  public void add(Board board) {
    GivenName.checked("board", board.name());
    requireFit(board, List.of());
    log.add(board, by);
  }

  /** Replaces the record of a board. */
  public void amend(Board old, Board amended, String why) {
    if (amended.equals(old)) {
      throw Refusal.usage("Nothing in %s would change; say what to amend.".formatted(old.name()));
    }
    if (!amended.name().equals(old.name())) {
      GivenName.checked("board", amended.name());
    }
    requireFit(amended, Plausibility.about(old));
    log.amend(amended, by, why);
  }

  private void requireFit(Board board, List<Doubt> known) {
    board.moisturePercent().ifPresent(Knob.MOISTURE::checked);
    sure.require(
        Plausibility.about(board).stream().filter(doubt -> !known.contains(doubt)).toList());
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
    log.add(sort, word, by);
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
    log.amend(sort, old, other, by, why);
    return new OwnWord(old.id(), old.name(), old.aliases(), other);
  }

  private String known(OwnWords.Sort sort, String word) {
    return sort == OwnWords.Sort.WOOD ? log.wood(word) : log.family(word);
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
            family == null ? coats.get(0).family() : log.family(family),
            coats);
    sure.require(Plausibility.about(finish));
    log.add(finish, by);
    return finish;
  }
}
