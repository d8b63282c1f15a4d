package charline.ask;

import charline.ask.time.Counting;
import charline.log.search.Amount;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers and units among the words of a question: {@code 30%}, {@code 30-50}, {@code two}. */
final class NumberWords {
  private static final Pattern NUMBER =
      Pattern.compile("([-+]?(?:\\d+(?:[.,]\\d+)*|[.,]\\d+))([^\\d.,\\s-].*|)");
  private static final Pattern RANGE =
      Pattern.compile("(\\d+(?:[.,]\\d+)?)\\D{0,5}?(?:-|\\.\\.)(\\d+(?:[.,]\\d+)?)(\\D.*|)");

  private final List<Word> words;

  NumberWords(List<Word> words) {
    this.words = words;
  }

  /**
   * A number as typed.
   *
   * @param second the other end of a range in one word
   */
  record Value(int length, String number, String unit, Optional<Value> second) {}

  /** The number that stands at a word. */
  Optional<Value> value(int at) {
    String text = word(at);
    Matcher range = RANGE.matcher(text);
    if (range.matches() && !text.matches("\\d{4}-\\d.*") && unitKnown(range.group(3))) {
      return Optional.of(
          new Value(
              1,
              range.group(1),
              range.group(3),
              Optional.of(new Value(0, range.group(2), range.group(3), Optional.empty()))));
    }
    Matcher number = NUMBER.matcher(text);
    if (number.matches() && unitKnown(number.group(2))) {
      return Optional.of(new Value(1, number.group(1), number.group(2), Optional.empty()));
    }
    if ((text.equals("a") || text.equals("an"))
        && (word(at + 1).equals("single") || word(at + 1).equals("pass"))) {
      return Optional.of(
          new Value(word(at + 1).equals("single") ? 2 : 1, "1", "", Optional.empty()));
    }
    if (text.equals("single")) {
      return Optional.of(new Value(1, "1", "", Optional.empty()));
    }
    OptionalInt spoken = Counting.of(text);
    return spoken.isPresent()
        ? Optional.of(new Value(1, String.valueOf(spoken.getAsInt()), "", Optional.empty()))
        : Optional.empty();
  }

  private static boolean unitKnown(String unit) {
    return unit.isEmpty() || !AmountWords.of(unit).isEmpty();
  }

  /** A unit in one word or several, from some word on. */
  Optional<Map.Entry<Integer, String>> unitAt(int at) {
    for (int length = 4; length > 0; length--) {
      String phrase = AmountWords.phrase(words, at, length).replace("  ", " ");
      String unit = AmountWords.UNITS.getOrDefault(phrase, length == 1 ? phrase : "");
      if (!unit.isEmpty() && !AmountWords.of(unit).isEmpty()) {
        return Optional.of(Map.entry(length, unit));
      }
    }
    return Optional.empty();
  }

  /** A number in the unit that its amount is searched by. */
  static double inUnit(Amount amount, String number, String unit) {
    Quantity quantity = amount.knob().quantity();
    String typed = AmountWords.UNITS.getOrDefault(unit, unit);
    if (quantity == null || !quantity.understands(typed.isEmpty() ? quantity.base() : typed)) {
      return Measure.plainNumber(number);
    }
    return Measure.parse(number + typed, quantity).value();
  }

  /** A word in small letters; blank where there is none, or a quoted one. */
  String word(int at) {
    return at >= 0 && at < words.size() && !words.get(at).quoted()
        ? words.get(at).lower().toLowerCase(Locale.ROOT)
        : "";
  }
}
