package charline.log.merge;

import charline.log.database.Database;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Woods and coating families that somebody added to the other log. */
record OtherWords(Database database, OtherLog other, String name, List<String> notes) {
  /**
   * Brings words in that only the other log has; one that both added is one word.
   *
   * @param sort "wood" or "family"
   * @param facts table of what is known of them
   * @param aliases table of other words for them
   * @return how many words are new
   */
  int bringIn(String sort, String facts, String aliases) {
    String own = "own_" + sort;
    List<UUID> wanted = new ArrayList<>();
    for (UUID id : other.newcomers(own)) {
      String word = other.text(own, "name", id);
      if (known(facts, word)) {
        compare(sort, own, id, word);
      } else {
        wanted.add(id);
        other.copyFacts(facts, word);
      }
    }
    for (UUID id : wanted) {
      other.copy(own, id);
      bringAliases(sort, aliases, other.text(own, "name", id));
    }
    return wanted.size();
  }

  private boolean known(String facts, String word) {
    return database
        .first("SELECT 1 FROM main.%s WHERE name = ?".formatted(facts), row -> true, word)
        .isPresent();
  }

  private void compare(String sort, String own, UUID id, String word) {
    String there = other.text(own, "like_" + sort, id);
    Optional<String> here =
        database.first(
            "SELECT like_%1$s AS value FROM main.own_%1$s WHERE name = ?".formatted(sort),
            row -> row.text("value"),
            word);
    here.filter(like -> !like.equals(there))
        .ifPresent(
            like ->
                notes.add(
                    "The %s %s was added here too: here it is like %s, in %s like %s; it stays as it is here."
                        .formatted(sort, word, like, name, there)));
  }

  private void bringAliases(String sort, String aliases, String word) {
    for (String alias :
        database.query(
            "SELECT alias FROM other.%s WHERE %s = ? ORDER BY rowid".formatted(aliases, sort),
            row -> row.text("alias"),
            word)) {
      boolean taken =
          database
              .first("SELECT 1 FROM main.%s WHERE alias = ?".formatted(aliases), r -> true, alias)
              .isPresent();
      if (taken) {
        notes.add(
            "The word %s means another %s here, so it does not mean %s."
                .formatted(alias, sort, word));
      } else {
        database.update(
            "INSERT INTO main.%s (alias, %s) VALUES (?, ?)".formatted(aliases, sort), alias, word);
      }
    }
  }
}
