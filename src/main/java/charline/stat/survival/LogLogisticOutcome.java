package charline.stat.survival;

/** What became of a fit of times: numbers, or the reason why there are none. */
public sealed interface LogLogisticOutcome permits LogLogisticFit, NoLogLogisticFit {}
