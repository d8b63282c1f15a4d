package charline.model.classical;

/**
 * Outcomes that a line divides.
 *
 * @param kind {@code complete} or {@code quasi-complete}
 * @param words what it means for these trials
 */
public record Separating(String kind, String words) {}
