package charline.answer;

import charline.model.PieceFits;
import charline.window.CharredSpots;
import charline.window.LiveForecast;
import charline.window.Requirements;
import charline.window.Strokes;
import java.util.Optional;

/**
 * What one setting does, inside or outside a window.
 *
 * @param dialled the setting
 * @param asked what risk and chance are compared with, and the confidence of their bounds
 * @param models that it comes from
 * @param expected risk and chance, on the piece where the models are for one
 * @param general the same on a board not seen yet, where the models are for a piece
 */
public record RiskAnswer(
    Dialled dialled,
    Requirements asked,
    LiveForecast models,
    LiveForecast.Expected expected,
    Optional<LiveForecast.Expected> general) {

  /**
   * Asks models.
   *
   * @param asked what risk and chance are compared with, and the confidence of their bounds
   */
  public static RiskAnswer of(LiveForecast models, Dialled dialled, Requirements asked) {
    double confidence = asked.confidence();
    return new RiskAnswer(
        dialled,
        asked,
        models,
        models.at(
            dialled.rig(),
            dialled.settings(),
            dialled.exposure(),
            dialled.passes(),
            dialled.strokes(),
            confidence),
        models.onAnyBoard(
            dialled.rig(),
            dialled.settings(),
            dialled.exposure(),
            dialled.passes(),
            dialled.strokes(),
            confidence));
  }

  /** False where a window of the same trials would be called unreliable: trust no figure then. */
  public boolean reliable() {
    return models.reliable();
  }

  /** Both models of the piece; empty where it is for a board not seen yet. */
  public Optional<PieceFits> piece() {
    return models.pieceFits();
  }

  /** Charred spots per m². */
  public CharredSpots spots() {
    return models.charredSpots(expected);
  }

  /** The same over an area in strokes that overlap as usual. */
  public CharredSpots spotsOverAnArea() {
    return dialled.strokes().equals(Strokes.SINGLE)
        ? of(models, dialled.with(Strokes.USUAL), asked).spots()
        : spots();
  }

  /** Whether even the upper bound of the char risk keeps its limit. */
  public boolean keepsChar() {
    return expected.charRiskUpper() <= asked.charRisk();
  }

  /** Whether even the lower bound of the clearing chance keeps its limit. */
  public boolean keepsClearing() {
    return expected.clearChanceLower() >= asked.clearChance();
  }
}
