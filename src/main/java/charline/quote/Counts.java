package charline.quote;

/** How often something is done: where all goes well, to be expected, where it does not. */
public record Counts(int low, int usual, int high) {
  static Counts of(int known) {
    return new Counts(known, known, known);
  }

  Counts less(int fewer) {
    return new Counts(low - fewer, usual - fewer, high - fewer);
  }
}
