package charline.shops;

import java.util.Arrays;
import java.util.stream.Collectors;

/** A table in Markdown; a heading that begins with {@code >} is set to the right. */
public final class MarkdownTable {
  private final StringBuilder text = new StringBuilder();

  public MarkdownTable(String... headings) {
    row(Arrays.stream(headings).map(h -> h.replaceFirst("^>", "")).toArray(String[]::new));
    row(
        Arrays.stream(headings)
            .map(h -> h.startsWith(">") ? "---:" : "---")
            .toArray(String[]::new));
  }

  public void row(String... cells) {
    text.append(Arrays.stream(cells).collect(Collectors.joining(" | ", "| ", " |\n")));
  }

  public String text() {
    return text.toString();
  }
}
