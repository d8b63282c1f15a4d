package charline.shops;

import java.util.function.Consumer;

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

  /** The same, changed in place before anybody sees it. */
  private Scenario but(Consumer<Draft> change) {
    Draft draft = new Draft(this);
    change.accept(draft);
    return draft.done();
  }

  private static final class Draft {
    private String code;
    private String title;
    private double gap;
    private Boards boards;
    private double widening;
    private Noise noise;
    private Weights weights;
    private double misgraded;
    private int patches;
    private int boardCount;
    private boolean everyPass;
    private double doseError;

    Draft(Scenario from) {
      code = from.code;
      title = from.title;
      gap = from.gap;
      boards = from.boards;
      widening = from.widening;
      noise = from.noise;
      weights = from.weights;
      misgraded = from.misgraded;
      patches = from.patches;
      boardCount = from.boardCount;
      everyPass = from.everyPass;
      doseError = from.doseError;
    }

    Scenario done() {
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
          doseError);
    }
  }

  public Scenario named(String newCode, String newTitle) {
    return but(
        draft -> {
          draft.code = newCode;
          draft.title = newTitle;
        });
  }

  public Scenario withGap(double value) {
    return but(draft -> draft.gap = value);
  }

  public Scenario withBoardSpread(double value) {
    return with(Boards.of(value));
  }

  Scenario with(Boards other) {
    return but(draft -> draft.boards = other);
  }

  Scenario widened(double factor) {
    return but(draft -> draft.widening = factor);
  }

  public Scenario with(Noise other) {
    return but(draft -> draft.noise = other);
  }

  public Scenario with(Weights other) {
    return but(draft -> draft.weights = other);
  }

  Scenario misgrading(double share) {
    return but(draft -> draft.misgraded = share);
  }

  public Scenario burning(int count, int onBoards) {
    return but(
        draft -> {
          draft.patches = count;
          draft.boardCount = onBoards;
        });
  }

  Scenario readOnce() {
    return but(draft -> draft.everyPass = false);
  }

  Scenario jobOffBy(double error) {
    return but(draft -> draft.doseError = error);
  }
}
