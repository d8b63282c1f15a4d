package charline.stat.regression;

/** What became of a binomial fit: numbers, or the reason why there are none. */
public sealed interface FitOutcome permits BinomialFit, Separated, NotConverged {}
