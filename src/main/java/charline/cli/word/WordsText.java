package charline.cli.word;

import charline.trial.Caution;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What woods and coating families have in common when they are written out. */
final class WordsText {
  private WordsText() {}

  /** "lead, isocyanates". */
  static String topics(List<Caution> cautions) {
    return cautions.stream()
        .map(caution -> caution.topic().toLowerCase(Locale.ROOT))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** A list in one cell of a sheet. */
  static String cell(List<String> words) {
    return String.join("; ", words);
  }
}
