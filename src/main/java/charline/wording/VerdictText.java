package charline.wording;

import charline.drift.Validity;
import charline.quantity.Figures;
import charline.window.Recommendation;

/** A verdict in a word or two. */
public final class VerdictText {
  private VerdictText() {}

  /** "not yet", "window", or "window, provisional". */
  public static String of(Recommendation found) {
    return found.verdict().word()
        + found.standing().map(standing -> ", " + standing.word()).orElse("");
  }

  /**
   * A sentence that a person reads right who knows no statistics.
   *
   * @param valid whether the rig is still as it was
   */
  public static String plainly(Recommendation found, boolean valid) {
    return switch (found.verdict()) {
      case WINDOW ->
          found
              .chosen()
              .map(
                  box ->
                      (valid
                              ? "Safe for the wood at the start: may char %s, clears %s"
                              : "Out of date: as the rig was, may char %s, clears %s")
                          .formatted(
                              Figures.part(box.start().charRiskMean()),
                              Figures.part(box.start().clearChanceMean())))
              .orElse("There is a window");
      case NOT_YET -> "Not known yet: more patches will tell";
      case NONE -> "No setting clears this without charring";
      case UNRELIABLE -> "Trust no setting here: the patches do not fit one picture";
    };
  }

  /** The same in a list: a window that is not valid any more has no standing. */
  public static String of(Recommendation found, Validity validity) {
    return validity.drifted().isPresent() ? found.verdict().word() : of(found);
  }
}
