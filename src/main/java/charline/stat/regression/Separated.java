package charline.stat.regression;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The likelihood has no maximum: at least one coefficient runs to infinity.
 *
 * @param kind complete or quasi-complete
 * @param terms the coefficients that run off along the direction found, by name, with its sign
 * @param message one sentence: what was found and what to do
 */
public record Separated(Separation kind, List<String> terms, String message) implements FitOutcome {
  public Separated {
    terms = List.copyOf(terms);
    if (kind == Separation.NONE) {
      throw new IllegalArgumentException("Separated outcomes must be complete or quasi-complete.");
    }
  }

  static Separated of(Separation.Finding finding, BinomialSample sample) {
    List<String> names = sample.design().names();
    double[] direction = finding.direction();
    List<String> running =
        IntStream.range(0, direction.length)
            .filter(j -> direction[j] != 0)
            .mapToObj(j -> (direction[j] > 0 ? "+" : "-") + names.get(j))
            .toList();
    return new Separated(finding.kind(), running, sentence(finding.kind(), running, sample));
  }

  private static String sentence(Separation kind, List<String> running, BinomialSample sample) {
    int events = sample.totalEvents();
    String found =
        events == 0
            ? "no row has an event"
            : events == sample.totalTrials()
                ? "every trial has the event"
                : "the outcomes are separated "
                    + (kind == Separation.COMPLETE ? "completely" : "quasi-completely");
    return "Maximum likelihood needs outcomes that overlap, but %s (%s would run to infinity); fit with %s instead."
        .formatted(found, String.join(", ", running), Estimator.FIRTH_PENALISED.words());
  }
}
