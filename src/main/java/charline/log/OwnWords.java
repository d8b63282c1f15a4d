package charline.log;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.log.reference.Reference;
import charline.refusal.Refusal;
import charline.trial.OwnWord;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/**
 * Woods and coating families that people added. Each is a row beside those that come with the
 * program, so that boards and finishes can refer to it, and one that says what it is like.
 */
public final class OwnWords {
  /** What a word names. */
  public enum Sort {
    WOOD("wood", "wood", "own_wood", "like_wood", "wood_alias"),
    FAMILY("family", "coating_family", "own_family", "like_family", "family_alias");

    private final String word;
    private final String facts;
    private final String table;
    private final String like;
    private final String aliases;

    Sort(String word, String facts, String table, String like, String aliases) {
      this.word = word;
      this.facts = facts;
      this.table = table;
      this.like = like;
      this.aliases = aliases;
    }

    /** "wood" or "family". */
    public String word() {
      return word;
    }
  }

  /**
   * A word with who added it.
   *
   * @param by who added it, if noted
   */
  public record Added(OwnWord word, Optional<String> by) {}

  private final Database database;
  private final Reference reference;
  private final History history;
  private final Supplier<OffsetDateTime> now;

  OwnWords(Database database, Reference reference, History history, Supplier<OffsetDateTime> now) {
    this.database = database;
    this.reference = reference;
    this.history = history;
    this.now = now;
  }

  /** All of one sort, by name. */
  public List<Added> all(Sort sort) {
    List<Added> all = new ArrayList<>();
    database.query(
        "SELECT * FROM %s ORDER BY name".formatted(sort.table),
        row -> all.add(new Added(read(sort, row), row.optionalText("recorded_by"))));
    return all;
  }

  /** Who added each word of one sort, by its name; null where not noted. */
  public Map<String, String> people(Sort sort) {
    Map<String, String> people = new HashMap<>();
    all(sort).forEach(added -> people.put(added.word().name(), added.by().orElse(null)));
    return people;
  }

  /** The word of that name, if somebody added it. */
  public Optional<Added> find(Sort sort, String name) {
    return all(sort).stream().filter(added -> added.word().name().equals(name)).findAny();
  }

  private OwnWord read(Sort sort, ResultRow row) throws SQLException {
    return new OwnWord(
        row.id("id"),
        row.text("name"),
        database.query(
            "SELECT alias FROM %s WHERE %s = ? ORDER BY rowid".formatted(sort.aliases, sort.word),
            alias -> alias.text("alias"),
            row.text("name")),
        row.text(sort.like));
  }

  /** Records a word. From then on it is known wherever the log's words are. */
  public void add(Sort sort, OwnWord word, String by) {
    String person = Logbook.person(by);
    OffsetDateTime moment = now.get();
    database.inTransaction(
        () -> {
          requireFree(word);
          addFacts(
              sort,
              word,
              "added by %s on %s"
                  .formatted(person == null ? "somebody" : person, moment.toLocalDate()));
          database.insert(
              sort.table,
              new RowValues()
                  .put("id", word.id())
                  .put("name", word.name())
                  .put(sort.like, word.like())
                  .moment("recorded_at", moment)
                  .put("recorded_by", person));
          return null;
        });
  }

  private void addFacts(Sort sort, OwnWord word, String source) {
    RowValues values = new RowValues().put("name", word.name()).put("source", source);
    if (sort == Sort.WOOD) {
      String kind =
          database
              .first("SELECT kind FROM wood WHERE name = ?", row -> row.text("kind"), word.like())
              .orElseThrow();
      values.put("kind", kind).put("pores", "").put("resin", "");
    } else {
      values.put("usual_film", "").put("clue", "").put("behaviour", "");
    }
    database.insert(sort.facts, values);
    for (String alias : word.aliases()) {
      database.insert(
          sort.aliases, new RowValues().put("alias", alias).put(sort.word, word.name()));
    }
  }

  private void requireFree(OwnWord word) {
    Set<String> seen = new HashSet<>();
    List<String> words = new ArrayList<>(List.of(word.name()));
    words.addAll(word.aliases());
    for (String each : words) {
      reference
          .advice(each)
          .ifPresent(
              advice -> {
                throw Refusal.usage(advice);
              });
      reference
          .meaning(each)
          .ifPresent(
              meaning -> {
                throw Refusal.usage(
                    "The word \"%s\" means %s already; choose another.".formatted(each, meaning));
              });
      if (!seen.add(each.toLowerCase(Locale.ROOT))) {
        throw Refusal.usage("The word \"%s\" is given twice; leave one out.".formatted(each));
      }
    }
  }

  /** Says anew what a word is like; a reason must be given. */
  public void amend(Sort sort, OwnWord word, String like, String by, String why) {
    history.amending(
        now.get(),
        Logbook.person(by),
        Logbook.reason(why),
        () -> {
          requireNoCircle(sort, word.name(), like);
          database.update(
              "UPDATE %s SET %s = ? WHERE id = ?".formatted(sort.table, sort.like),
              like,
              word.id());
        });
  }

  /** Every change to a word, oldest first. */
  public List<Change> history(OwnWord word) {
    return history.of(word.id());
  }

  private void requireNoCircle(Sort sort, String name, String like) {
    for (Optional<Added> next = find(sort, like); next.isPresent(); ) {
      OwnWord at = next.get().word();
      if (at.name().equals(name) || at.like().equals(name)) {
        throw Refusal.usage(
            "A %s cannot be like itself; %s is like %s."
                .formatted(sort.word, at.name(), at.like()));
      }
      next = find(sort, at.like());
    }
  }
}
