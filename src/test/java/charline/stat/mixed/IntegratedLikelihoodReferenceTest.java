package charline.stat.mixed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.stat.optimisation.TwiceDifferentiableFunction;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.IntervalCensored;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where groups differ so much that each is a step; source in the reference folder. */
class IntegratedLikelihoodReferenceTest {
  @Test
  void the_likelihood_is_exact_and_highest_along_the_coefficients_at_every_deviation() {
    ReferenceCase reference = ReferenceCase.load("random-intercept-integrated");
    Expected data = reference.data("removal");
    BinomialSample sample = RandomInterceptReferenceTest.joined(data);
    List<String> boards = data.texts("board");
    List<String> labels = boards.stream().distinct().toList();
    int[] group = boards.stream().mapToInt(labels::indexOf).toArray();
    TwiceDifferentiableFunction likelihood =
        IntervalCensored.of(new IntegratedLikelihood(sample, group, labels.size(), 30), sample, 1);

    for (Expected point : reference.fit("removal").at("expected").each("points")) {
      double[] inward = sample.design().basis().inward(point.numbers("coef"));
      double[] at = Arrays.copyOf(inward, inward.length + 1);
      at[inward.length] = point.number("random_intercept_sd");

      point.check("loglik", likelihood.value(at), reference.tolerance("loglik"));
      double[] slopes = likelihood.local(at).gradient();
      assertThat(Arrays.copyOf(slopes, inward.length))
          .as("slopes at %s", at[inward.length])
          .containsExactly(new double[inward.length], within(1e-5));
      assertThat(slopes[inward.length]).as("slope along the deviation").isPositive();
      point.nothingIsLeft();
    }
  }
}
