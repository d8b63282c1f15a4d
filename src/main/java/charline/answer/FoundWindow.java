package charline.answer;

import charline.cache.Basis;
import charline.window.Recommendation;
import java.util.Optional;

/**
 * A window, and what it was computed from.
 *
 * @param basis empty where that is not known, so that nothing which follows from it can be kept
 */
record FoundWindow(Recommendation found, Optional<Basis> basis) {
  /** A window whose models may be older than the log. */
  static FoundWindow of(Recommendation found) {
    return new FoundWindow(found, Optional.empty());
  }
}
