package charline.ask;

import charline.ask.time.Counting;
import charline.log.search.Amount;
import charline.log.search.NumberRange;
import charline.refusal.Refusal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Numbers with what they are of: {@code slower than 20 mm/s}, {@code two passes or fewer}, {@code
 * between 30 and 50% power}, {@code a dose under 5 J/cm2}.
 */
final class NumberPhrase {
  /**
   * A phrase that was understood.
   *
   * @param length how many words it took
   * @param amount what it is about
   * @param range the numbers
   * @param about whether it was said to be about so much
   */
  record Found(int length, Amount amount, NumberRange range, boolean about) {}

  /** "About 50 %" is so much of it more or less. */
  private static final double ABOUT = 0.1;

  private static final Set<String> GLUE =
      Set.of(
          "of", "is", "was", "were", "are", "at", "be", "been", "set", "being", "with", "a", "an",
          "the", "only", "just", "got", "had", "setting", "value");
  private static final Set<String> JOINING = Set.of("to", "and", "-", "till", "until", "through");

  private final List<Word> words;
  private final NumberWords numbers;
  private Optional<Amount> before = Optional.empty();

  NumberPhrase(List<Word> words) {
    this.words = words;
    numbers = new NumberWords(words);
  }

  /** The phrase that starts at a word. */
  Optional<Found> at(int start) {
    Optional<Found> found = new Cursor(start).read();
    before = found.map(Found::amount).or(() -> before);
    return found;
  }

  /** Reads on from word to word. */
  private final class Cursor {
    private final int start;
    private int at;
    private Optional<Amount> field = Optional.empty();
    private Optional<Comparison> compare = Optional.empty();
    private boolean between;

    Cursor(int start) {
      this.start = start;
      at = start;
    }

    Optional<Found> read() {
      leading();
      if (at > start && word(at).isEmpty()) {
        return Optional.empty();
      }
      return number();
    }

    /** Names and comparisons before the number. */
    private void leading() {
      boolean found = true;
      while (found && at < words.size()) {
        found = comparison() || named() || glue() || joined();
      }
    }

    private boolean joined() {
      if ((word(at).equals("between") || word(at).equals("from")) && !between) {
        between = true;
        at++;
        return true;
      }
      return false;
    }

    private boolean comparison() {
      if (word(at).equals("by") && passFollows(at + 1)) {
        compare = Optional.of(Comparison.AT_MOST); // "clean by pass 2"
        at++;
        return true;
      }
      for (int length = 4; length > 0; length--) {
        String phrase = AmountWords.phrase(words, at, length);
        AmountWords.Comparative comparative = AmountWords.COMPARATIVES.get(phrase);
        if (comparative != null) {
          compare = Optional.of(comparative.more() ? Comparison.OVER : Comparison.UNDER);
          field = Optional.of(comparative.amount());
          at += length;
          return true;
        }
        Comparison known = Comparison.LEADING.get(phrase);
        if (known != null && !(known == Comparison.EXACTLY && compare.isPresent())) {
          compare = Optional.of(known);
          at += length;
          return true;
        }
      }
      // "more power than 50 %", "a lower dose than 5 J/cm2"
      String first = word(at);
      if (AmountWords.MORE.contains(first) || AmountWords.LESS.contains(first)) {
        Optional<Map.Entry<Integer, Amount>> named = AmountWords.field(words, at + 1);
        if (named.isPresent() && word(at + 1 + named.get().getKey()).equals("than")) {
          compare =
              Optional.of(AmountWords.MORE.contains(first) ? Comparison.OVER : Comparison.UNDER);
          field = Optional.of(named.get().getValue());
          at += 2 + named.get().getKey();
          return true;
        }
      }
      return false;
    }

    private boolean named() {
      if (field.isPresent()) {
        return false;
      }
      Optional<Map.Entry<Integer, Amount>> named = AmountWords.field(words, at);
      named.ifPresent(
          n -> {
            field = Optional.of(n.getValue());
            at += n.getKey();
          });
      return named.isPresent();
    }

    private boolean glue() {
      boolean glued = at > start && GLUE.contains(word(at));
      at += glued ? 1 : 0;
      return glued;
    }

    private Optional<Found> number() {
      Optional<Found> ordinal = ordinal();
      if (ordinal.isPresent()) {
        return ordinal;
      }
      Optional<NumberWords.Value> first = numbers.value(at);
      if (first.isEmpty()) {
        return Optional.empty();
      }
      at += first.get().length();
      Optional<NumberWords.Value> second = first.get().second();
      boolean joining = JOINING.contains(word(at)) && (between || !word(at).equals("and"));
      if (second.isEmpty() && joining) {
        Optional<NumberWords.Value> next = numbers.value(at + 1).filter(v -> v.second().isEmpty());
        boolean sameKind =
            next.isPresent()
                && (between
                    || !next.get().unit().isEmpty()
                    || numbers.unitAt(at + 1 + next.get().length()).isPresent()
                    || field.isPresent());
        if (sameKind) {
          at += 1 + next.get().length();
          second = next;
        }
      }
      String unit =
          second.map(NumberWords.Value::unit).filter(u -> !u.isEmpty()).orElse(first.get().unit());
      Optional<Map.Entry<Integer, String>> spoken =
          (unit.isEmpty() ? numbers.unitAt(at) : Optional.<Map.Entry<Integer, String>>empty())
              .filter(this::mayFollow);
      if (spoken.isPresent()) {
        at += spoken.get().getKey();
        unit = spoken.get().getValue();
      }
      boolean upwards = trailing();
      Optional<Amount> amount = amount(unit);
      if (amount.isEmpty()) {
        return Optional.empty();
      }
      if (!upwards) {
        trailing();
      }
      return Optional.of(found(amount.get(), first.get(), second, unit));
    }

    /** "in" is an inch where a length was named alone. */
    private boolean mayFollow(Map.Entry<Integer, String> unit) {
      return field
          .map(amount -> AmountWords.fits(amount, unit.getValue()))
          .orElse(!word(at).equals("in"));
    }

    /** "first pass", "the 2nd pass". */
    private Optional<Found> ordinal() {
      if (word(at).equals("very") && Counting.ordinal(word(at + 1)).isPresent()) {
        at++;
      }
      OptionalInt place = Counting.ordinal(word(at));
      if (place.isEmpty() || !word(at + 1).equals("pass")) {
        return Optional.empty();
      }
      at += 2;
      // "Over the first pass" says when, "by the second pass" and "third pass or later" how many.
      compare = compare.filter(how -> how == Comparison.AT_MOST || how == Comparison.AT_LEAST);
      trailing();
      NumberWords.Value number =
          new NumberWords.Value(0, String.valueOf(place.getAsInt()), "", Optional.empty());
      return Optional.of(found(Amount.PASSES, number, Optional.empty(), ""));
    }

    private boolean passFollows(int from) {
      int next = word(from).equals("the") ? from + 1 : from;
      next = word(next).equals("very") ? next + 1 : next;
      return word(next).equals("pass") && numbers.value(next + 1).isPresent()
          || word(next + 1).matches("pass|passes")
              && (Counting.ordinal(word(next)).isPresent() || numbers.value(next).isPresent());
    }

    /** "or more", "and below", "max" after the number. */
    private boolean trailing() {
      for (int length = 2; length > 0; length--) {
        Comparison known = Comparison.TRAILING.get(AmountWords.phrase(words, at, length));
        boolean another =
            known != null && word(at).equals("and") && numbers.value(at + length).isPresent();
        if (known != null && !another) {
          compare = Optional.of(known);
          at += length;
          return true;
        }
      }
      return false;
    }

    /** What a number with that unit is about, by its name before or after it. */
    private Optional<Amount> amount(String unit) {
      if (field.isEmpty()) {
        int glue = GLUE.contains(word(at)) || word(at).equals("in") ? 1 : 0;
        Optional<Map.Entry<Integer, Amount>> after = AmountWords.field(words, at + glue);
        if (after.isPresent() && AmountWords.fits(after.get().getValue(), unit)) {
          field = Optional.of(after.get().getValue());
          at += after.get().getKey() + glue;
        }
      } else if (unit.isEmpty()
          && AmountWords.field(words, at).filter(f -> f.getValue() == field.get()).isPresent()) {
        at += AmountWords.field(words, at).get().getKey();
      }
      if (field.isPresent()) {
        Amount named = AmountWords.byUnit(field.get(), unit);
        if (named == Amount.DOSE && AmountWords.IN_ALL.contains(AmountWords.phrase(words, at, 2))) {
          at += 2;
          return Optional.of(Amount.TOTAL_DOSE);
        }
        return Optional.of(named);
      }
      if (unit.isEmpty()) {
        return shared();
      }
      List<Amount> possible = AmountWords.of(unit);
      if (possible.size() > 1) {
        throw Refusal.usage(
            "\"%s\" may be %s; say which.".formatted(said(), AmountWords.either(possible)));
      }
      if (possible.get(0) == Amount.DOSE
          && AmountWords.IN_ALL.contains(AmountWords.phrase(words, at, 2))) {
        at += 2;
        return Optional.of(Amount.TOTAL_DOSE);
      }
      return Optional.of(possible.get(0));
    }

    /** "30 or 40 %", "over 30 but under 40 mm/s": one number lends the other its unit. */
    private Optional<Amount> shared() {
      if (word(at).matches("and|or|but|to") || at < words.size() && words.get(at).comma()) {
        int next = word(at).matches("and|or|but|to") ? at + 1 : at;
        Optional<Found> other =
            next < words.size() && (compare.isPresent() || numbers.value(next).isPresent())
                ? new Cursor(next).read()
                : Optional.empty();
        if (other.isPresent()) {
          return other.map(Found::amount);
        }
      }
      boolean goesOn = word(start - 1).matches("and|or|but") || words.get(start).comma();
      return goesOn ? before : Optional.empty();
    }

    private String said() {
      StringBuilder text = new StringBuilder();
      for (int i = start; i < at; i++) {
        text.append(i > start ? " " : "").append(words.get(i).typed());
      }
      return text.toString();
    }

    private Found found(
        Amount amount, NumberWords.Value first, Optional<NumberWords.Value> second, String unit) {
      double low = NumberWords.inUnit(amount, first.number(), unit);
      NumberRange range;
      boolean about = false;
      if (second.isPresent()) {
        range = NumberRange.between(low, NumberWords.inUnit(amount, second.get().number(), unit));
      } else {
        Comparison how = compare.orElse(Comparison.EXACTLY);
        about = how == Comparison.ABOUT;
        range =
            switch (how) {
              case OVER -> NumberRange.over(low);
              case AT_LEAST -> NumberRange.atLeast(low);
              case UNDER -> NumberRange.under(low);
              case AT_MOST -> NumberRange.atMost(low);
              case EXACTLY -> exact(amount, low, first.number());
              case ABOUT -> NumberRange.between(low * (1 - ABOUT), low * (1 + ABOUT));
            };
      }
      return new Found(at - start, amount, range, about);
    }

    /** What is computed agrees to the digits that were typed; what was dialled in, exactly. */
    private NumberRange exact(Amount amount, double value, String typed) {
      if (!AmountWords.COMPUTED.contains(amount)) {
        return NumberRange.exactly(value);
      }
      int point = Math.max(typed.indexOf('.'), typed.indexOf(','));
      double half = 0.5 * Math.pow(10, point < 0 ? 0 : -(typed.length() - point - 1.0));
      return NumberRange.between(value - half, value + half);
    }
  }

  private String word(int at) {
    return numbers.word(at);
  }
}
