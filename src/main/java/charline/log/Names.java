package charline.log;

import static charline.log.Refused.Kind.USAGE;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;

/** Names of rigs, boards and finishes: told apart by more than capitals, in any alphabet. */
final class Names {
  private final Store store;

  Names(Store store) {
    this.store = store;
  }

  /** The thing of that name; refuses an unknown one and offers the nearest names. */
  static <T> T pick(String kind, String name, List<T> all, Function<T, String> nameOf) {
    return all.stream()
        .filter(t -> nameOf.apply(t).equalsIgnoreCase(name.strip()))
        .findFirst()
        .orElseThrow(() -> Nearest.refusal(kind, name.strip(), all.stream().map(nameOf).toList()));
  }

  /**
   * Refuses a name that is taken.
   *
   * @param kind what is to be recorded, which is the name of its table too
   */
  void requireFree(String kind, String name) {
    for (String other : like(kind, name.strip())) {
      if (other.equalsIgnoreCase(name.strip())) {
        throw new Refused(
            USAGE, "This log has a %s \"%s\" already; choose another name.".formatted(kind, other));
      }
    }
  }

  /** Names that may be the same but for capitals. SQLite tells those of English letters itself. */
  private List<String> like(String kind, String name) {
    return StandardCharsets.US_ASCII.newEncoder().canEncode(name)
        ? store.query(
            "SELECT name FROM %s WHERE name = ?".formatted(kind), row -> row.text("name"), name)
        : store.query("SELECT name FROM " + kind, row -> row.text("name"));
  }
}
