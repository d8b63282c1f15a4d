package charline.log.merge;

/** Which of two logs holds where both amended the same thing, and differently. */
public enum Resolution {
  /** Nobody has said yet: it stays as it is here, and is named again at every merge. */
  UNDECIDED,
  /** This log; what the other says is kept in the history. */
  HERE,
  /** The other log; what this one said is kept in the history. */
  THERE
}
