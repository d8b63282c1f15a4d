package charline.answer;

import charline.model.Fitter;
import charline.model.PriorSet;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What both models take for likely before any patch.
 *
 * @param set the priors, by event and kind of light
 * @param file the file that they come from; empty for the usual ones
 */
public record Priors(PriorSet set, Optional<Path> file) {
  /** Those that count where a question brings none of its own. */
  public static final Priors USUAL = new Priors(PriorSet.USUAL, Optional.empty());

  /** True if nothing is learned beside them, so that anybody can compute an answer again. */
  boolean pinned() {
    return file.isPresent();
  }

  /** A fitter that starts from these. */
  Fitter fitter() {
    return Fitter.withDefaults().with(set);
  }

  /** The same with others in place of these. */
  Priors with(PriorSet others) {
    return new Priors(others, file);
  }
}
