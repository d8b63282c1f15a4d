package charline.model;

import charline.exposure.Emission;
import charline.model.way.Trait;
import charline.model.way.WayDesign;
import charline.stat.distribution.Logistic;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.sampling.ImportanceSampler;
import charline.stat.sampling.MarkovChain;
import charline.stat.sampling.WeightedDraws;
import charline.trial.Patch;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.apache.commons.math3.linear.MatrixUtils;

/**
 * Fits the passes-to-event model: mode by Newton, a pilot sample around it, and importance sampling
 * with the proposal moved to the pilot's mean and covariance; moved once more if the weights
 * misbehave, Markov chains if they still do. The same trials and seed give the same digits.
 *
 * <p>These posteriors lean: the pilot brings the largest error of a 5 or 95 % quantile, over the
 * strata of the reference test, from a quarter of the posterior spread down to a thirtieth.
 *
 * @param seed fixes every digit
 * @param priors of both models, by kind of light
 * @param loans what is borrowed from other trials, by event
 * @param gist whether a quarter of the usual draws will do
 */
public record Fitter(long seed, PriorSet priors, Map<Event, BorrowedPrior> loans, boolean gist) {
  /** Steps from far away, where the posterior is not concave, are kept short. */
  private static final NewtonMaximizer TO_THE_MODE =
      NewtonMaximizer.withDefaults().withLongestStep(3);

  /** Heavy tails: a Student t with four degrees of freedom. */
  private static final int HALF_DEGREES = 2;

  private static final int PILOT_DRAWS = 4096;
  private static final int DRAWS = 8192;
  private static final long MULTIPLIER = 0x9E3779B97F4A7C15L;
  private static final double AGREED = 1.02;

  public Fitter {
    loans = Map.copyOf(loans);
  }

  /** A fitter that borrows nothing. */
  public Fitter(long seed, PriorSet priors) {
    this(seed, priors, Map.of(), false);
  }

  public static Fitter withDefaults() {
    return new Fitter(2026, PriorSet.USUAL);
  }

  /** The same with other priors. */
  public Fitter with(PriorSet others) {
    return new Fitter(seed, others, loans, gist);
  }

  /** The same with priors borrowed from other trials beside its own. */
  public Fitter borrowing(Map<Event, BorrowedPrior> borrowed) {
    return new Fitter(seed, priors, borrowed, gist);
  }

  /** The same with a quarter of the draws, where only the gist is asked. */
  public Fitter forGist() {
    return new Fitter(seed, priors, loans, true);
  }

  /** The prior that the model of one event of these trials begins with, as their coats have it. */
  public Prior prior(Trials trials, Event event) {
    return startingFrom(priors.of(event, trials.stratum().emission()), trials.ways(event));
  }

  /**
   * The prior that these coats begin with: where their thicknesses differ, its middle is moved with
   * the weight of thickness as that is found; where all are alike, with what is known beforehand.
   */
  private static Prior startingFrom(Prior prior, WayDesign ways) {
    return ways.has(Trait.THICKNESS) ? prior : prior.forCoats(ways.lnReferenceThickness());
  }

  private Prior given(Trials trials, Event event) {
    return priors.of(event, trials.stratum().emission());
  }

  /** The posterior of one event. */
  public ModelFit fit(Trials trials, Event event) {
    return fit(trials, event, patch -> true);
  }

  /** The posterior of one event from some of the patches, with F0 and the shifts of all. */
  ModelFit fit(Trials trials, Event event, Predicate<Patch> chosen) {
    return fit(trials, trials.censored(event, chosen), event, size(trials));
  }

  private SampleSize size(Trials trials) {
    SampleSize usual = SampleSize.of(trials);
    return gist ? usual.sketched() : usual;
  }

  /** The posterior of one event from what patches say of it, and so many draws. */
  ModelFit fit(Trials trials, List<CensoredPasses> seen, Event event, SampleSize size) {
    return seededFor(trials.stratum(), event)
        .fit(
            seen,
            trials.lnReferenceIntensity(),
            event,
            given(trials, event),
            trials.ways(event),
            size);
  }

  /**
   * The same with a seed of this stratum and event: the error that the draws of one seed have in
   * common then is not that of every answer.
   */
  private Fitter seededFor(Stratum stratum, Event event) {
    // String.hashCode is the same on every Java.
    long own = 31L * stratum.words().hashCode() + event.word().hashCode();
    return new Fitter(seed * MULTIPLIER + own, priors, loans, gist);
  }

  /**
   * The posterior of one event as if a patch had not been burned. The reference intensity stays
   * that of all patches, so that nothing but the patch differs. A quarter of the usual draws, as it
   * may be asked for patch after patch.
   *
   * @param leftOut index of the patch in {@code trials}
   */
  public ModelFit fitWithout(Trials trials, Event event, int leftOut) {
    List<CensoredPasses> others = new ArrayList<>(trials.censored(event));
    others.remove(leftOut);
    return fit(trials, others, event, forGist().size(trials));
  }

  /**
   * The prior of one event, before any trial.
   *
   * @param emission kind of light
   * @param referenceIntensity intensity that tau is to be quoted at, in J/cm² or W/cm²
   */
  public ModelFit beforeTrials(Event event, Emission emission, double referenceIntensity) {
    return fit(List.of(), Math.log(referenceIntensity), event, priors.of(event, emission));
  }

  public ModelFit fit(List<CensoredPasses> data, double lnReference, Event event, Prior prior) {
    return fit(data, lnReference, event, prior, WayDesign.ALIKE, new SampleSize(1));
  }

  private ModelFit fit(
      List<CensoredPasses> data,
      double lnReference,
      Event event,
      Prior prior,
      WayDesign ways,
      SampleSize size) {
    Prior own = startingFrom(prior, ways);
    Sampled alone = sample(data, lnReference, own, ways, size);
    Optional<BorrowedPrior> loan = Optional.ofNullable(loans.get(event));
    if (loan.isEmpty()) {
      return alone.fit(event, lnReference, ways, Optional.empty());
    }
    Prior lent = startingFrom(loan.get().prior().with(prior.omega()), ways);
    if (lent.phi().least() != prior.phi().least()) {
      throw new IllegalArgumentException(
          "A loan must cut the weight of intensity off as the prior does.");
    }
    Sampled borrowed = sample(data, lnReference, lent, ways, size);
    double weight = weight(alone, borrowed, loan.get().share());
    Sampled mixed = weight == 0 ? alone : alone.mixedWith(borrowed, weight);
    return mixed.fit(
        event,
        lnReference,
        ways,
        Optional.of(new BorrowedPrior.Used(loan.get().lenders(), weight)));
  }

  private Sampled sample(
      List<CensoredPasses> data, double lnReference, Prior prior, WayDesign ways, SampleSize size) {
    double thicker = prior.lnThicker(ways.lnReferenceThickness());
    return sample(
        new PassesToEvent(data, lnReference, prior, ways.factors(), thicker), prior, size);
  }

  /** Weight that the trials leave to a borrowed prior: prior odds times the Bayes factor. */
  private static double weight(Sampled own, Sampled borrowed, double share) {
    if (own.lnEvidence().isEmpty() || borrowed.lnEvidence().isEmpty()) {
      return 0; // without both integrals nothing says that these trials are like the others
    }
    double lnFactor = borrowed.lnEvidence().getAsDouble() - own.lnEvidence().getAsDouble();
    return Logistic.cdf(Math.log(share / (1 - share)) + lnFactor);
  }

  /**
   * A sampled posterior.
   *
   * @param prior what it was sampled under
   * @param lnEvidence logarithm of the trials' chance under that prior, up to a constant that no
   *     prior changes, unless that failed
   */
  private record Sampled(
      WeightedDraws draws, Prior prior, double kHat, String method, OptionalDouble lnEvidence) {
    ModelFit fit(
        Event event, double lnReference, WayDesign ways, Optional<BorrowedPrior.Used> borrowed) {
      return ModelFit.of(event, draws, prior, kHat, method, lnReference, ways, borrowed);
    }

    /** Both posteriors together, the other with this weight. */
    Sampled mixedWith(Sampled other, double weight) {
      return new Sampled(
          draws.mixedWith(other.draws, weight),
          prior,
          Math.max(kHat, other.kHat),
          method,
          OptionalDouble.empty());
    }
  }

  private Sampled sample(PassesToEvent target, Prior prior, SampleSize size) {
    Proposal around = proposal(target);
    ImportanceSampler.Sample pilot =
        new ImportanceSampler(size.draws(PILOT_DRAWS), HALF_DEGREES, 1.3, seed)
            .sample(target::value, around.centre(), around.covariance());
    ImportanceSampler sampler = new ImportanceSampler(size.draws(DRAWS), HALF_DEGREES, 1.15, seed);
    ImportanceSampler.Sample sample = sampler.resample(target::value, pilot);
    if (sample.kHat() > ModelFit.PARETO_K_LIMIT) {
      sample = sampler.resample(target::value, sample);
    }
    if (sample.kHat() <= ModelFit.PARETO_K_LIMIT) {
      return new Sampled(
          sample.draws(),
          prior,
          sample.kHat(),
          "importance sampling",
          OptionalDouble.of(sample.lnIntegral() - prior.lnNormaliser()));
    }
    MarkovChain.Sample chains =
        new MarkovChain(4, 2048, 8, seed)
            .sample(target::value, around.centre(), around.covariance());
    // Chains that agree replace the weights that failed; otherwise the failure is what is reported.
    return chains.splitRHat() <= AGREED
        ? new Sampled(
            chains.draws(),
            prior,
            0,
            "Markov chains, split R-hat below 1.02",
            OptionalDouble.empty())
        : new Sampled(
            sample.draws(),
            prior,
            sample.kHat(),
            "importance sampling, not to be trusted",
            OptionalDouble.empty());
  }

  private record Proposal(double[] centre, double[][] covariance) {}

  private static Proposal proposal(PassesToEvent target) {
    NewtonMaximizer.Outcome outcome = TO_THE_MODE.maximize(target, target.start());
    if (outcome instanceof NewtonMaximizer.Maximum maximum) {
      return new Proposal(maximum.point(), maximum.covariance());
    }
    // Without a mode the samplers start where the search stood, and k-hat tells how that went.
    double[] stood = ((NewtonMaximizer.NoMaximum) outcome).point();
    return new Proposal(stood, MatrixUtils.createRealIdentityMatrix(stood.length).getData());
  }
}
