package charline.wording;

import static charline.quantity.Figures.three;

import charline.model.classical.BoardSpread;

/** How much boards differ, where a classical fit estimates it. */
final class BoardSpreadText {
  private BoardSpreadText() {}

  static String sentence(BoardSpread spread) {
    if (spread.logOdds() == 0) {
      return "Boards: the %d boards differ no more than patches of one board do (standard deviation 0)."
          .formatted(spread.boards());
    }
    return "Boards: log odds differ between the %d boards with a standard deviation of %s (90 %% %s to %s)%s."
        .formatted(
            spread.boards(),
            three(spread.logOdds()),
            three(spread.limits().low().orElse(0)),
            three(spread.limits().high().orElse(Double.POSITIVE_INFINITY)),
            spread.omega().isPresent()
                ? "; as dose, a factor of %s either way (omega %s)"
                    .formatted(
                        three(Math.exp(spread.omega().getAsDouble())),
                        three(spread.omega().getAsDouble()))
                : "");
  }

  static Json json(BoardSpread spread) {
    return new Json()
        .put("boards", spread.boards())
        .put("standard_deviation_log_odds", spread.logOdds())
        .put("low", spread.limits().low())
        .put("high", spread.limits().high())
        .put("omega", spread.omega());
  }
}
