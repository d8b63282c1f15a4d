package charline.ask;

import charline.ask.time.TimePhrase;
import charline.log.reference.Nearest;
import charline.log.search.Vocabulary;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What to say of a word that is not known: which known ones it is like. */
final class UnknownWord {
  private static final int SHORTEST_OFFERED = 4;

  private final Vocabulary vocabulary;

  UnknownWord(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Whether a verb of plain speech is one letter off a name of the log, where a name must come. */
  boolean isSlip(String word) {
    return Filler.isVerb(word) && Nearest.isOneOff(word, vocabulary.words());
  }

  Refusal refusal(Word word) {
    String typed = word.typed();
    Optional<String> advice = vocabulary.advice(typed);
    if (advice.isPresent()) {
      return Refusal.usage(advice.get());
    }
    if (word.lower().matches("[-+]?\\d.*")) {
      return Refusal.usage(
          "I do not know what \"%s\" is a number of; add a unit or a name, such as 50 %%, 30 mm/s, 5 J/cm2, 2 passes or spot 0.5 mm."
              .formatted(typed));
    }
    List<String> inLog = Nearest.to(word.lower(), vocabulary.words());
    List<String> near = Nearest.to(word.lower(), everything());
    if (!inLog.isEmpty() && near.contains(inLog.get(0))) {
      return Refusal.usage(
          "I do not know \"%s\"; nearest words in this log: %s."
              .formatted(typed, String.join(", ", inLog)));
    }
    return Refusal.usage(
        near.isEmpty()
            ? "I do not know \"%s\"; ask with families, woods, outcomes, numbers with units, names in this log, or a time such as last month."
                .formatted(typed)
            : "I do not know \"%s\"; nearest words: %s.".formatted(typed, String.join(", ", near)));
  }

  private List<String> everything() {
    List<String> all = new ArrayList<>(vocabulary.words());
    all.addAll(vocabulary.people());
    all.addAll(Sense.words());
    all.addAll(TimePhrase.names());
    Filler.functionWords().stream().filter(w -> w.length() >= SHORTEST_OFFERED).forEach(all::add);
    return all;
  }
}
