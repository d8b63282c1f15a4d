package charline.record;

import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.refusal.Refusal;
import charline.trial.DepthClash;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.Reading;
import charline.trial.UsualValues;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;

/** Records patches and readings, puts them right and takes them out. */
public final class Patches {
  private final Logbook log;
  private final Assurance sure;

  public Patches(Logbook log, Assurance sure) {
    this.log = log;
    this.sure = sure;
  }

  /**
   * Records a patch with its first reading.
   *
   * @param recorder who records it, for whom it is the last patch from then on, as it is for
   *     whoever burned it
   * @param code gives its code, asked inside the transaction that records it
   */
  public PatchEntry add(PatchDraft draft, String recorder, Supplier<String> code) {
    List<Doubt> doubts = new ArrayList<>(draft.doubts());
    Patch patch = draft.patch("");
    doubts.addAll(Plausibility.about(patch));
    doubts.addAll(Plausibility.aboutFigure(patch.circumstances(), log::figures));
    doubts.addAll(far(patch));
    doubts.addAll(ClockDoubt.about(log, draft.rig()));
    sure.require(doubts);
    return log.inTransaction(
        () -> {
          PatchEntry entry =
              new PatchEntry(
                  draft.patch(code.get()),
                  draft.typed(),
                  draft.reading().by(),
                  draft.note(),
                  Optional.empty());
          log.add(entry, recorder);
          return entry;
        });
  }

  /** Records a further reading; gives the patch with it. */
  public PatchEntry read(Patch patch, Reading reading) {
    List<Doubt> doubts = new ArrayList<>(Plausibility.about(reading));
    doubts.addAll(Plausibility.about(reading, patch.readings()));
    if (doubts.isEmpty()) {
      doubts.addAll(log.usual(patch.rig(), patch).doubtsOfPasses(reading.passes()));
    }
    if (doubts.stream().noneMatch(doubt -> doubt.knob() == Knob.DEPTH)) {
      clash(patch, reading).map(Plausibility::about).ifPresent(doubts::add);
    }
    sure.require(doubts);
    Patch.requireFollows(patch.code(), patch.lastReading(), reading);
    Patch.requireJudgedAfter(patch.burnedAt(), patch.code(), reading);
    log.addReading(patch.code(), reading);
    return log.patch(patch.code());
  }

  /** A clash of depth and coat that a reading brings to a patch; none that it had before. */
  private static Optional<DepthClash> clash(Patch patch, Reading reading) {
    if (DepthClash.of(patch).isPresent() || reading.passes() <= patch.lastReading().passes()) {
      return Optional.empty();
    }
    List<Reading> readings = new ArrayList<>(patch.readings());
    readings.add(reading);
    return DepthClash.of(patch.withReadings(readings));
  }

  /** Replaces the record of a patch and its readings; only new values are doubted. */
  public void amend(PatchEntry old, PatchEntry amended, String by, String why) {
    if (amended.equals(old)) {
      throw Refusal.usage(
          "Nothing in %s would change; say what to amend.".formatted(old.patch().code()));
    }
    requireJudgedAfterBurning(old.patch(), amended.patch());
    List<Doubt> doubts = new ArrayList<>(Plausibility.about(amended.patch()));
    doubts.addAll(Plausibility.aboutFigure(amended.patch().circumstances(), log::figures));
    doubts.addAll(far(amended.patch()));
    doubts.removeAll(Plausibility.about(old.patch()));
    doubts.removeAll(far(old.patch()));
    sure.require(doubts);
    log.amend(amended, by, why);
  }

  /** Looks at what is new alone: an older log may hold a reading that nobody can put right. */
  private static void requireJudgedAfterBurning(Patch old, Patch amended) {
    boolean sameBurning = amended.burnedAt().isEqual(old.burnedAt());
    amended.readings().stream()
        .filter(reading -> !sameBurning || !old.readings().contains(reading))
        .forEach(reading -> Patch.requireJudgedAfter(amended.burnedAt(), amended.code(), reading));
  }

  /**
   * Doubts about values far from what the rig had so far, apart from knobs that are doubted as they
   * stand: they would repeat the same slip. That lines leave stripes says nothing of a slip.
   */
  private List<Doubt> far(Patch patch) {
    UsualValues usual = log.usual(patch.rig(), patch);
    List<Doubt> doubts =
        new ArrayList<>(usual.doubts(patch.settings(), patch.areaSquareCentimetres()));
    doubts.addAll(usual.doubtsOfPasses(patch.lastReading().passes()));
    Set<Knob> doubted = new HashSet<>();
    List<Doubt> stripes = Plausibility.aboutLines(patch.circumstances(), patch.settings());
    Plausibility.about(patch).stream()
        .filter(doubt -> !stripes.contains(doubt))
        .forEach(doubt -> doubted.add(doubt.knob()));
    doubts.removeIf(doubt -> doubted.contains(doubt.knob()));
    return doubts;
  }

  /** Takes patches out of every analysis, all of them or none; gives their codes. */
  public List<String> takeOut(List<String> words, String by, String why) {
    return log.inTransaction(
        () -> {
          List<String> codes =
              words.stream()
                  .map(word -> Codes.recorded(log, word, by).patch().code())
                  .distinct()
                  .toList();
          codes.forEach(code -> log.voidPatch(code, by, why));
          return codes;
        });
  }

  /**
   * Takes back a patch or one of its readings; it stays in the log with its history.
   *
   * @param what identity of the patch or the reading
   * @return false if it was taken back before
   */
  public boolean undo(PatchEntry entry, UUID what, String by, String why) {
    Patch p = entry.patch();
    List<Reading> left = p.readings().stream().filter(r -> !r.id().equals(what)).toList();
    boolean whole = what.equals(p.id());
    if (whole ? entry.voided().isPresent() : left.size() == p.readings().size()) {
      return false;
    }
    if (whole || left.isEmpty()) {
      log.voidPatch(p.code(), by, why);
    } else {
      log.amend(entry.with(p.withReadings(left)), by, why);
    }
    return true;
  }
}
