package charline.log.reference;

import charline.trial.Coat;
import charline.trial.Finish;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The words in which people name coats, finishes and boards, to be searched for those that warn.
 * "PVC-free" and "no PVC" are taken out first, as they say the opposite.
 */
final class CoatWords {
  private static final Pattern SIGNS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern DENIED =
      Pattern.compile(
          " (?:no|non|not|without) \\p{L}[\\p{L}\\p{N}]*(?= )| [\\p{L}\\p{N}]+ free(?= )");

  private final List<String> texts;

  private CoatWords(Stream<String> texts) {
    this.texts = texts.map(CoatWords::plain).toList();
  }

  /** The name of a finish and what its coats were called. */
  static CoatWords of(Finish finish) {
    return new CoatWords(
        Stream.concat(
            Stream.of(finish.name()),
            finish.coats().stream().map(Coat::called).flatMap(Optional::stream)));
  }

  static CoatWords of(List<String> texts) {
    return new CoatWords(texts.stream());
  }

  private static String plain(String text) {
    String words = " " + SIGNS.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(" ").strip() + " ";
    return DENIED.matcher(words).replaceAll("");
  }

  /** Whether a word or phrase of the reference rows is among them, as whole words. */
  boolean hold(String phrase) {
    return texts.stream().anyMatch(text -> text.contains(" " + phrase + " "));
  }

  @Override
  public String toString() {
    return texts.stream().collect(Collectors.joining("/"));
  }
}
