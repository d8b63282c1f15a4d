package charline.answer;

import charline.model.Event;
import charline.model.Fitter;
import charline.model.Prior;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What both models take for likely before any patch.
 *
 * @param charring prior of the burn-onset model
 * @param clearing prior of the removal model
 * @param file the file that they come from; empty for the usual ones
 */
public record Priors(Prior charring, Prior clearing, Optional<Path> file) {
  /** Those that count where a question brings none of its own. */
  public static final Priors USUAL =
      new Priors(Prior.usual(Event.CHAR), Prior.usual(Event.CLEARING), Optional.empty());

  /** A fitter that starts from these. */
  Fitter fitter() {
    return Fitter.withDefaults().with(charring, clearing);
  }

  Priors withCharring(Prior other) {
    return new Priors(other, clearing, file);
  }

  Priors withClearing(Prior other) {
    return new Priors(charring, other, file);
  }
}
