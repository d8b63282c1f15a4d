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
 * @param called the coating as the person called it, where that is not the name of the family
 */
public record Coat(
    String family,
    Optional<Tone> tone,
    OptionalDouble thicknessMicrometres,
    Optional<String> called) {
  public Coat {
    called = PlainText.answer(called).filter(word -> !word.equalsIgnoreCase(family));
    thicknessMicrometres.ifPresent(t -> Invariant.positive("Coat thickness", t, "um"));
  }

  /** A coat that is called as its family is. */
  public Coat(String family, Optional<Tone> tone, OptionalDouble thicknessMicrometres) {
    this(family, tone, thicknessMicrometres, Optional.empty());
  }

  /** What a person calls it. */
  public String name() {
    return called.orElse(family);
  }

  /** The same without the person's own word, to compare with coats from where none was noted. */
  public Coat byFamily() {
    return new Coat(family, tone, thicknessMicrometres);
  }
}
