package charline.log.sheet;

import charline.quantity.Measure;
import charline.refusal.Refusal;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/** A stack of coats in one cell: {@code latex:pale:90um + primer::40um}, outermost first. */
final class Coats {
  private Coats() {}

  /**
   * Reads a stack.
   *
   * @param family gives the log's own word for a family, or throws
   * @throws Refusal in one sentence
   */
  static List<Coat> parse(String text, UnaryOperator<String> family) {
    List<Coat> coats = new ArrayList<>();
    for (String part : text.split("\\s\\+\\s|\\+")) {
      String[] bits = part.strip().split(":", -1);
      if (bits.length > 3 || bits[0].isBlank()) {
        throw Refusal.usage(
            "A coat must read family:tone:thickness, such as latex:pale:90um, not \"%s\"."
                .formatted(part.strip()));
      }
      Optional<Tone> tone =
          bits.length < 2 || bits[1].isBlank()
              ? Optional.empty()
              : Optional.of(Tone.ofWord(bits[1]));
      OptionalDouble thickness =
          bits.length < 3 || bits[2].isBlank()
              ? OptionalDouble.empty()
              : OptionalDouble.of(Measure.parse(bits[2], Measure.Quantity.THICKNESS).value());
      String called = bits[0].strip();
      coats.add(new Coat(family.apply(called), tone, thickness, Optional.of(called)));
    }
    return coats;
  }

  /** The form that {@link #parse} reads. */
  static String text(List<Coat> coats) {
    return String.join(" + ", coats.stream().map(Coats::text).toList());
  }

  private static String text(Coat coat) {
    String thickness =
        coat.thicknessMicrometres().isPresent()
            ? ":" + SheetNumbers.text(coat.thicknessMicrometres().getAsDouble()) + "um"
            : "";
    String tone = coat.tone().map(Tone::word).orElse("");
    return coat.name() + (tone.isEmpty() && thickness.isEmpty() ? "" : ":" + tone) + thickness;
  }

  /** The coats given by columns family and tone alone. */
  static List<Coat> ofTone(String family, Optional<Tone> tone) {
    return tone.isEmpty() ? List.of() : List.of(new Coat(family, tone, OptionalDouble.empty()));
  }

  /** True if columns family and tone say everything about a finish. */
  static boolean areSaidByTone(Finish finish) {
    return finish.coats().equals(ofTone(finish.family(), finish.tone()));
  }
}
