package charline.sheet;

import charline.window.Asked;
import charline.window.MapCell;

/** What the map says of one setting. Each state has its words, its colour and its own texture. */
public enum CellState {
  KEPT("kept", "both kept", "both kept"),
  CHARS("chars", "char risk too high", "chars"),
  LEAVES("leaves", "may not clear", "left on"),
  BOTH("both", "chars, may not clear", "both fail"),
  UNTRIED("untried", "not tried", "not tried");

  private final String style;
  private final String label;
  private final String shortLabel;

  CellState(String style, String label, String shortLabel) {
    this.style = style;
    this.label = label;
    this.shortLabel = shortLabel;
  }

  /** The state of a cell; a bound that is no number counts as not tried. */
  static CellState of(MapCell cell, Asked asked) {
    if (!cell.tried()
        || Double.isNaN(cell.charRiskUpper())
        || Double.isNaN(cell.clearChanceLower())) {
      return UNTRIED;
    }
    boolean chars = cell.charRiskUpper() > asked.charRisk();
    boolean leaves = cell.clearChanceLower() < asked.clearChance();
    if (chars) {
      return leaves ? BOTH : CHARS;
    }
    return leaves ? LEAVES : KEPT;
  }

  /** Name of the style and of the texture. */
  public String style() {
    return style;
  }

  /** A few words for the drawing and its legend. */
  public String label() {
    return label;
  }

  /** The same in the least room. */
  String shortLabel() {
    return shortLabel;
  }
}
