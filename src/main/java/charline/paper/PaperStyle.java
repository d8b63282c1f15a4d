package charline.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** A style that a paper carries with it, so that the paper can be saved and mailed. */
public enum PaperStyle {
  SHEET("sheet.css"),
  MAP("map.css"),
  BENCH_LIST("bench-list.css"),
  COMPARE("compare.css");

  private final String text;

  PaperStyle(String file) {
    try (InputStream in = PaperStyle.class.getResourceAsStream("/paper/" + file)) {
      text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("The style " + file + " cannot be read.", unreadable);
    }
  }

  /** The style sheet, tokens for sizes and colours first. */
  public String text() {
    return text;
  }

  /** Every style that any paper has, each as it is between its tags. */
  public static List<String> everyText() {
    return Stream.concat(
            Arrays.stream(values()).map(PaperStyle::text),
            Arrays.stream(Paper.values()).map(Paper::style))
        .toList();
  }
}
