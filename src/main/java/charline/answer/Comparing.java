package charline.answer;

import charline.compare.Contest;
import charline.compare.Side;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.model.way.Way;
import charline.refusal.Refusal;
import charline.trial.Place;
import charline.window.Box;
import charline.window.Recommendation;
import charline.window.WindowFinder;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * Compares two ways of working on the same stock.
 *
 * @param choice which trials and which rig a question is about
 * @param recommender finds their windows
 */
record Comparing(TrialChoice choice, Recommender recommender) {
  /** Passes that ways are compared at where neither has a window. */
  private static final int USUAL_PASSES = 2;

  /**
   * One way of working to compare.
   *
   * @param question what is asked about it
   * @param passes at how many passes; empty for those of the window
   */
  record Asked(TrialQuestion question, OptionalInt passes) {}

  /** A way with its models. */
  private record Modelled(
      TrialCase subject, ModelFit charring, ModelFit clearing, Recommendation found) {}

  CompareAnswer compare(Asked one, Asked other) {
    TrialCase first = choice.choose(one.question());
    TrialCase second = choice.choose(other.question());
    if (first.trials().stratum().equals(second.trials().stratum())) {
      Place place = place(first, second);
      first = on(first, place);
      second = on(second, place);
    }
    Modelled a = modelled(first, Optional.empty());
    Modelled b = modelled(second, Optional.of(a));
    Optional<Box> window = a.found().chosen().or(() -> b.found().chosen());
    int usual = window.map(Box::passes).orElse(USUAL_PASSES);
    boolean together = a.found().stratum().equals(b.found().stratum());
    CompareAnswer.Contender left =
        contender(a, one.passes().orElse(usual), together ? window : a.found().chosen());
    CompareAnswer.Contender right =
        contender(b, other.passes().orElse(usual), together ? window : b.found().chosen());
    return new CompareAnswer(
        left,
        right,
        Contest.of(left.side(), right.side(), first.asked()),
        Precautions.of(
            choice.log(),
            Stream.of(a, b).flatMap(m -> m.subject().trials().patches().stream()).toList()));
  }

  /** Besides the face, patches of one other place may be counted. */
  private static Place place(TrialCase first, TrialCase second) {
    Place one = first.trials().way().placeOrFace();
    Place other = second.trials().way().placeOrFace();
    if (one != Place.FACE && other != Place.FACE && one != other) {
      throw Refusal.usage(
          "A place must be compared with the face or with itself, not %s with %s; compare each with the face."
              .formatted(one.word(), other.word()));
    }
    return one == Place.FACE ? other : one;
  }

  /** The same case with the patches on a place counted too. */
  private TrialCase on(TrialCase subject, Place place) {
    Way asked = subject.trials().asked();
    return subject.with(
        subject
            .trials()
            .with(choice.patches(subject.trials().stratum(), place))
            .asking(asked)
            .requireTried());
  }

  /** Both ways in one fit where they are of one stratum, so that only what differs counts. */
  private Modelled modelled(TrialCase subject, Optional<Modelled> other) {
    Trials trials = subject.trials();
    Fitter fitter = recommender.fitter(subject);
    Optional<Modelled> same =
        other.filter(o -> o.subject().trials().patches().equals(trials.patches()));
    ModelFit charring =
        same.map(o -> o.charring().inWay(trials.way()))
            .orElseGet(() -> fitter.fit(trials, Event.CHAR));
    ModelFit clearing =
        same.map(o -> o.clearing().inWay(trials.way()))
            .orElseGet(() -> fitter.fit(trials, Event.CLEARING));
    return new Modelled(
        subject,
        charring,
        clearing,
        new WindowFinder(fitter)
            .recommend(trials, subject.bench(), subject.asked(), charring, clearing));
  }

  /** A way as it is compared: at the intensity of a window, else at the mean of its trials. */
  private static CompareAnswer.Contender contender(Modelled of, int passes, Optional<Box> window) {
    double lnIntensity =
        window
            .map(box -> Math.log(box.start().intensity()))
            .orElseGet(() -> of.subject().trials().lnReferenceIntensity());
    return new CompareAnswer.Contender(
        of.subject(),
        of.found(),
        new Side(of.subject().trials(), of.charring(), of.clearing(), passes, lnIntensity));
  }
}
