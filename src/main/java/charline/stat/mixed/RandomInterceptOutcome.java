package charline.stat.mixed;

/** What became of a random-intercept fit: numbers, or the reason why there are none. */
public sealed interface RandomInterceptOutcome permits RandomInterceptFit, NoRandomInterceptFit {}
