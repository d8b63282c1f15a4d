package charline.wording;

import charline.answer.WindowAnswer;
import charline.trial.Caution;
import java.util.ArrayList;
import java.util.List;

/** Everything that a printed window has to warn of. */
public final class SheetCautions {
  private SheetCautions() {}

  /** Whether it applies at all, what it rests on, then hazards, most serious first. */
  public static List<Caution> of(WindowAnswer window) {
    List<Caution> all = new ArrayList<>();
    DriftText.notValid(window.applicability().validity()).ifPresent(all::add);
    all.addAll(reserved(window));
    return all;
  }

  /** All but that it must not be used any more. */
  public static List<Caution> reserved(WindowAnswer window) {
    List<Caution> all =
        new ArrayList<>(ApplicabilityText.of(window.applicability()).reservations());
    BasisText.caution(window.subject().question()).ifPresent(all::add);
    all.addAll(window.cautions());
    return all;
  }
}
