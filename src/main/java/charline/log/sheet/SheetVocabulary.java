package charline.log.sheet;

import charline.log.Logbook;
import charline.log.OwnWords.Sort;
import charline.refusal.Refusal;
import charline.trial.OwnWord;
import charline.trial.WoodForm;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The woods and families that a sheet speaks of: those of the log, and words that somebody added to
 * the log which the sheet comes from. A sheet says of each what it is like: {@code bog oak=oak},
 * and several with semicolons between them.
 */
final class SheetVocabulary {
  private final Logbook log;
  private final Map<Sort, Map<String, OwnWord>> fresh = new EnumMap<>(Sort.class);

  private final List<NewWord> waiting = new ArrayList<>();

  /**
   * A word that is still to be recorded.
   *
   * @param by who used it first, null where not noted
   */
  private record NewWord(Sort sort, OwnWord word, String by) {}

  SheetVocabulary(Logbook log) {
    this.log = log;
    for (Sort sort : Sort.values()) {
      fresh.put(sort, new LinkedHashMap<>());
    }
  }

  /** The log's own word for a wood, that of the sheet included. */
  String wood(String word) {
    return known(Sort.WOOD, word);
  }

  /** The log's own word for a coating family, that of the sheet included. */
  String family(String word) {
    return known(Sort.FAMILY, word);
  }

  /** The form that a wood has where none is given. */
  WoodForm usualForm(String wood) {
    String name = wood;
    while (fresh.get(Sort.WOOD).containsKey(name)) {
      name = fresh.get(Sort.WOOD).get(name).like();
    }
    return log.reference().usualForm(name);
  }

  private String known(Sort sort, String word) {
    if (fresh.get(sort).containsKey(word.strip())) {
      return word.strip();
    }
    return sort == Sort.WOOD ? log.reference().wood(word) : log.reference().family(word);
  }

  /**
   * Takes what a cell says of words.
   *
   * @param by who used them first, null where not noted
   * @return the cell
   * @throws Refusal if it cannot be read, or the log knows otherwise
   */
  String learn(Sort sort, String cell, String by) {
    for (String pair : cell.split(";")) {
      String[] parts = pair.split("=", -1);
      if (parts.length != 2 || parts[0].isBlank() || parts[1].isBlank()) {
        throw Refusal.usage(
            "A word that was added must read WORD=LIKE, such as %s, not \"%s\"."
                .formatted(
                    sort == Sort.WOOD ? "bog oak=oak" : "deck varnish=varnish", pair.strip()));
      }
      learn(sort, OwnWord.checked(sort.word(), parts[0]), known(sort, parts[1].strip()), by);
    }
    return cell;
  }

  private void learn(Sort sort, String name, String like, String by) {
    Optional<String> here =
        Optional.ofNullable(fresh.get(sort).get(name))
            .or(() -> log.ownWords().find(sort, name).map(added -> added.word()))
            .map(OwnWord::like);
    if (here.isPresent() && !here.get().equals(like)) {
      throw Refusal.data(
          "The %s %s is like %s already, not like %s; correct one of them."
              .formatted(sort.word(), name, here.get(), like));
    }
    if (here.isEmpty() && !comesWithTheProgram(sort, name)) {
      OwnWord word = new OwnWord(log.newId(), name, List.of(), like);
      fresh.get(sort).put(name, word);
      waiting.add(new NewWord(sort, word, by));
    }
  }

  private boolean comesWithTheProgram(Sort sort, String name) {
    return sort == Sort.WOOD
        ? log.reference().woods().stream().anyMatch(w -> w.name().equals(name))
        : log.reference().families().stream().anyMatch(f -> f.name().equals(name));
  }

  /** Takes the words that are new since the last call; gives what records them. */
  Runnable takeNew() {
    List<NewWord> taken = List.copyOf(waiting);
    waiting.clear();
    return () -> taken.forEach(word -> log.ownWords().add(word.sort(), word.word(), word.by()));
  }

  /**
   * What a sheet says of words that were added: the ones that others are like come first.
   *
   * @param likes what each added word is like
   * @return blank where none of the words was added
   */
  static String text(Collection<String> words, Map<String, String> likes) {
    List<String> pairs = new ArrayList<>();
    for (String word : words) {
      int at = pairs.size();
      for (String each = word; likes.containsKey(each); each = likes.get(each)) {
        String pair = each + "=" + likes.get(each);
        if (!pairs.contains(pair)) {
          pairs.add(at, pair);
        }
      }
    }
    return String.join("; ", pairs);
  }
}
