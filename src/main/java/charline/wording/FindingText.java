package charline.wording;

import static charline.quantity.Figures.percent;
import static charline.quantity.Figures.three;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.check.CalibrationBin;
import charline.model.check.CountCheck;
import charline.model.check.FitFinding;
import charline.model.check.FitFinding.CountOff;
import charline.model.check.FitFinding.SurprisingPatch;
import charline.quantity.Figures;

/** What a check of a model found, in one sentence. */
public final class FindingText {
  private FindingText() {}

  /** The sentence of a finding. */
  public static String of(FitFinding finding) {
    if (finding instanceof FitFinding.Caveat caveat) {
      return caveat(caveat);
    }
    if (finding instanceof FitFinding.Order order) {
      return order(order);
    }
    if (finding instanceof FitFinding.Sampling sampling) {
      return sampling(sampling);
    }
    if (finding instanceof SurprisingPatch patch) {
      return surprise(patch);
    }
    if (finding instanceof FitFinding.NoSurprise none) {
      return none.leastExpected()
          .map(
              code ->
                  "No patch surprises the model fitted to the others; the least expected is %s (tail %s, over %s)."
                      .formatted(code, percent(none.tail()), Figures.patches(none.patches())))
          .orElse("One patch cannot surprise a model that has seen no other.");
    }
    if (finding instanceof CountOff off) {
      return count(off);
    }
    if (finding instanceof FitFinding.CountsExpected expected) {
      return "Counts by %s are as the model expects.".formatted(expected.topic().word());
    }
    if (finding instanceof FitFinding.CalibrationOff off) {
      return calibration(off.bin());
    }
    if (finding instanceof FitFinding.Calibrated) {
      return "Predicted chances match what was seen.";
    }
    if (finding instanceof FitFinding.BoardSpread spread) {
      return spread(spread);
    }
    return board((FitFinding.BoardOff) finding);
  }

  private static String order(FitFinding.Order order) {
    return order.decisive()
        ? "Cooler patches %s sooner than hotter ones in %d comparisons, the other way round in only %d."
            .formatted(done(order.event()), order.denying(), order.agreeing())
        : "In pairs where one patch was hotter in every respect, %d hotter ones %s sooner and %d later."
            .formatted(order.agreeing(), done(order.event()), order.denying());
  }

  private static String sampling(FitFinding.Sampling sampling) {
    boolean infinite = Double.isInfinite(sampling.paretoK()) && sampling.paretoK() > 0;
    String kHat = infinite ? "infinite" : Figures.decimals(Math.max(0, sampling.paretoK()), 2);
    return sampling.reliable()
        ? "The posterior could be computed: Pareto k-hat %s, good up to 0.7.".formatted(kHat)
        : "The %s model could not be computed accurately enough (Pareto k-hat %s, must be at most 0.7)."
            .formatted(sampling.event() == Event.CHAR ? "burn-onset" : "removal", kHat);
  }

  private static String surprise(SurprisingPatch patch) {
    String done = done(patch.event());
    String seen =
        switch (patch.surprise()) {
          case EARLY -> " " + done + " within ";
          case LATE -> " " + done + " only after ";
          case NEVER -> " had not " + done + " after ";
        };
    return "%s%s%s of %s J/cm2, to which the model fitted to the other patches gives a chance of %s."
        .formatted(
            patch.code(),
            seen,
            Figures.passes(patch.passes()),
            three(patch.doseJoulesPerCm2()),
            percent(patch.chance()));
  }

  private static String count(CountOff off) {
    CountCheck count = off.count();
    return "At %s, %d of %d readings %s where the model expects %s (%d to %d)."
        .formatted(
            count.group(),
            count.seen(),
            count.readings(),
            off.event() == Event.CHAR ? "found char" : "found it cleared",
            Figures.tenths(count.expected()),
            count.low(),
            count.high());
  }

  private static String calibration(CalibrationBin bin) {
    return "Where predicted chances averaged %s, %d of %d readings showed it: a true share of %s, with 90 %% confidence."
        .formatted(
            percent(bin.predicted()),
            bin.seen(),
            bin.readings(),
            Figures.percentBounds(bin.low(), bin.high()));
  }

  private static String spread(FitFinding.BoardSpread spread) {
    String factor = three(spread.factor());
    String usual = three(spread.usual());
    return spread.wide()
        ? "Boards differ by a factor of %s from the average, more than the prior allows for (up to %s in 19 of 20 cases), so it pulls the spread in; burn on more boards, or split what differs into strata."
            .formatted(factor, usual)
        : "Boards differ by a factor of %s from the average; the prior allows for up to %s in 19 of 20 cases."
            .formatted(factor, usual);
  }

  private static String board(FitFinding.BoardOff off) {
    return "Board %s takes %s times the dose of an average board (%s), further off than the prior expects of any of %d boards; check whether it has the same wood and finish."
        .formatted(
            off.board().board(),
            three(off.board().factor().median()),
            Figures.bounds(off.board().factor().low(), off.board().factor().high()),
            off.boards());
  }

  private static String caveat(FitFinding.Caveat caveat) {
    if (caveat instanceof FitFinding.OnePatch) {
      return "One patch alone says little: nearly all of this comes from the prior.";
    }
    if (caveat instanceof FitFinding.NoneSeen none) {
      return "No patch %s, so the trials give only a lower limit for where %s."
          .formatted(done(none.event()), onset(none.event()));
    }
    if (caveat instanceof FitFinding.AllSeenAtFirst all) {
      return "Every patch had %s at its first reading, so the trials give only an upper limit for where %s."
          .formatted(done(all.event()), onset(all.event()));
    }
    if (caveat instanceof FitFinding.SameDose) {
      return "Every patch had the same dose, so only the prior says how fast the chance rises with"
          + " dose.";
    }
    if (caveat instanceof FitFinding.SameIntensity same) {
      String intensity = intensity(same.emission());
      return "Every patch had the same %s, so only the prior says what %s adds."
          .formatted(intensity, intensity);
    }
    if (caveat instanceof FitFinding.SamePasses same) {
      return "Every reading was after %s, so only the prior says what further passes add."
          .formatted(Figures.passes(same.passes()));
    }
    if (caveat instanceof FitFinding.DoseWithIntensity together) {
      return "Dose and %s went up and down together, so only the prior says which of them counts; vary the speed at one power."
          .formatted(intensity(together.emission()));
    }
    if (caveat instanceof FitFinding.DoseFarOff far) {
      return farOff(far);
    }
    return "%s have the same board, time, settings and readings; if one patch was entered twice, void the duplicate."
        .formatted(String.join(", ", ((FitFinding.EnteredTwice) caveat).codes()));
  }

  private static String farOff(FitFinding.DoseFarOff far) {
    double ratio = far.doseJoulesPerCm2() / far.medianJoulesPerCm2();
    return "The dose of %s, %s J/cm2, is a factor of %s %s the median dose of %s J/cm2; check for a wrong unit or a misplaced decimal point."
        .formatted(
            far.code(),
            three(far.doseJoulesPerCm2()),
            three(Math.max(ratio, 1 / ratio)),
            ratio > 1 ? "above" : "below",
            three(far.medianJoulesPerCm2()));
  }

  private static String done(Event event) {
    return event == Event.CHAR ? "charred" : "cleared";
  }

  private static String onset(Event event) {
    return event == Event.CHAR ? "the wood begins to burn" : "the finish comes off";
  }

  private static String intensity(Emission emission) {
    return emission == Emission.PULSED ? "fluence" : "irradiance";
  }
}
