package charline.refusal;

/** What a request lacks: a face turns it into its own words for where to say it. */
public enum Missing {
  /** The log has no rig. */
  ANY_RIG,
  /** Which of several rigs. */
  RIG,
  /** Which of several kinds of light. */
  LIGHT,
  /** Diameter of the spot. */
  SPOT,
  /** Repetition rate of the pulses. */
  REPETITION_RATE,
  /** Scan width of a head led by hand. */
  SCAN_WIDTH,
  /** Patches of the coat on the piece. */
  PIECE_PATCHES,
  /** Whether dates of a sheet begin with the day or with the month. */
  DATE_ORDER,
  /** What headings of a sheet mean, or what becomes of their columns. */
  HEADINGS
}
