package charline.model.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import java.util.function.IntFunction;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Trials that cannot tell: a plain sentence for each, and every number still a number. */
class WeakIdentificationTest {
  private static final Outcome CHAR = Outcome.of(Mark.CHAR);
  private static final Outcome RESIDUE = Outcome.of(Mark.RESIDUE);

  private Trials trials;

  private List<String> looks(Event event) {
    return check(event).findings().stream()
        .filter(f -> f.topic() == FitFinding.Topic.EVIDENCE)
        .map(FindingText::of)
        .toList();
  }

  private FitChecks check(Event event) {
    Fitter fitter = Fitter.withDefaults();
    return new FitChecker(fitter).check(trials, fitter.fit(trials, event));
  }

  private void given(List<Patch> patches) {
    trials = new Trials(Stratum.of(patches.get(0)), patches, false);
  }

  private void given(int count, IntFunction<Patch> patch) {
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      patches.add(patch.apply(i));
    }
    given(patches);
  }

  private static Patch patch(int i, double power, double speed, Reading... readings) {
    return InventedStratum.patch("P-" + (i + 1), i % 3, power, speed, List.of(readings));
  }

  private static Reading after(int passes, Outcome outcome) {
    return InventedStratum.reading("r", passes, outcome);
  }

  @AfterEach
  void every_number_is_a_number() {
    for (Event event : Event.values()) {
      FitChecks checks = check(event);
      assertThat(checks.logScore()).isFinite().isNegative();
      for (PatchCheck p : checks.patches()) {
        assertThat(p.kHat()).isNotNaN();
        assertThat(List.of(p.sooner(), p.asSeen(), p.later(), p.tail(), p.adjusted()))
            .allSatisfy(x -> assertThat(x).isBetween(-1e-9, 1 + 1e-9));
        assertThat(p.sooner() + p.asSeen() + p.later()).isCloseTo(1, within(1e-6));
      }
      for (CountCheck c : checks.doses()) {
        assertThat(new double[] {c.expected(), c.tail()}).doesNotContain(Double.NaN);
      }
      for (CalibrationBin b : checks.calibration()) {
        assertThat(List.of(b.predicted(), b.low(), b.high(), b.tail()))
            .allSatisfy(x -> assertThat(x).isBetween(0.0, 1.0));
      }
      for (BoardCheck b : checks.shifts()) {
        assertThat(b.factor().low()).isPositive();
        assertThat(b.factor().high()).isFinite();
        assertThat(b.standsOff()).isBetween(0.0, 1.0);
      }
      assertThat(checks.findings())
          .allSatisfy(
              f -> assertThat(FindingText.of(f)).doesNotContain("NaN", "Infinity").endsWith("."));
    }
  }

  @Test
  void one_patch() {
    given(
        1, i -> patch(i, 60, 20, after(1, RESIDUE), after(2, Outcome.of(Mark.CHAR, Mark.RESIDUE))));
    assertThat(looks(Event.CHAR))
        .containsExactly("One patch alone says little: nearly all of this comes from the prior.");
    assertThat(looks(Event.CLEARING))
        .contains(
            "No patch cleared, so the trials give only a lower limit for where the finish comes"
                + " off.");
  }

  @Test
  void outcomes_all_alike() {
    given(8, i -> patch(i, 40 + 5 * i, 30 - 2 * (i % 4), after(1, RESIDUE), after(2, RESIDUE)));
    assertThat(looks(Event.CHAR))
        .containsExactly(
            "No patch charred, so the trials give only a lower limit for where the wood begins to"
                + " burn.");
    assertThat(looks(Event.CLEARING))
        .containsExactly(
            "No patch cleared, so the trials give only a lower limit for where the finish comes"
                + " off.");
    assertThat(check(Event.CHAR).fail()).isFalse();
  }

  @Test
  void every_patch_charred_at_once() {
    given(8, i -> patch(i, 40 + 5 * i, 30 - 2 * (i % 4), after(1, CHAR)));
    assertThat(looks(Event.CHAR))
        .containsExactly(
            "Every patch had charred at its first reading, so the trials give only an upper limit"
                + " for where the wood begins to burn.",
            "Every reading was after 1 pass, so only the prior says what further passes add.");
  }

  @Test
  void a_row_entered_again() {
    List<Patch> patches = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      patches.add(patch(i, 30 + 10 * (i % 3), 20 + 3 * i, after(1, RESIDUE), after(2, CHAR)));
    }
    Patch again = patches.get(2);
    patches.add(
        InventedStratum.patch("P-7", 2, 50, 26, List.of(after(1, RESIDUE), after(2, CHAR))));
    given(patches);
    assertThat(again.settings()).isEqualTo(patches.get(6).settings());
    assertThat(looks(Event.CHAR))
        .containsExactly(
            "P-3, P-7 have the same board, time, settings and readings; if one patch was entered"
                + " twice, void the duplicate.");
  }

  @Test
  void dose_and_fluence_as_one() {
    given(9, i -> patch(i, 30 + 8 * i, 20, after(1, i > 4 ? CHAR : RESIDUE), after(2, CHAR)));
    assertThat(looks(Event.CHAR))
        .containsExactly(
            "Dose and fluence went up and down together, so only the prior says which of them"
                + " counts; vary the speed at one power.");
  }

  @Test
  void knobs_never_moved() {
    given(9, i -> patch(i, 60, 20, after(2, i % 2 == 0 ? CHAR : RESIDUE)));
    assertThat(looks(Event.CHAR).subList(0, 3))
        .containsExactly(
            "Every patch had the same dose, so only the prior says how fast the chance rises with"
                + " dose.",
            "Every patch had the same fluence, so only the prior says what fluence adds.",
            "Every reading was after 2 passes, so only the prior says what further passes add.");
  }

  @Test
  void a_dose_out_of_all_proportion() {
    given(
        9,
        i ->
            patch(
                i,
                30 + 10 * (i % 4),
                i == 4 ? 0.001 : i == 5 ? 1e6 : 12 + 3 * i,
                after(1, i == 4 || i == 8 ? CHAR : RESIDUE),
                after(2, i % 2 == 0 ? CHAR : RESIDUE)));
    assertThat(looks(Event.CHAR))
        .anyMatch(
            w ->
                w.startsWith("The dose of P-5, 100000 J/cm2, is ")
                    && w.contains(" above the median dose"))
        .anyMatch(w -> w.startsWith("The dose of P-6, ") && w.contains(" below the median dose"));
  }
}
