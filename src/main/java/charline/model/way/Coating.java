package charline.model.way;

import charline.quantity.Invariant;
import charline.trial.Finish;
import charline.trial.Tone;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the removal model looks at in a stack of coats.
 *
 * @param tone of the outermost coat, empty where unknown or not asked
 * @param thicknessMicrometres of all coats together, empty where unknown or not asked
 */
public record Coating(Optional<Tone> tone, OptionalDouble thicknessMicrometres) {
  /** Nothing known, or nothing asked. */
  public static final Coating UNSAID = new Coating(Optional.empty(), OptionalDouble.empty());

  public Coating {
    thicknessMicrometres.ifPresent(t -> Invariant.positive("Coat thickness", t, "um"));
  }

  /** Half up for pale, half down for dark. */
  public static double paleness(Optional<Tone> tone) {
    return tone.map(t -> t == Tone.PALE ? 0.5 : t == Tone.DARK ? -0.5 : 0).orElse(0.0);
  }

  /** The coat of a finish, as far as it is known. */
  public static Coating of(Finish finish) {
    return new Coating(finish.tone(), finish.thicknessMicrometres());
  }
}
