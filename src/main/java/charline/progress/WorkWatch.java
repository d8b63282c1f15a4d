package charline.progress;

/** Is told how far a piece of work is. Telling it costs next to nothing. */
@FunctionalInterface
public interface WorkWatch {
  /** Tells nobody. */
  WorkWatch NONE = (doing, done, all) -> {};

  /**
   * Says how far work is.
   *
   * @param doing what is done, as in "Reading lines of boathouse.csv"
   * @param done how many
   * @param all of how many, 0 where nobody knows
   */
  void at(String doing, long done, long all);
}
