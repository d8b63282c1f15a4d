package charline.window;

import charline.exposure.Exposure;
import charline.model.Event;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * Control patches of a window on the piece itself. A patch is one where it was burned inside the
 * window and was read after its passes, or charred before them. It counts as clean where it came
 * out clean at the start setting or hotter, and speaks against the window where it charred.
 *
 * @param clean codes of those that came out clean
 * @param charred codes of those that charred
 */
public record PieceControls(List<String> clean, List<String> charred) {
  /** Clean ones that confirm a window (common practice, no published source). */
  public static final int NEEDED = 3;

  /** Before any. */
  public static final PieceControls NONE = new PieceControls(List.of(), List.of());

  /** A hand cannot tell doses apart that differ by a smaller factor. */
  private static final double SAME = 1.05;

  public PieceControls {
    clean = List.copyOf(clean);
    charred = List.copyOf(charred);
  }

  /**
   * Those among some patches.
   *
   * @param board the piece
   * @param acceptTint count a tint in the grain as cleared
   */
  static PieceControls of(Box box, List<Patch> patches, UUID board, boolean acceptTint) {
    List<String> clean = new ArrayList<>();
    List<String> charred = new ArrayList<>();
    for (Patch patch : patches) {
      if (!patch.board().id().equals(board) || !inside(box, patch.exposure())) {
        continue;
      }
      int unharmed = passesUnharmed(patch);
      if (unharmed >= box.passes()) {
        if (hotEnough(box, patch.exposure()) && clearedBy(patch, box.passes(), acceptTint)) {
          clean.add(patch.code());
        }
      } else if (patch.lastReading().outcome().charred()) {
        charred.add(patch.code());
      }
    }
    return new PieceControls(clean, charred);
  }

  private static boolean inside(Box box, Exposure exposure) {
    Forecast cold = box.coldCorner();
    Forecast hot = box.hotCorner();
    return between(exposure.doseJoulesPerCm2(), cold.doseJoulesPerCm2(), hot.doseJoulesPerCm2())
        && between(exposure.intensity(), cold.intensity(), hot.intensity());
  }

  private static boolean between(double value, double low, double high) {
    return value > low / SAME && value < high * SAME;
  }

  private static boolean hotEnough(Box box, Exposure exposure) {
    return exposure.doseJoulesPerCm2() > box.start().doseJoulesPerCm2() / SAME;
  }

  /** Passes of the last reading before the first char; 0 where there is none. */
  private static int passesUnharmed(Patch patch) {
    return patch.readings().stream()
        .takeWhile(reading -> !reading.outcome().charred())
        .mapToInt(Reading::passes)
        .max()
        .orElse(0);
  }

  private static boolean clearedBy(Patch patch, int passes, boolean acceptTint) {
    return patch.readings().stream()
        .anyMatch(
            reading ->
                reading.passes() <= passes
                    && Event.CLEARING.shownBy(reading.outcome(), acceptTint));
  }

  /** Clean ones that are still wanting. */
  public int wanting() {
    return Math.max(0, NEEDED - clean.size());
  }
}
