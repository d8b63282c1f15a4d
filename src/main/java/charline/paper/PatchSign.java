package charline.paper;

import charline.trial.Mark;
import charline.trial.Outcome;

/** The sign of an outcome: a shape, letters and a word, so that colour is never needed. */
public enum PatchSign {
  /** White disc. */
  CLEAN(Mark.CLEAN, "Cl", "M-25 0a25 25 0 1 0 50 0a25 25 0 1 0-50 0z", 10),
  /** White tent. */
  TINT(Mark.TINT, "T", "M0-32L31 23H-31z", 18),
  /** Black block, white letters. */
  CHAR(Mark.CHAR, "Ch", "M-24-23H24V23H-24z", 10),
  /** Grey lozenge. */
  RESIDUE(Mark.RESIDUE, "R", "M0-32L30 0L0 32L-30 0z", 10);

  private final Mark mark;
  private final String letters;
  private final String path;
  private final int baseline;

  PatchSign(Mark mark, String letters, String path, int baseline) {
    this.mark = mark;
    this.letters = letters;
    this.path = path;
    this.baseline = baseline;
  }

  /** The sign of the gravest mark: char before residue before tint before clean. */
  public static PatchSign of(Outcome outcome) {
    if (outcome.charred()) {
      return CHAR;
    }
    if (outcome.marks().contains(Mark.RESIDUE)) {
      return RESIDUE;
    }
    return outcome.marks().contains(Mark.TINT) ? TINT : CLEAN;
  }

  /** The outcome's word. */
  public String word() {
    return mark.word();
  }

  /** Letters inside the shape. */
  public String letters() {
    return letters;
  }

  /** Outline around the origin, in drawing units. */
  public String path() {
    return path;
  }

  /** Baseline of the letters below the origin, in drawing units. */
  public int baseline() {
    return baseline;
  }

  /** Name of the style. */
  public String style() {
    return mark.word();
  }
}
