package charline.paper;

import charline.paper.MapPicture.Rect;

/**
 * How large a map's parts are, in drawing units.
 *
 * @param frame the plotting area
 * @param letterWidth mean width of a letter of the words on it
 * @param lineHeight of those words
 * @param tagHeight of framed words
 * @param speedTicksApart least distance of speeds on their axis
 * @param powerTicksApart least distance of powers on theirs
 */
record MapScale(
    Rect frame,
    double letterWidth,
    int lineHeight,
    int tagHeight,
    int speedTicksApart,
    int powerTicksApart) {
  private static final int SCREEN_PLOT_HEIGHT = 760;

  /** On paper, where the whole is 118 mm wide. */
  static MapScale paper(int plotHeight) {
    return new MapScale(new Rect(112, 10, 1060, plotHeight), 16, 40, 46, 70, 44);
  }

  /** On a screen that may be no wider than a phone: fewer and larger words. */
  static MapScale screen() {
    return new MapScale(new Rect(112, 70, 1060, SCREEN_PLOT_HEIGHT), 25, 60, 64, 130, 76);
  }
}
