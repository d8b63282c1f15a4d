package charline.answer;

import charline.log.Logbook;
import charline.model.Trials;
import charline.model.borrow.Borrowing;
import charline.progress.WorkWatch;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.window.JobRisk;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;

/**
 * Windows, each with all that is said beside it.
 *
 * @param strata all patches
 * @param patches chooses those to burn next
 */
record WindowAnswers(
    Logbook log, Strata strata, TrialChoice choice, Recommender recommender, PatchChoice patches) {
  /** With as many patches as this, borrowing hardly moves an answer (reports/pooling.md). */
  private static final int ENOUGH_OF_ITS_OWN = 18;

  /**
   * What the log says beside a window. A log answers one thread alone, so it is asked before
   * windows are found side by side.
   *
   * @param boards those that the next patches may go on
   */
  private record Beside(
      List<Board> boards,
      Precautions precautions,
      Optional<BorrowOffer> offer,
      List<NearWood> nearWoods) {}

  /** Of a case whose window was found already. */
  WindowAnswer of(TrialCase subject, FoundWindow window, Applicability applicability) {
    return of(subject, window, applicability, beside(subject, window.found().patches()));
  }

  private Beside beside(TrialCase subject, List<Patch> counted) {
    Precautions known = Precautions.of(log, counted);
    known.requireOpen();
    return new Beside(
        patches.boards(subject, PatchesWanted.USUAL), known, offer(subject), nearWoods(subject));
  }

  private WindowAnswer of(
      TrialCase subject, FoundWindow window, Applicability applicability, Beside beside) {
    return new WindowAnswer(
        subject,
        window.found(),
        applicability,
        patches.after(subject, window, beside.boards()),
        beside.precautions(),
        subject.question().job().flatMap(limit -> JobRisk.of(window.found(), limit)),
        beside.offer(),
        beside.nearWoods(),
        recommender.piece(subject, window),
        recommender.boards(subject));
  }

  /**
   * Of every stratum, or of those with the light of the rig that is asked about.
   *
   * @param view what is kept of an answer, as its models take megabytes; called by several threads
   */
  <T> AllWindows<T> all(
      TrialQuestion question, WorkWatch progress, Function<WindowAnswer, T> view) {
    if (strata.patches().isEmpty()) {
      throw Refusal.nothingFound("The log has no patches yet, so there is nothing to judge.");
    }
    Optional<Light> light = question.rig().map(choice::rig).map(Light::of).or(question::light);
    List<AllWindows.Skipped> skipped = new ArrayList<>();
    List<TrialCase> subjects = new ArrayList<>();
    List<AllWindows.Barred> barred = new ArrayList<>();
    strata.byStratum().entrySet().stream()
        .filter(e -> light.isEmpty() || light.get().equals(Light.of(e.getKey())))
        .sorted((a, b) -> Integer.compare(b.getValue().size(), a.getValue().size()))
        .forEach(
            e -> {
              Precautions known =
                  Precautions.of(
                      log, strata, TrialQuestion.about(e.getKey().family(), e.getKey().wood()));
              if (known.barred()) {
                barred.add(new AllWindows.Barred(e.getKey(), known));
                return;
              }
              try {
                subjects.add(choice.subject(question, e.getKey(), e.getValue()));
              } catch (Refusal reason) {
                skipped.add(new AllWindows.Skipped(e.getKey(), reason));
              }
            });
    record Asked(TrialCase subject, Beside beside) {}
    AtomicInteger done = new AtomicInteger();
    AtomicBoolean anyWindow = new AtomicBoolean();
    List<T> views =
        subjects.stream()
            .map(s -> new Asked(s, beside(s, s.trials().patches())))
            .toList()
            .parallelStream()
            .map(
                asked -> {
                  TrialCase s = asked.subject();
                  WindowAnswer answer =
                      of(s, recommender.window(s), recommender.applicability(s), asked.beside());
                  if (answer.isWindow()) {
                    anyWindow.set(true);
                  }
                  progress.at("Finding windows", done.incrementAndGet(), subjects.size());
                  return view.apply(answer);
                })
            .toList();
    return new AllWindows<>(views, barred, skipped, anyWindow.get());
  }

  /** Trials of the same coat and light on near woods, which are not counted. */
  private List<NearWood> nearWoods(TrialCase subject) {
    Stratum own = subject.trials().stratum();
    Set<String> near = new TreeSet<>();
    own.woods().forEach(wood -> near.addAll(log.reference().near(wood)));
    return near.stream()
        .filter(wood -> !own.covers(wood))
        .map(wood -> new NearWood(wood, strata.of(own.over(wood)).size()))
        .filter(each -> each.patches() > 0)
        .toList();
  }

  private Optional<BorrowOffer> offer(TrialCase subject) {
    Trials own = subject.trials();
    if (subject.question().borrow() || own.patches().size() >= ENOUGH_OF_ITS_OWN) {
      return Optional.empty();
    }
    List<List<Patch>> others =
        strata.byStratum().entrySet().stream()
            .filter(e -> Borrowing.mayLend(e.getKey(), own.stratum()))
            .map(Map.Entry::getValue)
            .toList();
    int patches = others.stream().mapToInt(List::size).sum();
    return others.isEmpty()
        ? Optional.empty()
        : Optional.of(new BorrowOffer(others.size(), patches));
  }
}
