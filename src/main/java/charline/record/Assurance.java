package charline.record;

import charline.trial.Plausibility.Doubt;
import java.util.List;

/** A person's word on values that look like slips. */
@FunctionalInterface
public interface Assurance {
  /**
   * Lets doubtful values pass if the person is sure of them; refuses otherwise, with all doubts at
   * once, as whoever is sure of one value has not seen the next doubt.
   */
  void require(List<Doubt> doubts);
}
