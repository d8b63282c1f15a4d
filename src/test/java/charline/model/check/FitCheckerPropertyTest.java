package charline.model.check;

import static org.assertj.core.api.Assertions.assertThat;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.Trials;
import charline.trial.Mark;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Stratum;
import charline.wording.FindingText;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FitCheckerPropertyTest {
  private static final Fitter FITTER = Fitter.withDefaults();

  private static FitChecks check(Trials trials, Event event) {
    return new FitChecker(FITTER).check(trials, FITTER.fit(trials, event));
  }

  private static boolean fails(Trials trials) {
    return Stream.of(Event.values()).anyMatch(event -> check(trials, event).fail());
  }

  /** One in fifty would be too many; of 720 that were simulated one failed. */
  @Test
  void strata_that_follow_the_model_pass() {
    long failing =
        LongStream.range(0, 30)
            .filter(seed -> fails(new InventedStratum(500 + seed).burn(18, 3)))
            .count();
    assertThat(failing).isZero();
  }

  private static Trials with(Trials trials, Patch patch) {
    List<Patch> patches = new ArrayList<>(trials.patches());
    patches.add(patch);
    return new Trials(trials.stratum(), patches, false);
  }

  private static Patch charredAt(double powerPercent, double handMillimetresPerSecond) {
    return InventedStratum.patch(
        "P-0099",
        1,
        powerPercent,
        handMillimetresPerSecond,
        List.of(InventedStratum.reading("P-0099", 1, Outcome.of(Mark.CHAR))));
  }

  /**
   * At 80 % and 9 mm/s a patch gets 30 J/cm2 and chars; typed as 90 mm/s it seems to char at 3. Not
   * every stratum can tell, as few patches of it may have charred: of the first thirty nineteen
   * can.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 4, 5, 6, 7})
  void a_speed_typed_as_tenfold_is_named(long seed) {
    isNamed(seed, charredAt(80, 90));
  }

  /** The same with the power typed as 8 %, which is a tenth of its intensity too. */
  @ParameterizedTest
  @ValueSource(longs = {1, 4, 5, 6, 7})
  void a_power_typed_as_a_tenth_is_named(long seed) {
    isNamed(seed, charredAt(8, 9));
  }

  private static void isNamed(long seed, Patch slip) {
    Trials trials = stratum(seed);
    assertThat(named(check(with(trials, charredAt(80, 9)), Event.CHAR))).doesNotContain("P-0099");
    FitChecks checks = check(with(trials, slip), Event.CHAR);
    assertThat(named(checks)).containsExactly("P-0099");
    assertThat(checks.findings())
        .filteredOn(f -> f.severity() != Severity.FINE)
        .extracting(FindingText::of)
        .anyMatch(
            w ->
                w.startsWith(
                    "P-0099 charred within 1 pass of 2.96 J/cm2, to which the model fitted to the"
                        + " other patches gives a chance of "));
  }

  private static Trials stratum(long seed) {
    return new InventedStratum(seed, InventedStratum.LOGISTIC, 1, 0.2, 0).burn(29, 3);
  }

  /**
   * Where few patches charred there is less to contradict, so not every slip can fail the model: of
   * thirty strata twelve fail over either.
   */
  @ParameterizedTest
  @CsvSource({"80, 90", "8, 9"})
  void two_models_in_five_fail_over_a_slip_by_a_power_of_ten(double percent, double speed) {
    Patch slip = charredAt(percent, speed);
    assertThat(
            LongStream.rangeClosed(1, 30)
                .filter(seed -> check(with(stratum(seed), slip), Event.CHAR).fail())
                .count())
        .isGreaterThanOrEqualTo(12);
  }

  private static List<String> named(FitChecks checks) {
    return checks.patches().stream().filter(PatchCheck::surprising).map(PatchCheck::code).toList();
  }

  @Test
  void trials_turned_on_their_head_fail() {
    Trials trials = new InventedStratum(9).burn(24, 3);
    List<Patch> byDose = new ArrayList<>(trials.patches());
    byDose.sort((a, b) -> Double.compare(dose(a), dose(b)));
    List<Patch> turned = new ArrayList<>();
    for (int i = 0; i < byDose.size(); i++) {
      turned.add(withReadings(byDose.get(i), byDose.get(byDose.size() - 1 - i).readings()));
    }
    FitChecks checks = check(new Trials(trials.stratum(), turned, false), Event.CHAR);
    assertThat(checks.fail()).isTrue();
    assertThat(FindingText.of(checks.findings(Severity.FAILS).get(0)))
        .startsWith("Cooler patches charred sooner than hotter ones in ");
  }

  private static double dose(Patch patch) {
    return patch.exposure().doseJoulesPerCm2();
  }

  private static Patch withReadings(Patch p, List<Reading> readings) {
    return new Patch(
        p.id(),
        p.code(),
        p.burnedAt(),
        p.rig(),
        p.board(),
        p.finish(),
        p.settings(),
        p.areaSquareCentimetres(),
        readings);
  }

  @Test
  void a_board_unlike_the_others_is_pointed_at() {
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      int board = i % 5;
      double speed = 2.5 * Math.pow(1.3, i / 5);
      // Board B-5 takes 4 times the dose of the rest.
      boolean charred = 80 * 2 / (6 * speed / 10) > (board == 4 ? 40 : 10);
      String code = "P-%02d".formatted(i);
      patches.add(
          InventedStratum.patch(
              code,
              board,
              80,
              speed,
              List.of(
                  InventedStratum.reading(code, 1, Outcome.of(charred ? Mark.CHAR : Mark.CLEAN)))));
    }
    Trials trials = new Trials(Stratum.of(patches.get(0)), patches, false);
    FitChecks checks = check(trials, Event.CHAR);
    assertThat(checks.shifts().get(4).factor().low()).isGreaterThan(1.3);
    assertThat(checks.findings(Severity.LOOK).stream().map(FindingText::of))
        .anyMatch(w -> w.startsWith("Board B-5 takes "))
        .noneMatch(w -> w.startsWith("Board B-1 takes "));
  }

  @Test
  void the_same_trials_give_the_same_findings() {
    Trials trials = new InventedStratum(9).burn(12, 3);
    assertThat(check(trials, Event.CHAR)).isEqualTo(check(trials, Event.CHAR));
  }
}
