package charline.answer;

import charline.model.Fitter;
import charline.plan.NextPatches;
import charline.plan.PairList;
import charline.plan.PairPlan;
import charline.plan.Planner;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.window.JobRisk;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which patches to burn next: the first of a stratum, further ones, or those of one piece.
 *
 * @param choice which trials and which rig a question is about
 * @param recommender finds their windows
 */
record PatchChoice(TrialChoice choice, Recommender recommender) {
  /** The patches to burn next, or to begin with where nothing was burned with this light. */
  NextAnswer next(TrialQuestion question, PatchesWanted wanted) {
    return choice
        .tried(question)
        .map(tried -> further(tried, wanted))
        .orElseGet(() -> first(question, wanted));
  }

  /** What follows a window: the same list as the question what to burn next gets. */
  NextPatches after(TrialCase subject, FoundWindow window, List<Board> boards) {
    return window.found().piece().isPresent()
        ? onPiece(subject, Optional.of(window), PatchesWanted.USUAL.onPiece())
        : onBoards(subject, window, boards, PatchesWanted.USUAL);
  }

  private NextPatches onBoards(
      TrialCase subject, FoundWindow window, List<Board> boards, PatchesWanted wanted) {
    return kept()
        .next(
            window,
            List.of(subject.trials(), wanted, boards),
            () ->
                planner(recommender.fitter(subject), wanted)
                    .next(subject.trials(), window.found(), wanted.site(), boards, wanted.count()));
  }

  private KeptFits kept() {
    return recommender.fitting().kept();
  }

  List<Board> boards(TrialCase subject, PatchesWanted wanted) {
    return boards(subject.trials().stratum(), subject.trials().patches(), wanted);
  }

  /** Pairs of patches that tell the two ways of a comparison apart. */
  PairList pairs(CompareAnswer compared, PatchesWanted wanted) {
    TrialCase first = compared.first().subject();
    return new PairPlan(planner(recommender.fitter(first), wanted))
        .pairs(
            way(compared.first()),
            way(compared.second()),
            wanted.site(),
            boards(first, wanted),
            wanted.count());
  }

  private static PairPlan.Way way(CompareAnswer.Contender of) {
    return new PairPlan.Way(of.subject().trials(), of.found());
  }

  private NextAnswer further(TrialCase subject, PatchesWanted wanted) {
    if (subject.piece().isPresent()) {
      return answer(subject, onPiece(subject, wanted));
    }
    return answer(
        subject, onBoards(subject, recommender.window(subject), boards(subject, wanted), wanted));
  }

  private NextPatches onPiece(TrialCase subject, PatchesWanted wanted) {
    Optional<FoundWindow> known =
        subject.patchesOnPiece() == 0 ? Optional.empty() : Optional.of(recommender.window(subject));
    return onPiece(subject, known, wanted.onPiece());
  }

  /** A piece without patches is planned from the window of any board. */
  private NextPatches onPiece(
      TrialCase subject, Optional<FoundWindow> known, PatchesWanted wanted) {
    FoundWindow window = known.orElseGet(() -> recommender.window(subject));
    return kept()
        .next(
            window,
            List.of(subject.trials(), subject.piece(), wanted, "piece"),
            () ->
                planner(recommender.fitter(subject), wanted)
                    .onPiece(
                        subject.trials(),
                        subject.piece().orElseThrow(),
                        known
                            .flatMap(own -> recommender.general(subject, own))
                            .orElse(window.found()),
                        known.map(FoundWindow::found),
                        wanted.site(),
                        wanted.count()));
  }

  private NextAnswer answer(TrialCase subject, NextPatches next) {
    return new NextAnswer(
        subject.question(),
        subject.trials().stratum(),
        Optional.of(subject),
        next,
        Precautions.of(choice.log(), subject.trials().patches()));
  }

  private NextAnswer first(TrialQuestion question, PatchesWanted wanted) {
    FamilyAndWood about = question.named();
    Rig rig = rigToBeginWith(question);
    Light light = Light.of(rig);
    Stratum stratum =
        new Stratum(about.family(), about.wood(), light.emission(), light.wavelengthNanometres());
    NextPatches next =
        planner(
                recommender
                    .fitting()
                    .fitter(stratum, question.priors(), question.asked().acceptTint()),
                wanted)
            .first(
                question.fixed().bench(rig, choice.at()).withStrokes(question.strokes()),
                question.asked(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES),
                wanted.site(),
                boards(stratum, List.of(), wanted),
                wanted.count());
    return new NextAnswer(
        question,
        stratum,
        Optional.empty(),
        next,
        Precautions.of(
            choice.log(), about.family(), about.woods(), wanted.boards(), light.emission()));
  }

  private static Planner planner(Fitter fitter, PatchesWanted wanted) {
    Planner planner = new Planner(fitter, Planner.BOARDS);
    return wanted.boards().isEmpty() ? planner : planner.withFewBoards();
  }

  private Rig rigToBeginWith(TrialQuestion question) {
    if (question.rig().isPresent()) {
      return choice.rig(question.rig().get());
    }
    if (choice.rigs().isEmpty()) {
      throw Refusal.lacking(Missing.ANY_RIG, "A patch needs a rig, and the log has none.");
    }
    if (choice.rigs().size() > 1) {
      throw Refusal.lacking(
          Missing.RIG,
          "The rig is missing, and the log has %d of them.".formatted(choice.rigs().size()));
    }
    return choice.rigs().get(0);
  }

  /** Boards as named, or those of the trials and those of the wood that carry no patch at all. */
  private List<Board> boards(Stratum stratum, List<Patch> own, PatchesWanted wanted) {
    if (!wanted.boards().isEmpty()) {
      return wanted.boards();
    }
    Set<UUID> burned = strata().burnedBoards();
    Stream<Board> unused =
        choice.log().boards().stream()
            .filter(b -> stratum.covers(b.wood()))
            .filter(b -> !burned.contains(b.id()));
    return List.copyOf(
        Stream.concat(own.stream().map(Patch::board), unused)
            .collect(Collectors.toCollection(LinkedHashSet::new)));
  }

  private Strata strata() {
    return choice.strata();
  }
}
