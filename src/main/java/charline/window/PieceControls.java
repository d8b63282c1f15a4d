package charline.window;

import charline.exposure.Exposure;
import charline.model.Event;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * Control patches of a window on the piece itself. One counts as clean where it came out clean by
 * the window's passes, about as hot as the start setting or hotter, and inside the window; it
 * speaks against the window where it charred by them, no hotter than the window is anywhere.
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

  /**
   * A start that moves by less as patches come still is the setting that was burned: half of the
   * quarter by which a ladder climbs.
   */
  private static final double HALF_RUNG = 1.12;

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
      if (!patch.board().id().equals(board) || !upTo(box.hotCorner(), patch.exposure())) {
        continue;
      }
      if (passesUnharmed(patch) >= box.passes()) {
        if (from(box, patch.exposure()) && clearedBy(patch, box.passes(), acceptTint)) {
          clean.add(patch.code());
        }
      } else if (patch.lastReading().outcome().charred()) {
        charred.add(patch.code());
      }
    }
    return new PieceControls(clean, charred);
  }

  private static boolean upTo(Forecast hot, Exposure exposure) {
    return exposure.doseJoulesPerCm2() < SAME * hot.doseJoulesPerCm2()
        && exposure.intensity() < SAME * hot.intensity();
  }

  /** True if a setting is about as hot as the start, or hotter. */
  private static boolean from(Box box, Exposure exposure) {
    return exposure.doseJoulesPerCm2() > box.start().doseJoulesPerCm2() / HALF_RUNG
        && exposure.intensity() > box.coldCorner().intensity() / SAME;
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
