package charline.plan;

import charline.exposure.Emission;
import charline.model.DoseLimit;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.Lookahead;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.Strokes;
import java.util.Optional;

/**
 * What is held of both events, thinned for looking ahead, and what is still to be learned of the
 * two limits of the window: the highest dose that keeps the char promise and the lowest that keeps
 * the clearing promise.
 */
final class Outlook {
  private static final int DRAWS = 500;

  private final Requirements asked;
  private final ModelFit charFit;
  private final ModelFit clearingFit;
  private final Lookahead charring;
  private final Lookahead clearing;
  private final DoseLimit hottest;
  private final DoseLimit coldest;

  /**
   * @param strokes how the work is to be covered, which the hot limit of the window has to bear
   */
  Outlook(
      Requirements asked,
      ModelFit charFit,
      ModelFit clearingFit,
      Optional<Trials> trials,
      Strokes strokes) {
    this(asked, charFit, clearingFit, trials, strokes, DRAWS);
  }

  Outlook(
      Requirements asked,
      ModelFit charFit,
      ModelFit clearingFit,
      Optional<Trials> trials,
      Strokes strokes,
      int draws) {
    this.asked = asked;
    this.charFit = charFit;
    this.clearingFit = clearingFit;
    charring = Lookahead.of(charFit, trials, draws);
    clearing = Lookahead.of(clearingFit, trials, draws);
    hottest = charring.doseLimit(asked.charRisk(), strokes.seamShare());
    coldest = clearing.doseLimit(asked.clearChance());
  }

  /** What is held before any trial with the light of a bench, quoted at an intensity. */
  static Outlook beforeTrials(Fitter fitter, Requirements asked, RigSetup bench, double intensity) {
    Emission emission = bench.rig().emission();
    return new Outlook(
        asked,
        fitter.beforeTrials(Event.CHAR, emission, intensity),
        fitter.beforeTrials(Event.CLEARING, emission, intensity),
        Optional.empty(),
        bench.strokes());
  }

  ModelFit charFit() {
    return charFit;
  }

  ModelFit clearingFit() {
    return clearingFit;
  }

  Lookahead charring() {
    return charring;
  }

  Lookahead clearing() {
    return clearing;
  }

  /** Both limits at one intensity and number of passes, one value per draw. */
  Target target(double lnIntensity, int passes) {
    return new Target(
        hottest.sample(charring.size(), lnIntensity, passes),
        coldest.sample(clearing.size(), lnIntensity, passes));
  }

  /** Highest dose at which the first pass chars no more often than was asked, before any trial. */
  double lnSafeDose(double lnIntensity) {
    double low = Math.log(0.01);
    double high = Math.log(1000);
    while (high - low > 1e-4) {
      double middle = (low + high) / 2;
      if (charring.newBoardChance(middle, lnIntensity, 1) > asked.charRisk()) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return low;
  }

  /**
   * The place that the next patches are to teach about.
   *
   * @param hottest ln dose limit of char per draw
   * @param coldest ln dose limit of clearing per draw
   */
  final class Target {
    private final double[] hot;
    private final double[] cold;
    private final double hotSpread;
    private final double coldSpread;

    private Target(double[] hot, double[] cold) {
      this.hot = hot;
      this.cold = cold;
      hotSpread = charring.spread(hot);
      coldSpread = clearing.spread(cold);
    }

    double lnHottest() {
      return charring.quantile(hot, 1 - asked.confidence());
    }

    double lnColdest() {
      return clearing.quantile(cold, asked.confidence());
    }

    /** Room between the two promises in ln dose, negative where they collide. */
    double room() {
      return lnHottest() - lnColdest();
    }

    double lnMiddle() {
      return (lnHottest() + lnColdest()) / 2;
    }

    double hotSpread() {
      return hotSpread;
    }

    double coldSpread() {
      return coldSpread;
    }

    double hotSpreadAfter(Lookahead.Prospect prospect) {
      return prospect.expectedSpread(hot);
    }

    double coldSpreadAfter(Lookahead.Prospect prospect) {
      return prospect.expectedSpread(cold);
    }
  }
}
