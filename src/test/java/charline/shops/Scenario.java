package charline.shops;

/**
 * A kind of shop: what is true in it and how it burns its patches.
 *
 * @param code short name, also the key of its results
 * @param title in words, for the report
 * @param gap ln of the dose that chars 5 % over the dose that clears 90 %, after two passes on an
 *     average board; negative where no setting does both
 * @param boards how boards differ
 * @param widening factor on the width of both transitions
 * @param noise from patch to patch
 * @param weights what intensity and passes count for
 * @param misgraded share of readings with one of char and clearing judged wrongly
 * @param patches how many
 * @param boardCount on how many boards
 * @param everyPass read after each pass up to the first char or six; otherwise once, after one to
 *     three passes
 * @param doseError standard deviation of the error in ln dose that the whole job has and the trials
 *     had not
 */
public record Scenario(
    String code,
    String title,
    double gap,
    Boards boards,
    double widening,
    Noise noise,
    Weights weights,
    double misgraded,
    int patches,
    int boardCount,
    boolean everyPass,
    double doseError) {

  /**
   * How boards differ.
   *
   * @param omega true standard deviation for char, in ln dose
   * @param omegaOfClearing the same for clearing
   * @param heavyTailed shifts follow Student's t with three degrees of freedom, as spread as the
   *     normal would be
   * @param anew every stratum of a log has a spread of its own, between 0.05 and 0.5
   */
  public record Boards(double omega, double omegaOfClearing, boolean heavyTailed, boolean anew) {
    /** Normal, the same in every stratum and for both events. */
    static Boards of(double omega) {
      return new Boards(omega, omega, false, false);
    }
  }

  /** What intensity and passes count for, and how wide transitions are before widening. */
  public enum Weights {
    /** Near what the priors expect; sigma about 0.2. */
    USUAL,
    /** All of phi, psi, sigma and omega drawn from the priors themselves. */
    FROM_PRIOR,
    /** Hardly anything. */
    WEAK,
    /** More than dose itself. */
    STRONG
  }

  /** Eighteen patches on three boards, read after every pass, a window of e^1. */
  public static Scenario usual() {
    return new Scenario(
        "usual",
        "model true, 18 patches on 3 boards, boards 0.15, gap e^1",
        1,
        Boards.of(0.15),
        1,
        Noise.LOGISTIC,
        Weights.USUAL,
        0,
        18,
        3,
        true,
        0);
  }

  public Scenario named(String newCode, String newTitle) {
    return new Scenario(
        newCode,
        newTitle,
        gap,
        boards,
        widening,
        noise,
        weights,
        misgraded,
        patches,
        boardCount,
        everyPass,
        doseError);
  }

  public Scenario withGap(double value) {
    return new Scenario(
        code,
        title,
        value,
        boards,
        widening,
        noise,
        weights,
        misgraded,
        patches,
        boardCount,
        everyPass,
        doseError);
  }

  public Scenario withBoardSpread(double value) {
    return with(Boards.of(value));
  }

  Scenario with(Boards other) {
    return new Scenario(
        code,
        title,
        gap,
        other,
        widening,
        noise,
        weights,
        misgraded,
        patches,
        boardCount,
        everyPass,
        doseError);
  }

  Scenario widened(double factor) {
    return new Scenario(
        code,
        title,
        gap,
        boards,
        factor,
        noise,
        weights,
        misgraded,
        patches,
        boardCount,
        everyPass,
        doseError);
  }

  public Scenario with(Noise other) {
    return new Scenario(
        code,
        title,
        gap,
        boards,
        widening,
        other,
        weights,
        misgraded,
        patches,
        boardCount,
        everyPass,
        doseError);
  }

  public Scenario with(Weights other) {
    return new Scenario(
        code,
        title,
        gap,
        boards,
        widening,
        noise,
        other,
        misgraded,
        patches,
        boardCount,
        everyPass,
        doseError);
  }

  Scenario misgrading(double share) {
    return new Scenario(
        code,
        title,
        gap,
        boards,
        widening,
        noise,
        weights,
        share,
        patches,
        boardCount,
        everyPass,
        doseError);
  }

  public Scenario burning(int count, int onBoards) {
    return new Scenario(
        code, title, gap, boards, widening, noise, weights, misgraded, count, onBoards, everyPass,
        doseError);
  }

  Scenario readOnce() {
    return new Scenario(
        code,
        title,
        gap,
        boards,
        widening,
        noise,
        weights,
        misgraded,
        patches,
        boardCount,
        false,
        doseError);
  }

  Scenario jobOffBy(double error) {
    return new Scenario(
        code,
        title,
        gap,
        boards,
        widening,
        noise,
        weights,
        misgraded,
        patches,
        boardCount,
        everyPass,
        error);
  }
}
