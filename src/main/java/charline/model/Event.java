package charline.model;

import charline.trial.Outcome;

/** The two things that happen to a patch as passes add up. */
public enum Event {
  /** The wood chars. */
  CHAR("char"),
  /** The finish is gone. */
  CLEARING("clearing");

  private final String word;

  Event(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /**
   * True if an outcome shows the event.
   *
   * @param acceptTint for clearing: count a tint in the grain as gone
   */
  public boolean shownBy(Outcome outcome, boolean acceptTint) {
    return this == CHAR ? outcome.charred() : outcome.cleared(acceptTint);
  }
}
