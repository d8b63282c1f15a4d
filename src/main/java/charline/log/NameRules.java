package charline.log;

import charline.log.database.Database;
import charline.refusal.Refusal;
import charline.trial.GivenName;
import charline.trial.PlainText;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Names of rigs, boards and finishes: they differ by more than capitals, in any alphabet. */
public final class NameRules {
  private final Database database;

  NameRules(Database database) {
    this.database = database;
  }

  /**
   * Refuses a name that is taken.
   *
   * @param kind what is to be recorded, which is the name of its table too
   */
  void requireFree(String kind, String name) {
    requireFree(kind, name, Optional.empty());
  }

  /**
   * Refuses a name that is taken by another.
   *
   * @param kind what is to be recorded, which is the name of its table too
   * @param itself the one that is to have the name, if it is recorded already
   */
  void requireFree(String kind, String name, Optional<UUID> itself) {
    List<String> own =
        itself
            .map(
                id ->
                    database.query(
                        "SELECT name FROM %s WHERE id = ?".formatted(kind),
                        row -> row.text("name"),
                        id))
            .orElse(List.of());
    for (String other : like(kind, name.strip())) {
      if (own.contains(other)) {
        continue;
      }
      if (other.equalsIgnoreCase(name.strip())) {
        throw Refusal.usage(
            "This log has a %s \"%s\" already; choose another name.".formatted(kind, other));
      }
    }
  }

  /** Refuses a name that is not plain text, but for one that was recorded so before. */
  void requirePlain(String kind, String name) {
    if (PlainText.firstUnseen(GivenName.inOneLine(name)).isPresent()
        && !like(kind, name).contains(name)) {
      GivenName.requireSeenInLines("The name of a " + kind, name);
    }
  }

  /** Names that may be the same but for capitals. SQLite tells those of English letters itself. */
  private List<String> like(String kind, String name) {
    return StandardCharsets.US_ASCII.newEncoder().canEncode(name)
        ? database.query(
            "SELECT name FROM %s WHERE name = ?".formatted(kind), row -> row.text("name"), name)
        : database.query("SELECT name FROM " + kind, row -> row.text("name"));
  }
}
