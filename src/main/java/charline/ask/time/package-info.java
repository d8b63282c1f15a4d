/**
 * Times in plain words, by a calendar: {@code last tuesday}, {@code between 23 and 25 november},
 * {@code this morning}.
 *
 * <p>This package must know nothing of patches and of the log.
 *
 * <h2>Decisions</h2>
 *
 * <p>Weeks are those of ISO 8601, Monday to Sunday. A day without a year is the latest that has
 * begun, as a log knows the past alone. Figures that some read as day and month and others as month
 * and day are refused. Rejected: guessing by the language of the system.
 */
package charline.ask.time;
