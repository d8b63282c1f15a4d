package charline.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import charline.cli.Main;
import charline.drift.Validity;
import charline.exposure.Emission;
import charline.log.Logbook;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.classical.ClassicalFit;
import charline.model.classical.ClassicalRegression;
import charline.model.classical.Method;
import charline.model.way.Coating;
import charline.plan.NextPatches;
import charline.plan.Site;
import charline.progress.WorkWatch;
import charline.quote.Quoting;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Stratum;
import charline.trial.Tone;
import charline.window.JobLimit;
import charline.window.Requirements;
import charline.window.SpeedKnob;
import charline.window.Verdict;
import charline.window.WindowFinder;
import charline.wording.PlanText;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Questions to a log of the boathouse's trials. */
class AnswersTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-01T09:00:00Z"), ZoneOffset.UTC);
  private static final OffsetDateTime NOW = OffsetDateTime.now(CLOCK);
  private static final TrialQuestion LATEX = TrialQuestion.about("latex", "pine");
  private static final TrialQuestion ALKYD = TrialQuestion.about("alkyd", Stratum.ANY_WOOD);
  private static final PatchesWanted TWO = new PatchesWanted(2, Site.OFFCUT, List.of());

  /** A person who is nearly sure that wood takes ten times the usual dose. */
  private static final Priors BOLD =
      PriorFile.read(List.of("char dose = 300 x/ 1.05"), Path.of("bold.prior"));

  @TempDir static Path folder;
  private static Logbook log;
  private static Answers answers;

  @BeforeAll
  static void import_the_boathouse() {
    Path file = folder.resolve("boathouse.db");
    PrintStream nowhere = new PrintStream(new ByteArrayOutputStream());
    String sheets = "sample-trials/";
    int code =
        Main.run(
            ("--log %s import %2$slatex-on-pine.csv %2$salkyd-on-pine-cw.csv"
                    + " %2$salkyd-on-plywood.csv %2$sclear-coat-on-larch.csv"
                    + " --rigs %2$srigs.csv --power-checks %2$spower-checks.csv")
                .formatted(file, sheets)
                .split(" "),
            new ByteArrayInputStream(new byte[0]),
            nowhere,
            nowhere,
            Map.of(),
            CLOCK);
    assertThat(code).isZero();
    log = Logbook.open(file, CLOCK);
    answers = Answers.of(log, NOW);
  }

  @AfterAll
  static void close() {
    log.close();
  }

  @Test
  void trials_with_several_kinds_of_light_are_never_chosen_for_the_person() {
    List<Stratum> candidates = answers.candidates(ALKYD);
    assertThat(candidates)
        .extracting(Stratum::emission)
        .containsExactlyInAnyOrder(Emission.PULSED, Emission.CONTINUOUS);

    Refusal refusal = catchThrowableOfType(Refusal.class, () -> answers.choose(ALKYD));
    assertThat(refusal.missing()).contains(Missing.LIGHT);
    assertThat(refusal.getMessage()).contains("pulsed 1064 nm", "cw 1080 nm");

    for (Stratum stratum : candidates) {
      TrialCase chosen = answers.choose(ALKYD.with(Light.of(stratum)));
      assertThat(chosen.trials().stratum()).isEqualTo(stratum);
      assertThat(answers.choose(ALKYD.onRig(chosen.bench().rig().name())).trials())
          .isEqualTo(chosen.trials());
    }
  }

  @Test
  void what_was_never_tried_is_not_found_and_the_log_says_what_was() {
    assertThatThrownBy(() -> answers.choose(TrialQuestion.about("latex", "oak")))
        .isInstanceOfSatisfying(
            Refusal.class, e -> assertThat(e.kind()).isEqualTo(Refusal.Kind.NOTHING_FOUND))
        .hasMessageStartingWith("The log has no patches of latex over oak; it has ")
        .hasMessageContaining("latex on pine, pulsed 1064 nm (24 patches)");
    assertThatThrownBy(() -> answers.choose(LATEX.with(new Light(Emission.CONTINUOUS, 1080))))
        .hasMessageStartingWith(
            "latex over pine was not tried with light of that kind (cw, 1080 nm)");
  }

  @Test
  void no_refusal_names_an_option_or_a_command_of_a_face() {
    Logbook empty = Logbook.open(folder.resolve("empty.db"), CLOCK);
    try (empty) {
      Answers none = Answers.of(empty, NOW);
      List<Refusal> refusals =
          List.of(
              catchThrowableOfType(Refusal.class, () -> answers.choose(ALKYD)),
              catchThrowableOfType(Refusal.class, () -> every(none, TrialQuestion.OF_ALL)),
              catchThrowableOfType(Refusal.class, () -> none.choose(LATEX)),
              catchThrowableOfType(Refusal.class, () -> none.next(LATEX, TWO)),
              catchThrowableOfType(
                  Refusal.class, () -> answers.next(TrialQuestion.about("shellac", "oak"), TWO)));
      assertThat(refusals).extracting(Throwable::getMessage).noneMatch(m -> m.contains("--"));
      assertThat(refusals).extracting(Throwable::getMessage).noneMatch(m -> m.contains("`"));
      assertThat(refusals)
          .extracting(Refusal::missing)
          .containsExactly(
              Optional.of(Missing.LIGHT),
              Optional.empty(),
              Optional.empty(),
              Optional.of(Missing.ANY_RIG),
              Optional.of(Missing.RIG));
    }
  }

  @Test
  void knobs_that_the_question_fixes_take_the_place_of_the_usual_ones() {
    TrialCase usual = answers.choose(LATEX);
    TrialCase fixed =
        answers.choose(
            LATEX.with(
                new FixedKnobs(Map.of(Knob.SPOT, 0.8, Knob.PULSE, 120.0, Knob.WIDTH, 45.0))));
    assertThat(fixed.bench().spot().diameterMillimetres()).isEqualTo(0.8);
    assertThat(fixed.bench().pulses().orElseThrow().repetitionKilohertz())
        .isEqualTo(usual.bench().pulses().orElseThrow().repetitionKilohertz());
    assertThat(fixed.bench().pulses().orElseThrow().durationNanoseconds()).hasValue(120);
    assertThat(fixed.bench().speed()).isEqualTo(new SpeedKnob(SpeedKnob.Kind.HAND, 45));
    assertThatThrownBy(
            () ->
                answers.choose(
                    ALKYD
                        .with(new Light(Emission.CONTINUOUS, 1080))
                        .with(new FixedKnobs(Map.of(Knob.RATE, 40.0)))))
        .isInstanceOf(Refusal.class)
        .hasMessageEndingWith("so it takes neither a repetition rate nor a pulse duration.");
  }

  @Test
  void pooled_trials_stay_in_the_order_of_burning() {
    Strata strata = Strata.of(log);
    Stratum pooled = answers.candidates(ALKYD).get(0);
    List<Patch> patches = strata.of(pooled);
    assertThat(patches).isNotEmpty().isSubsetOf(strata.patches());
    assertThat(patches.stream().map(strata.patches()::indexOf).toList()).isSorted();
    assertThat(answers.choose(ALKYD.with(Light.of(pooled))).trials().patches()).isEqualTo(patches);
    assertThat(new Strata(List.of()).of(pooled)).isEmpty();
  }

  @Test
  void a_window_comes_with_all_that_goes_with_it() {
    WeighedWindow weighed =
        answers.weighedWindow(LATEX.with(new JobLimit(4.5, OptionalDouble.empty())));
    WindowAnswer window = weighed.window();
    TrialCase subject = window.subject();
    WindowFinder finder =
        new WindowFinder(
            new LogFitter(Strata.of(log)).fitter(subject.trials(), Priors.USUAL, false));

    assertThat(window.isWindow()).isTrue();
    assertThat(window.found().chosen())
        .isEqualTo(
            finder.recommend(subject.trials(), subject.bench(), Requirements.USUAL).chosen());
    assertThat(window.job().orElseThrow().areaSquareMetres()).isEqualTo(4.5);
    assertThat(window.applicability().validity())
        .isEqualTo(Validity.of(subject.bench().rig(), subject.trials(), Fitter.withDefaults()));
    assertThat(window.cautions()).isNotEmpty().doesNotHaveDuplicates();
    Patch first = subject.trials().patches().get(0);
    assertThat(window.cautions())
        .containsAll(log.reference().cautions(first.finish(), first.board(), Emission.PULSED));
    assertThat(window.offer()).as("24 patches are enough of its own").isEmpty();

    PriorSensitivity priors = weighed.priors();
    assertThat(priors.found()).isSameAs(window.found());
    assertThat(priors.halfAsSure())
        .isEqualTo(
            PriorSensitivity.HalfAsSure.of(
                finder
                    .halfAsSure()
                    .recommend(subject.trials(), subject.bench(), Requirements.USUAL)));
    assertThat(priors.halfAsSure().start()).isPresent();
    assertThat(priors.halfAsSure().start())
        .isNotEqualTo(window.found().chosen().map(box -> box.start()));
  }

  @Test
  void how_much_boards_differ_is_learned_from_the_other_strata_unless_a_file_pins_the_priors() {
    ModelFit learned = answers.onset(LATEX).fit();
    List<Patch> own =
        Strata.of(log).patches().stream().filter(p -> p.finish().family().equals("latex")).toList();
    Answers alone = new Answers(log, log.rigs(), new LogFitter(new Strata(own)), NOW);
    assertThat(alone.onset(LATEX).fit().omega()).isNotEqualTo(learned.omega());

    TrialQuestion pinned =
        LATEX.with(new Priors(Priors.USUAL.set(), Optional.of(Path.of("usual.prior"))));
    assertThat(answers.onset(pinned).fit().omega())
        .isEqualTo(alone.onset(pinned).fit().omega())
        .isEqualTo(alone.onset(LATEX).fit().omega());
  }

  /** The door of the boathouse: five patches by the plan, and what they make of the window. */
  @Test
  void a_window_for_a_piece_rests_on_its_own_patches_too() {
    List<Patch> all = new ArrayList<>(Strata.of(log).patches());
    TrialCase usual = answers.choose(LATEX);
    Board piece = usual.trials().patches().stream().map(Patch::board).findFirst().orElseThrow();
    TrialQuestion asked = LATEX.forPiece(piece.name());

    WindowAnswer window = answers.window(asked);
    PieceAnswer told = window.piece().orElseThrow();
    long own = all.stream().filter(p -> p.board().equals(piece)).count();
    assertThat(told.fits().patches()).isEqualTo((int) own);
    assertThat(told.general().orElseThrow().evidence().patches())
        .isEqualTo(usual.trials().patches().size() - (int) own);
    assertThat(window.found().piece()).isPresent();
    assertThat(told.fits().paretoK()).isLessThan(0.7);
    assertThat(answers.window(LATEX).piece()).isEmpty();
    assertThat(answers.next(asked, PatchesWanted.USUAL).next().suggestions())
        .isEqualTo(window.next().suggestions());
  }

  @Test
  void a_piece_must_be_of_the_wood_and_have_patches_of_the_coat() {
    Board oak = log.boards().stream().filter(b -> !b.wood().equals("pine")).findAny().orElseThrow();
    assertThatThrownBy(() -> answers.window(LATEX.forPiece(oak.name())))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("The piece must be of pine, and board " + oak.name() + " is of ");
    assertThatThrownBy(() -> answers.window(LATEX.forPiece("no such board")))
        .isInstanceOf(Refusal.class);
    Optional<Board> bare =
        log.boards().stream()
            .filter(b -> b.wood().equals("pine"))
            .filter(
                b ->
                    answers.choose(LATEX).trials().patches().stream()
                        .noneMatch(p -> p.board().id().equals(b.id())))
            .findAny();
    bare.ifPresent(
        board ->
            assertThatThrownBy(() -> answers.window(LATEX.forPiece(board.name())))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("must have one of latex on pine"));
  }

  @Test
  void few_patches_are_offered_what_others_could_lend_unless_they_borrow() {
    List<Patch> all = Strata.of(log).patches();
    List<Patch> few = new ArrayList<>(all);
    few.removeAll(all.stream().filter(p -> p.finish().family().equals("latex")).skip(10).toList());
    Answers fewer = new Answers(log, log.rigs(), new LogFitter(new Strata(few)), NOW);
    WindowAnswer alone = fewer.window(LATEX);
    int own = alone.subject().trials().patches().size();
    assertThat(own).isEqualTo(10);
    BorrowOffer offer = alone.offer().orElseThrow();
    assertThat(offer.patches())
        .isEqualTo(
            (int)
                few.stream()
                    .filter(p -> p.rig().emission() == Emission.PULSED)
                    .filter(p -> !p.finish().family().equals("latex"))
                    .count());

    TrialQuestion borrowing = LATEX.borrowing(true);
    assertThat(fewer.window(borrowing).offer()).isEmpty();
    assertThat(fewer.onset(borrowing).fit().borrowed()).isPresent();
    assertThat(fewer.next(borrowing, TWO).next().window().orElseThrow().charFit().orElseThrow())
        .satisfies(fit -> assertThat(fit.borrowed()).isPresent());
  }

  @Test
  void every_kind_of_question_starts_from_the_priors_that_it_brings() {
    TrialQuestion bold = LATEX.with(BOLD);
    double usual = answers.onset(LATEX).fit().tau().median();

    double onset = answers.onset(bold).fit().tau().median();
    assertThat(onset).isGreaterThan(usual + 0.5);
    assertThat(answers.quote(bold, Quoting.usual(4.5)).window().found().charFit().orElseThrow())
        .satisfies(fit -> assertThat(fit.tau().median()).isEqualTo(onset));
    assertThat(answers.next(bold, TWO).next().window().orElseThrow().charFit().orElseThrow())
        .satisfies(fit -> assertThat(fit.tau().median()).isEqualTo(onset));
    ClassicalRegression firth = new ClassicalRegression(Method.FIRTH, 0.05, 0.9);
    assertThat(answers.classical(bold, Event.CHAR, firth).comparison().orElseThrow())
        .isNotEqualTo(answers.classical(LATEX, Event.CHAR, firth).comparison().orElseThrow());
    assertThat(answers.classical(bold, Event.CHAR, firth).outcome())
        .as("a classical fit has no priors")
        .isInstanceOfSatisfying(
            ClassicalFit.class,
            fit ->
                assertThat(fit.coefficients())
                    .isEqualTo(
                        ((ClassicalFit) answers.classical(LATEX, Event.CHAR, firth).outcome())
                            .coefficients()));
  }

  @Test
  void removal_is_for_the_coat_that_was_asked_for() {
    Coating dark = new Coating(Optional.of(Tone.DARK), OptionalDouble.empty());
    assertThatThrownBy(() -> answers.removal(LATEX.with(dark)))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("The tone must be one that was tried, not dark");

    RemovalAnswer removal =
        answers.removal(LATEX.with(new Coating(Optional.of(Tone.PALE), OptionalDouble.empty())));
    assertThat(removal.model().fit().coat().tone()).contains(Tone.PALE);
    assertThat(removal.rates()).hasSizeBetween(1, 5);
    assertThat(removal.rates())
        .isSortedAccordingTo(
            (a, b) ->
                Double.compare(a.exposure().doseJoulesPerCm2(), b.exposure().doseJoulesPerCm2()));
    assertThat(removal.coatMicrometres()).isPresent();
    RemovalRate rate = removal.rates().get(0);
    assertThat(rate.perPass().orElseThrow().micrometres() * rate.median().median())
        .isCloseTo(
            removal.coatMicrometres().getAsDouble(), org.assertj.core.data.Offset.offset(1e-9));
  }

  @Test
  void where_nothing_was_burned_the_first_patches_are_for_the_rig_that_was_named() {
    NextAnswer next = answers.next(TrialQuestion.about("shellac", "oak").onRig("heron"), TWO);
    assertThat(next.tried()).isEmpty();
    assertThat(next.next().suggestions()).hasSize(2);
    assertThat(next.stratum()).isEqualTo(new Stratum("shellac", "oak", Emission.PULSED, 1064));
  }

  @Test
  void every_stratum_is_answered_as_if_asked_alone() {
    List<Patch> some = new ArrayList<>(Strata.of(log).patches());
    some.removeIf(p -> p.finish().family().equals("clear coat"));
    some.removeIf(p -> p.board().wood().equals("plywood"));
    Answers answers = new Answers(log, log.rigs(), new LogFitter(new Strata(some)), NOW);
    AllWindows<WindowAnswer> all = every(answers, TrialQuestion.OF_ALL);
    assertThat(all.skipped()).isEmpty();
    assertThat(all.answers()).hasSize(2);
    List<Integer> sizes =
        all.answers().stream().map(a -> a.subject().trials().patches().size()).toList();
    assertThat(sizes).isSortedAccordingTo(Collections.reverseOrder());
    WindowAnswer latex =
        all.answers().stream()
            .filter(a -> a.found().stratum().family().equals("latex"))
            .findAny()
            .orElseThrow();
    assertThat(latex.found().chosen()).isEqualTo(answers.window(LATEX).found().chosen());
    assertThat(every(answers, TrialQuestion.OF_ALL.with(new Light(Emission.CONTINUOUS, 1080))))
        .satisfies(
            cw ->
                assertThat(cw.answers())
                    .extracting(a -> a.found().stratum().emission())
                    .containsOnly(Emission.CONTINUOUS));
  }

  private static AllWindows<WindowAnswer> every(Answers asked, TrialQuestion question) {
    return asked.windows(question, WorkWatch.NONE, Function.identity());
  }

  /** One engine, the same seeds: whoever asks for the window and for what to burn next. */
  @Test
  void the_next_step_of_every_window_is_the_list_of_what_to_burn_next() {
    List<Patch> all = Strata.of(log).patches();
    for (int share : new int[] {100, 50, 20}) {
      List<Patch> some = new ArrayList<>();
      new Strata(all)
          .byStratum()
          .values()
          .forEach(own -> some.addAll(own.subList(0, Math.max(1, own.size() * share / 100))));
      Answers asked = new Answers(log, log.rigs(), new LogFitter(new Strata(some)), NOW);
      for (WindowAnswer window : every(asked, TrialQuestion.OF_ALL).answers()) {
        Stratum stratum = window.found().stratum();
        NextPatches next =
            asked
                .next(
                    TrialQuestion.about(stratum.family(), stratum.wood()).with(Light.of(stratum)),
                    PatchesWanted.USUAL)
                .next();
        assertThat(window.next().suggestions())
            .as("%s, %d %% of its patches", stratum.words(), share)
            .isEqualTo(next.suggestions());
        assertThat(PlanText.advice(window.next().advice()))
            .isEqualTo(PlanText.advice(next.advice()));
        assertThat(window.found().verdict() == Verdict.NONE)
            .as(stratum.words())
            .isEqualTo(next.suggestions().isEmpty());
      }
    }
  }

  @Test
  void drift_is_asked_of_a_rig_by_its_name() {
    assertThat(answers.drift("heron").rig().name()).isEqualTo("heron");
    assertThatThrownBy(() -> answers.drift("herom"))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("heron");
  }
}
