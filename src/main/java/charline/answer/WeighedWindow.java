package charline.answer;

/**
 * A window with how much it owes to the priors.
 *
 * @param window the answer
 * @param priors the same question with all their spreads doubled
 */
public record WeighedWindow(WindowAnswer window, PriorSensitivity priors) {}
