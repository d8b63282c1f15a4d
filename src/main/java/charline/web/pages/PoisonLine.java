package charline.web.pages;

import charline.answer.Precautions;
import charline.wording.NoBeamText;
import charline.wording.PrecautionText;

/** Poison and fire in the line that a page shows before anything else. */
final class PoisonLine {
  /** Where a sample is recorded on the page. */
  static final String RECORD_SAMPLE = "\"Record a sample result\" on the Set up page";

  private PoisonLine() {}

  /** In short, with why the beam stays off if it does; blank where there is nothing to say. */
  static String of(Precautions known) {
    String inShort = PrecautionText.headline(known).orElse("");
    return known.barred()
        ? ("NO BEAM: " + NoBeamText.reason(known.bars()) + " " + inShort).strip()
        : inShort;
  }
}
