package charline.window;

import charline.quantity.Invariant;

/**
 * Strokes laid side by side over the work. Where two of them overlap is a seam, which gets its
 * passes twice, without a rest.
 *
 * @param overlap share of a stroke's width that the next one covers again, 0 to 0.5; beyond that
 *     three strokes would meet
 */
public record Strokes(double overlap) {
  /** One stroke alone, as most patches are. */
  public static final Strokes SINGLE = new Strokes(0);

  /** A tenth of the width (common practice, no published source). */
  public static final Strokes USUAL = new Strokes(0.1);

  public Strokes {
    Invariant.within("Overlap of strokes", 100 * overlap, 0, 50, "%");
  }

  /**
   * Share of a wide area that is seam: each stroke brings one seam of {@code overlap} widths and
   * moves the work on by 1 - {@code overlap} widths.
   */
  public double seamShare() {
    return overlap / (1 - overlap);
  }

  /** Most passes that any place gets. */
  public int mostPasses(int passes) {
    return overlap == 0 ? passes : 2 * passes;
  }
}
