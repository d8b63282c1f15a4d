package charline.cli.command;

import charline.refusal.Missing;
import charline.refusal.Refusal;

/** The option that supplies what a request lacks. */
public final class Hints {
  /** How a sample is recorded here. */
  public static final String RECORD_SAMPLE = "`charline sample add`";

  private Hints() {}

  /** A refusal, with the option that mends it. */
  public static String sentence(Refusal refusal) {
    return refusal
        .missing()
        .map(what -> refusal.getMessage() + " " + hint(what))
        .orElseGet(refusal::getMessage);
  }

  private static String hint(Missing what) {
    return switch (what) {
      case ANY_RIG -> "Set one up with `charline rig add`.";
      case RIG -> "Name one with --rig.";
      case LIGHT -> "Name the rig that the answer is for with --rig.";
      case SPOT -> "Add --at spot=0.6mm.";
      case REPETITION_RATE -> "Add --at rep=40kHz.";
      case PIECE_PATCHES -> "Plan them with `charline next` and the same --piece.";
      case DATE_ORDER -> "Add --dates day-first or --dates month-first.";
      case HEADINGS ->
          "A heading of your own gets its meaning with --map \"HEADING=COLUMN\"; other columns come"
              + " along as notes with --extra note, or are left out with --extra skip.";
      case SCAN_WIDTH -> "Add --at width=60mm, or give the rig a scan width.";
    };
  }
}
