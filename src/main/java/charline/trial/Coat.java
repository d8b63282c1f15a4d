package charline.trial;

import charline.quantity.Invariant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One coat of a finish.
 *
 * @param family coating family, a word of the log's vocabulary
 * @param tone how dark it is, if known
 * @param thicknessMicrometres dry film, above 0, if known
 */
public record Coat(String family, Optional<Tone> tone, OptionalDouble thicknessMicrometres) {
  public Coat {
    thicknessMicrometres.ifPresent(t -> Invariant.positive("Coat thickness", t, "um"));
  }
}
