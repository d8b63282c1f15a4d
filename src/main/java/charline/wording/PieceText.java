package charline.wording;

import static charline.quantity.Figures.three;

import charline.answer.PieceAnswer;
import charline.model.Estimate;
import charline.model.Event;
import charline.model.PieceFit;
import charline.model.PieceFits;
import charline.quantity.Figures;
import charline.trial.Board;
import charline.window.Box;
import charline.window.PieceControls;
import charline.window.PieceEvidence;
import charline.window.Recommendation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What the patches of one piece say and changed. */
public final class PieceText {
  private PieceText() {}

  /** "door", or "a new board" where the answer is for none in particular. */
  public static String board(Recommendation found) {
    return found.piece().map(PieceEvidence::name).orElse("a new board");
  }

  /** The same of the board that a question names. */
  static String board(Optional<Board> piece) {
    return piece.map(Board::name).orElse("a new board");
  }

  /** All that a window for a piece has to say of it, a sentence or two each, in order. */
  public static List<String> of(PieceAnswer answer) {
    List<String> all = new ArrayList<>();
    all.add(forPiece(answer.fits()));
    all.add(shifts(answer.fits()));
    unlike(answer).ifPresent(all::add);
    all.add(general(answer.general()));
    return all;
  }

  /** Which piece it is for, how many patches of its own it rests on, and how they count. */
  public static String forPiece(PieceFits fits) {
    return "For board %s alone: it rests on %s of its own. %s"
        .formatted(
            fits.board().name(),
            Figures.patches(fits.patches()),
            weighing(fits.paretoK(), fits.refitted()));
  }

  private static String weighing(double paretoK, boolean refitted) {
    return refitted
        ? "The models of the other boards could not be weighed by them (k-hat %s, above %s), so the models were fitted again to all patches."
            .formatted(Figures.two(paretoK), three(PieceFit.LARGEST_K_HAT))
        : "They weigh the models of the other boards (k-hat %s, good up to %s)."
            .formatted(Figures.two(paretoK), three(PieceFit.LARGEST_K_HAT));
  }

  /** What the patches of the piece changed in both models. */
  public static String shifts(PieceFits fits) {
    return "%s takes %s the dose of your average board before it chars, and %s before it clears."
        .formatted(
            fits.board().name(), times(fits.charring().shift()), times(fits.clearing().shift()));
  }

  /** The same of one model, with how many patches it rests on. */
  static String of(Board piece, PieceFit fit) {
    return "For board %s alone: it rests on %s of its own. %s %s takes %s the dose of your average board before it %s (90 %% interval)."
        .formatted(
            piece.name(),
            Figures.patches(fit.patches()),
            weighing(fit.kHat(), fit.refitted()),
            piece.name(),
            times(fit.shift()),
            fit.piece().event() == Event.CHAR ? "chars" : "clears");
  }

  /** "1.2 times (1.05 to 1.4)". */
  private static String times(Estimate lnShift) {
    Estimate factor = factor(lnShift);
    return "%s times (%s)"
        .formatted(three(factor.median()), Figures.bounds(factor.low(), factor.high()));
  }

  /** As factor of dose, what the model has as shift in ln dose. */
  public static Estimate factor(Estimate lnShift) {
    return new Estimate(
        Math.exp(lnShift.median()), Math.exp(lnShift.low()), Math.exp(lnShift.high()));
  }

  /** That the piece is unlike the other boards, where it is. */
  public static Optional<String> unlike(PieceAnswer answer) {
    List<String> ways =
        Stream.of(Event.CHAR, Event.CLEARING)
            .filter(answer.unlike()::containsKey)
            .map(
                event ->
                    "%s at a %s dose"
                        .formatted(
                            event == Event.CHAR ? "chars" : "clears",
                            answer.unlike().get(event).factor().median() < 1 ? "lower" : "higher"))
            .toList();
    return ways.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "This piece is unlike your boards: it %s than any of them should. Check whether it has the same wood and coats, and burn more patches on it before you trust an answer for it."
                .formatted(String.join(" and ", ways)));
  }

  /** What the other boards say of any board. */
  public static String general(Optional<Recommendation> general) {
    return general
        .map(
            found ->
                "Any other board, by the patches on the others: %s%s."
                    .formatted(
                        verdict(found),
                        found.chosen().map(box -> "; " + settings(box, found)).orElse("")))
        .orElse(
            "No other board of this kind was burned, so for any other board there is no answer.");
  }

  private static String verdict(Recommendation found) {
    return switch (found.verdict()) {
      case WINDOW -> "a window";
      case NOT_YET -> "no window yet";
      case NONE -> "no window";
      case UNRELIABLE -> "no answer, as the models do not fit";
    };
  }

  private static String settings(Box box, Recommendation found) {
    String speed = found.bench().speed().kind().words();
    return "start %s %%, %s %s mm/s, %s; stay in power %s %%, %s %s mm/s"
        .formatted(
            Figures.plain(box.start().powerPercent()),
            speed,
            Figures.three(box.start().speedMillimetresPerSecond()),
            Figures.passes(box.passes()),
            Figures.inward(box.powerPercent().low(), box.powerPercent().high()),
            speed,
            Figures.inward(
                box.speedMillimetresPerSecond().low(), box.speedMillimetresPerSecond().high()));
  }

  /** How settled a window is and why, with the control patches by code; empty without a window. */
  public static Optional<String> standing(Recommendation found) {
    PieceControls controls = found.piece().map(PieceEvidence::controls).orElse(PieceControls.NONE);
    String clean =
        controls.clean().isEmpty()
            ? "no control patch on %s yet"
                .formatted(found.piece().map(PieceEvidence::name).orElse("the piece"))
            : "clean on %s: %s".formatted(board(found), String.join(", ", controls.clean()));
    return found
        .standing()
        .map(
            standing ->
                switch (standing) {
                  case PROVISIONAL ->
                      "provisional: more patches may still take it away; %s; %d to burn at the start setting."
                          .formatted(clean, controls.wanting());
                  case TO_CONFIRM ->
                      "to confirm: %s; %d to burn at the start setting."
                          .formatted(clean, controls.wanting());
                  case CONFIRMED -> "confirmed: %s.".formatted(clean);
                });
  }

  /** The piece, what its patches changed, and its controls. */
  static Json json(PieceAnswer answer, Recommendation found) {
    PieceControls controls = found.piece().orElseThrow().controls();
    return json(answer.fits())
        .put("unlike", !answer.unlike().isEmpty())
        .put(
            "controls",
            new Json()
                .put("clean", controls.clean())
                .put("charred", controls.charred())
                .put("wanting", controls.wanting()))
        .put(
            "general",
            answer
                .general()
                .map(
                    any ->
                        new Json()
                            .put("verdict", any.verdict().word())
                            .put(
                                "start", any.chosen().map(b -> WindowJson.forecast(b.start(), any)))
                            .put(
                                "ranges",
                                any.chosen().map(b -> WindowJson.ranges(b, any.bench())))));
  }

  /** The piece and what its patches changed, as factors of dose. */
  static Json json(PieceFits fits) {
    return new Json()
        .put("board", fits.board().name())
        .put("patches", fits.patches())
        .put("char_shift", WindowJson.estimate(factor(fits.charring().shift())))
        .put("clearing_shift", WindowJson.estimate(factor(fits.clearing().shift())))
        .put("pareto_k", fits.paretoK())
        .put("refitted", fits.refitted());
  }

  /** The same of one model. */
  static Json json(Board piece, PieceFit fit) {
    return new Json()
        .put("board", piece.name())
        .put("patches", fit.patches())
        .put("shift", WindowJson.estimate(factor(fit.shift())))
        .put("pareto_k", fit.kHat())
        .put("refitted", fit.refitted());
  }

  /** The same as {@link #of} where there is little room. */
  public static String inShort(PieceAnswer answer) {
    PieceFits fits = answer.fits();
    return "%s of its own (k-hat %s%s). Dose against your average board: %s to char, %s to clear.%s %s"
        .formatted(
            Figures.patches(fits.patches()),
            Figures.two(fits.paretoK()),
            fits.refitted() ? ", fitted again" : "",
            times(fits.charring().shift()),
            times(fits.clearing().shift()),
            answer.unlike().isEmpty()
                ? ""
                : " UNLIKE your boards: check wood and coats, burn more patches on it.",
            answer
                .general()
                .map(found -> "Any other board: %s.".formatted(verdict(found)))
                .orElse("No other board was burned."));
  }

  /** Sentences in one paragraph. */
  public static String paragraph(PieceAnswer answer) {
    return String.join(" ", of(answer));
  }
}
