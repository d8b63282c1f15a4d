package charline.shops;

/**
 * A kind of shop: what is true in it and how it burns its patches.
 *
 * @param code short name, also the key of its results
 * @param title in words, for the report
 * @param gap ln of the dose that chars 5 % over the dose that clears 90 %, after two passes on an
 *     average board; negative where no setting does both
 * @param omega true standard deviation of boards, in ln dose
 * @param widening factor on the width of both transitions
 * @param noise from patch to patch
 * @param weights what intensity and passes count for
 * @param misgraded share of readings with one of char and clearing judged wrongly
 * @param patches how many
 * @param boards on how many boards
 * @param everyPass read after each pass up to the first char or six; otherwise once, after one to
 *     three passes
 */
public record Scenario(
    String code,
    String title,
    double gap,
    double omega,
    double widening,
    Noise noise,
    Weights weights,
    double misgraded,
    int patches,
    int boards,
    boolean everyPass) {

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
        0.15,
        1,
        Noise.LOGISTIC,
        Weights.USUAL,
        0,
        18,
        3,
        true);
  }

  public Scenario named(String newCode, String newTitle) {
    return new Scenario(
        newCode, newTitle, gap, omega, widening, noise, weights, misgraded, patches, boards,
        everyPass);
  }

  public Scenario withGap(double value) {
    return new Scenario(
        code, title, value, omega, widening, noise, weights, misgraded, patches, boards, everyPass);
  }

  public Scenario withBoardSpread(double value) {
    return new Scenario(
        code, title, gap, value, widening, noise, weights, misgraded, patches, boards, everyPass);
  }

  Scenario widened(double factor) {
    return new Scenario(
        code, title, gap, omega, factor, noise, weights, misgraded, patches, boards, everyPass);
  }

  public Scenario with(Noise other) {
    return new Scenario(
        code, title, gap, omega, widening, other, weights, misgraded, patches, boards, everyPass);
  }

  public Scenario with(Weights other) {
    return new Scenario(
        code, title, gap, omega, widening, noise, other, misgraded, patches, boards, everyPass);
  }

  Scenario misgrading(double share) {
    return new Scenario(
        code, title, gap, omega, widening, noise, weights, share, patches, boards, everyPass);
  }

  public Scenario burning(int count, int onBoards) {
    return new Scenario(
        code, title, gap, omega, widening, noise, weights, misgraded, count, onBoards, everyPass);
  }

  Scenario readOnce() {
    return new Scenario(
        code, title, gap, omega, widening, noise, weights, misgraded, patches, boards, false);
  }
}
