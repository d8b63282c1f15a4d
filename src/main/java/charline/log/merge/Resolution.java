package charline.log.merge;

/** Which of two logs holds where both amended the same thing, and differently. */
public enum Resolution {
  /** Unresolved: the values here are kept, and every merge lists the conflict again. */
  UNDECIDED,
  /** This log; what the other says is kept in the history. */
  HERE,
  /** The other log; what this one said is kept in the history. */
  THERE
}
