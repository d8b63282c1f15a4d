package charline.answer;

import charline.quote.Quote;
import java.util.Optional;

/**
 * The hours of a job.
 *
 * @param window what they rest on
 * @param quote the hours; empty where there is no window
 */
public record QuoteAnswer(WindowAnswer window, Optional<Quote> quote) {}
