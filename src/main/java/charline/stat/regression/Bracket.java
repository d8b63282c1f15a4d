package charline.stat.regression;

/**
 * Two rows that are two looks at one unit, whose event came in between.
 *
 * @param before the row without the event, counted from 0
 * @param after the row with it
 */
public record Bracket(int before, int after) {}
