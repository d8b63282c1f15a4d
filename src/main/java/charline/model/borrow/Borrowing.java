package charline.model.borrow;

import charline.exposure.Emission;
import charline.model.BorrowedPrior;
import charline.model.Contradictions;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.Lender;
import charline.model.ModelFit;
import charline.model.Posterior;
import charline.model.Prior;
import charline.model.Trials;
import charline.model.borrow.Prediction.Backing;
import charline.model.way.Coating;
import charline.model.way.HeavyTailedNormal;
import charline.model.way.Trait;
import charline.model.way.Way;
import charline.stat.metaanalysis.RandomEffects;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Lets strata with few patches borrow from the log's others. Each other stratum is fitted by
 * itself; τ, φ, ψ and ln σ of all of them, with their uncertainties and the usual prior taken out
 * again, go through a random-effects model whose prediction for one more stratum is the prior lent.
 * The usual prior is the prior of the mean, and half its spread the scale of differences between
 * strata, so that one other stratum changes little and several that agree change much. The spread
 * between boards is not lent: it is known too badly everywhere.
 *
 * <p>Trials with other light never lend. Strata of the same coating family count in full, and for
 * char, which is the wood's doing, those on the same wood; the rest are taken to differ twice as
 * much.
 */
public final class Borrowing {
  /**
   * Weight of what is borrowed before the trials speak. With a half, simulated strata that were
   * unlike the others broke clearly more promises to clear than without borrowing; with a fifth few
   * more, for half of the gain.
   */
  static final double SHARE = 0.2;

  private static final double FAR = 2;
  private static final int FEWEST_SEEN = 3;

  /** A lender that narrows the usual prior of a parameter by less than this knows nothing of it. */
  private static final double LEAST_NEWS = 0.1;

  /** Variance of Student's t with four degrees of freedom. */
  private static final double TAILED_VARIANCE = 2;

  private final Fitter fitter;
  private final List<Trials> log;
  private final double share;
  private final Map<Key, Optional<ModelFit>> fits = new ConcurrentHashMap<>();

  private record Key(Stratum stratum, Event event, boolean acceptTint, Optional<Tone> tone) {}

  /** Mean and variance of one parameter in one lender, the usual prior taken out. */
  private record Word(double estimate, double standardError, double distance) {}

  /**
   * @param fitter fits the other strata, with its priors
   * @param log trials of every stratum of the log
   */
  public Borrowing(Fitter fitter, List<Trials> log) {
    this(fitter, log, SHARE);
  }

  Borrowing(Fitter fitter, List<Trials> log, double share) {
    this.fitter = fitter;
    this.log = List.copyOf(log);
    this.share = share;
  }

  /** What the others have to lend for these trials; nothing for an event that none knows of. */
  public Map<Event, BorrowedPrior> loansFor(Trials wanted) {
    Map<Event, BorrowedPrior> loans = new EnumMap<>(Event.class);
    for (Event event : Event.values()) {
      loan(wanted, event).ifPresent(loan -> loans.put(event, loan));
    }
    return loans;
  }

  /** What the others lend for one event; empty where none of them has seen enough. */
  Optional<BorrowedPrior> loan(Trials wanted, Event event) {
    Map<Trials, ModelFit> lending = new LinkedHashMap<>();
    for (Trials other : log) {
      if (mayLend(other.stratum(), wanted.stratum())) {
        fit(other, wanted, event).ifPresent(fit -> lending.put(other, fit));
      }
    }
    if (lending.isEmpty()) {
      return Optional.empty();
    }
    Prior usual = usual(wanted, event);
    double lnIntensity = wanted.lnReferenceIntensity();
    List<List<Word>> words = List.of(list(), list(), list(), list());
    lending.forEach(
        (other, fit) -> {
          double distance = near(other.stratum(), wanted.stratum(), event) ? 1 : FAR;
          Posterior.Moments[] moments = fit.posterior().moments(lnIntensity);
          moments[0] = moments[0].plus(coatStep(fit.coat(), wanted.coat(), event));
          for (int k = 0; k < moments.length; k++) {
            said(moments[k], normal(usual, k), distance).ifPresent(words.get(k)::add);
          }
        });
    Prior lent =
        new Prior(
            lent(words.get(0), usual.tau()),
            new Prior.Weight(lent(words.get(1), usual.phi().normal()), usual.phi().least()),
            new Prior.Weight(lent(words.get(2), usual.psi().normal()), usual.psi().least()),
            lent(words.get(3), usual.lnSigma()),
            usual.omega());
    return Optional.of(new BorrowedPrior(lent, share, lenders(lending.keySet(), wanted, event)));
  }

  /** The usual prior for the coat that is wanted. */
  private Prior usual(Trials wanted, Event event) {
    OptionalDouble um = wanted.coat().thicknessMicrometres();
    return fitter
        .priors()
        .of(event, wanted.stratum().emission())
        .forCoats(
            um.isPresent()
                ? OptionalDouble.of(Math.log(um.getAsDouble()))
                : OptionalDouble.empty());
  }

  private static List<Word> list() {
    return new ArrayList<>();
  }

  private static Prior.Normal normal(Prior prior, int k) {
    return List.of(prior.tau(), prior.phi().normal(), prior.psi().normal(), prior.lnSigma()).get(k);
  }

  /**
   * True if trials of one stratum may lend to another: under the same light, and not part of it.
   */
  public static boolean mayLend(Stratum other, Stratum wanted) {
    return other.sameLight(wanted) && !within(other, wanted);
  }

  /** True if trials of one stratum are among those of another. */
  static boolean within(Stratum other, Stratum wanted) {
    return other.sameLight(wanted)
        && other.family().equals(wanted.family())
        && wanted.covers(other.wood());
  }

  private static boolean near(Stratum other, Stratum wanted, Event event) {
    return Kin.of(wanted).includes(other, event);
  }

  /**
   * What all trials say of one more stratum under their light. Unlike a loan it stands alone, with
   * no usual prior beside it: where strata contradict each other it is as wide as they make it.
   *
   * @param emission kind of light; all trials must have one light
   * @param kin trials that count in full; the rest are taken to differ twice as much
   */
  public Prediction prediction(Event event, Emission emission, Kin kin) {
    Prior usual = fitter.priors().of(event, emission);
    Coating coat = new Coating(Optional.empty(), usual.atMicrometres());
    List<List<Word>> words = List.of(list(), list(), list(), list());
    Backing[] backing = new Backing[words.size()];
    Arrays.fill(backing, Backing.NONE);
    for (Trials other : log) {
      Optional<ModelFit> fit = fitOnce(other, Optional.empty(), event);
      if (fit.isPresent()) {
        double distance = kin.includes(other.stratum(), event) ? 1 : FAR;
        // Priors are about the middle intensity of whatever trials they are used for.
        Posterior.Moments[] moments = fit.get().posterior().moments(other.lnReferenceIntensity());
        moments[0] = moments[0].plus(coatStep(fit.get().coat(), coat, event));
        for (int k = 0; k < moments.length; k++) {
          Optional<Word> word = said(moments[k], normal(usual, k), distance);
          if (word.isPresent()) {
            words.get(k).add(word.get());
            backing[k] = backing[k].plus(other.patches().size());
          }
        }
      }
    }
    Prior predicted =
        new Prior(
            predicted(words.get(0), usual.tau()),
            new Prior.Weight(predicted(words.get(1), usual.phi().normal()), usual.phi().least()),
            new Prior.Weight(predicted(words.get(2), usual.psi().normal()), usual.psi().least()),
            predicted(words.get(3), usual.lnSigma()),
            usual.omega(),
            usual.atMicrometres());
    return new Prediction(predicted, backing[0], backing[1], backing[2], backing[3]);
  }

  private Optional<ModelFit> fit(Trials other, Trials wanted, Event event) {
    Optional<Tone> tone = wanted.coat().tone().filter(other.tones()::containsKey);
    return fitOnce(other.acceptingTint(wanted.acceptTint()), tone, event);
  }

  private Optional<ModelFit> fitOnce(Trials other, Optional<Tone> tone, Event event) {
    Trials counted =
        new Trials(
            other.stratum(),
            other.patches(),
            other.acceptTint(),
            Way.UNSAID.with(new Coating(tone, OptionalDouble.empty())));
    return fits.computeIfAbsent(
        new Key(other.stratum(), event, other.acceptTint(), tone), key -> fit(counted, event));
  }

  private Optional<ModelFit> fit(Trials other, Event event) {
    long seen = other.patches().stream().filter(p -> other.shows(p, event)).count();
    if (seen < FEWEST_SEEN || Contradictions.in(other, event).decisive()) {
      return Optional.empty();
    }
    return Optional.of(fitter.fit(other, event)).filter(ModelFit::reliable);
  }

  /** From the dose of one coat to that of another, as the priors of their weights have it. */
  private static Posterior.Moments coatStep(Coating from, Coating to, Event event) {
    Posterior.Moments step = new Posterior.Moments(0, 0);
    if (event == Event.CHAR) {
      return step;
    }
    if (from.tone().isPresent() && to.tone().isPresent()) {
      double lighter = Coating.paleness(to.tone()) - Coating.paleness(from.tone());
      step = step.plus(scaled(Trait.TONE.prior(), lighter));
    }
    if (from.thicknessMicrometres().isPresent() && to.thicknessMicrometres().isPresent()) {
      double thicker =
          Math.log(
              to.thicknessMicrometres().getAsDouble() / from.thicknessMicrometres().getAsDouble());
      step = step.plus(scaled(Trait.THICKNESS.prior(), thicker));
    }
    return step;
  }

  private static Posterior.Moments scaled(HeavyTailedNormal weight, double by) {
    double sd = weight.scale() * by;
    return new Posterior.Moments(weight.centre() * by, TAILED_VARIANCE * sd * sd);
  }

  /** Takes the usual prior out of a posterior: what the lender's own trials say. */
  private static Optional<Word> said(
      Posterior.Moments posterior, Prior.Normal usual, double distance) {
    double before = 1 / (usual.sd() * usual.sd());
    double news = 1 / posterior.variance() - before;
    if (news < LEAST_NEWS * before) {
      return Optional.empty();
    }
    double estimate = (posterior.mean() / posterior.variance() - usual.mean() * before) / news;
    return Optional.of(new Word(estimate, Math.sqrt(1 / news), distance));
  }

  private static Prior.Normal lent(List<Word> words, Prior.Normal usual) {
    if (words.isEmpty()) {
      return usual;
    }
    RandomEffects.Result found = among(words, usual);
    return new Prior.Normal(found.next(), Math.min(found.nextSd(), usual.sd()));
  }

  /** As wide as the prediction, whose tails are longer than those of a normal, anywhere is. */
  private static Prior.Normal predicted(List<Word> words, Prior.Normal usual) {
    if (words.isEmpty()) {
      return usual;
    }
    RandomEffects.Result found = among(words, usual);
    return new Prior.Normal(found.next(), found.coveringSd());
  }

  private static RandomEffects.Result among(List<Word> words, Prior.Normal usual) {
    return RandomEffects.halfNormal(usual.mean(), usual.sd(), usual.sd() / 2)
        .fit(
            words.stream().mapToDouble(Word::estimate).toArray(),
            words.stream().mapToDouble(Word::standardError).toArray(),
            words.stream().mapToDouble(Word::distance).toArray());
  }

  private static List<Lender> lenders(java.util.Set<Trials> lending, Trials wanted, Event event) {
    return lending.stream()
        .map(
            t ->
                new Lender(
                    t.stratum(), t.patches().size(), near(t.stratum(), wanted.stratum(), event)))
        .sorted(
            Comparator.comparing(Lender::near)
                .thenComparing(Lender::patches)
                .reversed()
                .thenComparing(lender -> lender.stratum().words()))
        .toList();
  }
}
