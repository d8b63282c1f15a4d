package charline.plan;

import charline.drift.ControlPatch;
import charline.exposure.Settings;
import charline.trial.Patch;
import charline.window.PredictedChance;
import charline.window.Requirements;
import charline.window.RigSetup;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;

/** Writes drafts down as a list: control patches put in, cool rungs first, lots within a rung. */
record PatchList(
    RigSetup bench,
    Requirements asked,
    Site site,
    Outlook outlook,
    PatchSelection drafting,
    List<Patch> patches,
    BoardRota rota) {
  /** As many suggestions as may be made, numbered in the order of choosing. */
  List<Suggestion> draft(int count) {
    List<Suggestion> list = new ArrayList<>();
    Optional<Settings> control = ControlPatch.begun(patches, bench.rig());
    int since = ControlPatch.since(patches, bench.rig(), control);
    control = control.or(this::middle);
    while (list.size() < count) {
      Optional<PatchSelection.Draft> next = Optional.empty();
      if (since >= ControlPatch.EVERY - 1 && control.isPresent()) {
        next = control(control.get());
        since = -1; // the control patch itself makes it 0
      }
      if (next.isEmpty()) {
        next = drafting.next(rota.next());
      }
      if (next.isEmpty()) {
        break;
      }
      list.add(suggestion(list.size() + 1, next.get()));
      since++;
    }
    return list;
  }

  /** The control patch on the board that is kept for it; on the piece there is no such board. */
  private Optional<PatchSelection.Draft> control(Settings control) {
    Place place =
        site == Site.PIECE
            ? rota.next()
            : ControlPatch.board(patches, bench.rig(), control)
                .map(Place::of)
                .orElseGet(rota::next);
    Optional<PatchSelection.Draft> draft = drafting.control(control, place);
    draft.ifPresent(d -> rota.take(d.place()));
    return draft;
  }

  /** A setting in the middle of what left the wood as it was. */
  private Optional<Settings> middle() {
    if (patches.isEmpty()) {
      return Optional.empty();
    }
    double aim = drafting.lnAim();
    return patches.stream()
        .filter(p -> p.rig().id().equals(bench.rig().id()))
        .filter(p -> !p.readings().get(0).outcome().charred())
        .min(
            (a, b) ->
                Double.compare(
                    Math.abs(Math.log(a.exposure().doseJoulesPerCm2()) - aim),
                    Math.abs(Math.log(b.exposure().doseJoulesPerCm2()) - aim)))
        .map(Patch::settings);
  }

  private Suggestion suggestion(int number, PatchSelection.Draft draft) {
    DialSetting s = draft.setting();
    PredictedChance risk = s.predicted(outlook.charFit(), draft.passes());
    PredictedChance clear = s.predicted(outlook.clearingFit(), draft.passes());
    return new Suggestion(
        number,
        draft.purpose(),
        draft.motive(),
        draft.place(),
        s,
        draft.settings(),
        draft.passes(),
        risk.mean(),
        risk.upper(asked.confidence()),
        clear.mean(),
        draft.gain(),
        OptionalInt.empty());
  }

  /**
   * As many suggestions as may be made where nothing came through without char: each a rung cooler
   * than the one before, in the order of burning.
   *
   * @param lnFirst dose of the first, as a natural logarithm
   */
  List<Suggestion> descent(double lnFirst, int count) {
    List<Suggestion> list = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      Optional<PatchSelection.Draft> next =
          drafting.cooler(lnFirst - k * Ladder.LN_STEP, rota.next());
      if (next.isEmpty()) {
        break;
      }
      list.add(suggestion(k + 1, next.get()));
    }
    return list;
  }

  /**
   * The list in the order of burning: cool rungs first and lots within a rung, but nothing before
   * what permits it, and control patches where they are due.
   *
   * @param drafts in the order of choosing
   * @param known settings of the ladder that the trials themselves gave
   */
  static List<Suggestion> ordered(
      List<Suggestion> drafts, PatchSelection drafting, int known, Random lots) {
    List<Suggestion> waiting = new ArrayList<>(drafts.stream().filter(s -> !isControl(s)).toList());
    Collections.shuffle(waiting, lots);
    waiting.sort(Comparator.comparingLong(s -> Math.round(s.setting().lnDose() / Ladder.LN_STEP)));
    List<Suggestion> list = new ArrayList<>();
    for (Suggestion draft : drafts) {
      Suggestion next =
          isControl(draft)
              ? draft
              : waiting.stream()
                  .filter(s -> drafting.permitted(s.setting(), known, list))
                  .findFirst()
                  .orElseThrow();
      waiting.remove(next);
      list.add(next.at(list.size() + 1, drafting.licence(next.setting(), known, list)));
    }
    return list;
  }

  private static boolean isControl(Suggestion s) {
    return s.purpose() == Purpose.CONTROL;
  }
}
