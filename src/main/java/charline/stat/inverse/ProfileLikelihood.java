package charline.stat.inverse;

import charline.stat.linear.OrthogonalBasis;
import charline.stat.linear.Vectors;
import charline.stat.optimisation.HyperplaneRestriction;
import charline.stat.optimisation.NewtonMaximizer;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.regression.BinomialFit;
import charline.stat.regression.Estimator;
import charline.stat.regression.FirthLikelihood;
import charline.stat.regression.IntervalCensored;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;

/**
 * The profile of a fit: how much twice the maximised objective drops when the coefficients must lie
 * in a plane. The penalty is always that of the full design.
 *
 * <p>The penalised likelihood can have two maxima in the plane, and a search that only follows its
 * last answer may sit on the lower one. So, unless the first maximum found is proved to be the
 * highest, as it is in samples that say enough, a {@link #drop} starts from several points, {@link
 * #surestDrop} from forty more, and what those find is kept as a start for every later search.
 */
final class ProfileLikelihood {
  private static final int REMEMBERED = 3;
  private static final int SURE_STARTS = 40;
  private static final double[] MULTIPLES = {1, 0, 2, 4};
  private static final double[] REACHES = {0.5, 1.5, 4, 10, 25};

  private final TwiceDifferentiableFunction objective;
  private final OrthogonalBasis basis;
  private final Predicate<double[]> surelyHighest;
  private final double[] top;
  private final double maximum;
  private final NewtonMaximizer maximizer =
      NewtonMaximizer.withDefaults().withLongestStep(4).withSteps(500);
  private final Deque<double[]> recent = new ArrayDeque<>();
  private final List<double[]> branches = new ArrayList<>();

  ProfileLikelihood(BinomialFit fit) {
    if (fit.method().estimator() == Estimator.FIRTH_PENALISED) {
      FirthLikelihood rows = new FirthLikelihood(fit.sample());
      this.objective = IntervalCensored.of(rows, fit.sample());
      this.surelyHighest = rows::surelyHighest; // brackets are concave and take nothing from it
    } else {
      this.objective = fit.method().objective(fit.sample());
      this.surelyHighest = point -> true; // concave
    }
    this.basis = fit.sample().design().basis();
    this.top = basis.inward(fit.coefficients());
    this.maximum = objective.value(top);
  }

  /** The drop with coefficients b in the plane {@code normal·b = level}; 0 or more. */
  double drop(double[] normal, double level) {
    return 2 * (maximum - best(plane(normal, level), starts()));
  }

  /** As {@link #drop}, from many more starts. */
  double surestDrop(double[] normal, double level) {
    List<double[]> starts = starts();
    Random random = new Random(20_101); // any fixed seed: the same limits every time
    for (int i = 0; i < SURE_STARTS; i++) {
      double reach = REACHES[i % REACHES.length];
      double[] start = new double[top.length];
      for (int j = 0; j < start.length; j++) {
        start[j] = top[j] * (i % 2) + reach * random.nextGaussian();
      }
      starts.add(start);
    }
    double drop = 2 * (maximum - best(plane(normal, level), starts));
    if (!surelyHighest.test(recent.getFirst())) {
      branches.add(recent.getFirst());
    }
    return drop;
  }

  private HyperplaneRestriction plane(double[] normal, double level) {
    double[] inward = basis.inwardRow(normal);
    double length = Math.sqrt(Vectors.dot(inward, inward));
    for (int j = 0; j < inward.length; j++) {
      inward[j] /= length;
    }
    return HyperplaneRestriction.to(objective, inward, level / length);
  }

  private List<double[]> starts() {
    List<double[]> starts = new ArrayList<>(recent);
    starts.addAll(branches);
    for (double multiple : MULTIPLES) {
      double[] start = top.clone();
      for (int j = 0; j < start.length; j++) {
        start[j] *= multiple;
      }
      starts.add(start);
    }
    return starts;
  }

  /** The highest value reached in the plane; remembers where. */
  private double best(HyperplaneRestriction plane, List<double[]> starts) {
    double[] where = null;
    double highest = Double.NEGATIVE_INFINITY;
    for (double[] start : starts) {
      double[] point = plane.nearest(start);
      if (point.length > 0) {
        if (!(maximizer.maximize(plane, point) instanceof NewtonMaximizer.Maximum found)) {
          continue;
        }
        point = found.point();
      }
      double value = plane.value(point);
      if (where == null || value > highest) {
        where = plane.whole(point);
        highest = value;
      }
      if (surelyHighest.test(plane.whole(point))) {
        break;
      }
    }
    if (where == null) {
      throw new IllegalStateException(
          "A profile must have a maximum in every plane, but none was found; the covariates may be"
              + " too far from the rest.");
    }
    remember(where);
    return highest;
  }

  private void remember(double[] point) {
    recent.addFirst(point);
    if (recent.size() > REMEMBERED) {
      recent.removeLast();
    }
  }
}
