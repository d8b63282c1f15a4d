package charline.trial;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * A named stack of coats.
 *
 * @param id permanent identity
 * @param name the person's name for it, unique in a log
 * @param family coating family for analysis
 * @param coats outermost first; may be empty where only the family is known
 */
public record Finish(UUID id, String name, String family, List<Coat> coats) {
  public Finish {
    coats = List.copyOf(coats);
  }

  /** Tone of the outermost coat, if known. */
  public Optional<Tone> tone() {
    return coats.isEmpty() ? Optional.empty() : coats.get(0).tone();
  }

  /** Thickness of all coats together in µm, if every one is known. */
  public OptionalDouble thicknessMicrometres() {
    if (coats.isEmpty() || coats.stream().anyMatch(c -> c.thicknessMicrometres().isEmpty())) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        coats.stream().mapToDouble(c -> c.thicknessMicrometres().getAsDouble()).sum());
  }
}
