package charline.model.borrow;

import charline.model.Event;
import charline.trial.Stratum;
import java.util.List;
import java.util.Optional;

/**
 * Which trials count as near: those of one coating family and, for char, those on the same wood.
 *
 * @param family coating family; empty where all trials count alike
 * @param woods woods by name; none where no wood is meant
 */
public record Kin(Optional<String> family, List<String> woods) {
  /** All trials count alike. */
  public static final Kin EVERYBODY = new Kin(Optional.empty(), List.of());

  public Kin {
    woods = List.copyOf(woods);
  }

  /** Kin of a stratum. */
  static Kin of(Stratum stratum) {
    return new Kin(Optional.of(stratum.family()), stratum.woods());
  }

  /** Whether trials of a stratum are near, for one event. */
  public boolean includes(Stratum other, Event event) {
    return family.isEmpty()
        || family.get().equals(other.family())
        || (event == Event.CHAR && woods.contains(other.wood()));
  }
}
