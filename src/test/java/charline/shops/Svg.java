package charline.shops;

import java.util.Locale;

/** A small drawing: lines, marks and words in pixels, dark on white, readable without colour. */
final class Svg {
  private final StringBuilder body = new StringBuilder();
  private final int width;
  private final int height;
  private final String title;

  Svg(int width, int height, String title) {
    this.width = width;
    this.height = height;
    this.title = title;
    words(width / 2.0, 22, title, "middle", 15);
  }

  /** How a line looks. */
  enum Stroke {
    SOLID("#222", ""),
    FAINT("#ccc", ""),
    DASHED("#b00", " stroke-dasharray='5 4'");

    private final String colour;
    private final String dashes;

    Stroke(String colour, String dashes) {
      this.colour = colour;
      this.dashes = dashes;
    }
  }

  /** What a point looks like; each differs in shape as well as in colour. */
  enum Mark {
    DISC("#222"),
    RING("#06c"),
    CROSS("#b50");

    private final String colour;

    Mark(String colour) {
      this.colour = colour;
    }

    String colour() {
      return colour;
    }
  }

  void line(double x1, double y1, double x2, double y2, Stroke stroke) {
    line(x1, y1, x2, y2, stroke.colour, stroke.dashes);
  }

  private void line(double x1, double y1, double x2, double y2, String colour, String more) {
    add(
        "<line x1='%.1f' y1='%.1f' x2='%.1f' y2='%.1f' stroke='%s'%s/>",
        x1, y1, x2, y2, colour, more);
  }

  /** A bar from a low to a high bound in the colour of a mark. */
  void bar(double x1, double y1, double x2, double y2, Mark mark) {
    line(x1, y1, x2, y2, mark.colour, " stroke-width='1.5'");
  }

  void mark(double x, double y, Mark mark) {
    switch (mark) {
      case DISC -> add("<circle cx='%.1f' cy='%.1f' r='4' fill='%s'/>", x, y, mark.colour);
      case RING ->
          add(
              "<circle cx='%.1f' cy='%.1f' r='4' fill='white' stroke='%s' stroke-width='1.8'/>",
              x, y, mark.colour);
      case CROSS ->
          add(
              "<path d='M%.1f %.1fl8 8m0 -8l-8 8' stroke='%s' stroke-width='2'/>",
              x - 4, y - 4, mark.colour);
    }
  }

  void words(double x, double y, String text, String anchor, int size) {
    add(
        "<text x='%.1f' y='%.1f' text-anchor='%s' font-size='%d'>%s</text>",
        x, y, anchor, size, escaped(text));
  }

  /** Words that run upward, for the name of a vertical axis. */
  void upward(double x, double y, String text) {
    add(
        "<text x='%.1f' y='%.1f' text-anchor='middle' font-size='13' transform='rotate(-90 %.1f"
            + " %.1f)'>%s</text>",
        x, y, x, y, escaped(text));
  }

  private void add(String format, Object... values) {
    body.append(String.format(Locale.ROOT, format, values)).append('\n');
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }

  String text() {
    return """
    <svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 %d %d' role='img' font-family='sans-serif' fill='#222'>
    <title>%s</title>
    <rect width='%d' height='%d' fill='white'/>
    %s</svg>
    """
        .formatted(width, height, escaped(title), width, height, body);
  }
}
