package charline.paper;

import charline.window.MapCell;

/** What the map says of one setting. Each state has its words, its colour and its own texture. */
public enum CellState {
  KEPT("kept", "both kept", "both kept"),
  CHARS("chars", "may char", "may char"),
  LEAVES("leaves", "may not clear", "not clear"),
  BOTH("both", "may char, may not clear", "both fail"),
  TOO_FEW("too-few", "too few patches came through", "too few"),
  UNTRIED("untried", "not tried", "not tried");

  private final String style;
  private final String label;
  private final String shortLabel;

  CellState(String style, String label, String shortLabel) {
    this.style = style;
    this.label = label;
    this.shortLabel = shortLabel;
  }

  /** The state of a cell. */
  public static CellState of(MapCell cell) {
    if (!cell.tried()) {
      return UNTRIED;
    }
    if (!cell.keepsChar()) {
      return cell.keepsClearing() ? CHARS : BOTH;
    }
    if (!cell.keepsClearing()) {
      return LEAVES;
    }
    return cell.borneOut() ? KEPT : TOO_FEW;
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
