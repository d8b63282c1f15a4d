package charline.model.classical;

import charline.model.DoseLimit;
import charline.model.Estimate;
import charline.model.ModelFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * A classical fit beside the posterior of the same trials, at the same place.
 *
 * @param even the posterior's dose with an even chance
 * @param atRisk the posterior's dose at the asked chance on a new board
 * @param bound the dose up to which (clearing: from which) the chance is kept with the confidence
 * @param agreement how far they agree, empty where the classical fit has no dose
 * @param reasons why they differ, most telling first
 */
public record Comparison(
    Estimate even,
    Estimate atRisk,
    double bound,
    Optional<Agreement> agreement,
    List<String> reasons) {
  /** Below this the boards differ less than a hand repeats itself. */
  private static final double BOARDS_DIFFER = 0.1;

  private static final double CLEARLY_WIDER = 1.25;

  /** How far two intervals of the even-chance dose agree. */
  public enum Agreement {
    /** Each middle lies in the other's interval. */
    AGREE,
    /** The intervals overlap. */
    ROUGHLY,
    /** They do not. */
    DISAGREE
  }

  /** Compares at the setting of the classical fit. */
  public static Comparison of(ClassicalFit classical, ClassicalRegression asked, ModelFit fit) {
    double lnIntensity = Math.log(classical.at().intensity());
    int passes = classical.at().passes();
    double chance = asked.chance(classical.event());
    DoseLimit risk = fit.posterior().doseLimit(chance);
    double bound = fit.lnPromisedDose(chance, asked.confidence(), lnIntensity, passes);
    Estimate even = estimate(fit.posterior().doseLimit(0.5), lnIntensity, passes);
    return new Comparison(
        even,
        estimate(risk, lnIntensity, passes),
        Math.exp(bound),
        classical.even().filter(DoseAnswer::rising).map(dose -> agreement(dose, even)),
        reasons(classical, fit, even));
  }

  private static Estimate estimate(DoseLimit limit, double lnIntensity, int passes) {
    return new Estimate(
        Math.exp(limit.lnDose(0.5, lnIntensity, passes)),
        Math.exp(limit.lnDose(0.05, lnIntensity, passes)),
        Math.exp(limit.lnDose(0.95, lnIntensity, passes)));
  }

  private static Agreement agreement(DoseAnswer dose, Estimate even) {
    boolean apart =
        dose.limits().low().orElse(0) > even.high()
            || dose.limits().high().orElse(Double.POSITIVE_INFINITY) < even.low();
    boolean within =
        dose.limits().hold(even.median())
            && dose.doseJoulesPerCm2() >= even.low()
            && dose.doseJoulesPerCm2() <= even.high();
    return apart ? Agreement.DISAGREE : within ? Agreement.AGREE : Agreement.ROUGHLY;
  }

  private static List<String> reasons(ClassicalFit classical, ModelFit fit, Estimate even) {
    List<String> reasons = new ArrayList<>();
    if (classical.separation().isPresent()) {
      reasons.add("outcomes are separated, so the penalty sets the slope there and the prior here");
    }
    classical
        .even()
        .map(dose -> width(dose.limits(), even, classical.boards().isPresent()))
        .filter(text -> !text.isEmpty())
        .ifPresent(reasons::add);
    double omega = fit.omega().median();
    reasons.add(
        classical.boards().isPresent()
            ? boards(classical.boards().get(), omega)
            : omega >= BOARDS_DIFFER
                ? "the classical fit treats all boards as one, while the posterior gives a new board its own shift (omega %s), which moves its careful dose"
                    .formatted(Columns.figure(omega))
                : "the classical fit treats all boards as one, which changes little here (omega %s)"
                    .formatted(Columns.figure(omega)));
    if (!fit.wayEffects().isEmpty()) {
      reasons.add(
          "the classical fit treats trials of every %s as one, while the posterior is for one way of working"
              .formatted(
                  fit.wayEffects().stream()
                      .map(effect -> effect.trait().word())
                      .distinct()
                      .collect(Collectors.joining(" and "))));
    }
    if (!classical.at().movedAlong().isEmpty()) {
      reasons.add(
          "in the classical dose %s changes along as in the trials, while the posterior keeps it fixed"
              .formatted(String.join(" and ", classical.at().movedAlong())));
    }
    if (!classical.notes().isEmpty()) {
      reasons.add(
          "for knobs that were left out or changed together the posterior depends on its prior");
    }
    pulled("intensity", "phi", classical.phi(), fit.phi()).ifPresent(reasons::add);
    pulled("passes", "psi", classical.psi(), fit.psi()).ifPresent(reasons::add);
    return List.copyOf(reasons);
  }

  private static String boards(BoardSpread spread, double omega) {
    return "the classical fit estimates how much boards differ from these %d boards alone (%s), while the posterior also has a prior on it (omega %s)"
        .formatted(
            spread.boards(),
            spread.omega().isPresent()
                ? "omega " + Columns.figure(spread.omega().getAsDouble())
                : "as log odds, " + Columns.figure(spread.logOdds()),
            Columns.figure(omega));
  }

  /** Where the trials alone would weigh a knob as the posterior hardly believes. */
  private static Optional<String> pulled(
      String knob, String name, OptionalDouble classical, Estimate posterior) {
    boolean apart =
        classical.isPresent()
            && (classical.getAsDouble() < posterior.low()
                || classical.getAsDouble() > posterior.high());
    return apart
        ? Optional.of(
            "the prior keeps the weight of %s near %s (%s), while these trials alone would give %s"
                .formatted(
                    knob,
                    Columns.figure(posterior.median()),
                    name,
                    Columns.figure(classical.getAsDouble())))
        : Optional.empty();
  }

  private static String width(Limits limits, Estimate even, boolean boards) {
    if (limits.low().isEmpty() || limits.high().isEmpty()) {
      return "without a prior these trials do not bound the even-chance dose at all";
    }
    double low = limits.low().getAsDouble();
    double high = limits.high().getAsDouble();
    double ratio = Math.log(high / low) / Math.log(even.high() / even.low());
    return ratio > CLEARLY_WIDER
        ? "without a prior the classical interval is %s times as wide, in logarithms"
            .formatted(Columns.figure(ratio))
        : ratio < 1 / CLEARLY_WIDER
            ? (boards ? "the" : "without board spread the")
                + " classical interval is narrower, %s of the posterior's width in logarithms"
                    .formatted(Columns.figure(ratio))
            : "";
  }
}
