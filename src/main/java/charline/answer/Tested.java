package charline.answer;

import charline.trial.Sample;
import java.util.List;
import java.util.Optional;

/**
 * Whether coats were tested for a substance.
 *
 * @param substance a word of the log, or a person's own
 * @param sample the result that counts; empty where nobody tested
 * @param finishes names of the finishes that this is true of
 */
public record Tested(String substance, Optional<Sample> sample, List<String> finishes) {
  public Tested {
    finishes = List.copyOf(finishes);
  }
}
