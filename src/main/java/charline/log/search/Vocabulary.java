package charline.log.search;

import charline.log.Logbook;
import charline.log.PatchCode;
import charline.log.database.Database;
import charline.log.reference.WordKey;
import charline.trial.FamilyFacts;
import charline.trial.Mark;
import charline.trial.WoodFacts;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The words of one log that a question may use: coating families and woods with their aliases,
 * marks, and the log's own rigs, boards, finishes, jobs and people. Where one word means two
 * things, the first in that order is meant: a job called "pine" gives way to the wood.
 */
public final class Vocabulary {
  /** What a word narrows. */
  enum Facet {
    FAMILY,
    WOOD,
    MARK,
    RIG,
    BOARD,
    FINISH,
    JOB,
    PERSON
  }

  /** A word's meaning: any of the values of a facet. */
  record Term(Facet facet, Set<String> values) {}

  /** What people ask for who want clean patches. */
  private static final List<String> WORKED = List.of("worked", "works");

  /**
   * A log may have very many boards, so only names that a question can mean are learnt: those that
   * things have, and those that they had before or that was joined into them, unless something else
   * is called so now.
   */
  private static final Map<Facet, String> NAMES =
      Map.of(
          Facet.RIG, named("rig"),
          Facet.BOARD, named("board"),
          Facet.FINISH, named("finish"),
          Facet.JOB, "SELECT DISTINCT job AS name, job AS called FROM board WHERE job IS NOT NULL");

  private static String named(String table) {
    return """
        SELECT k.name, t.name AS called FROM %1$s_known_as k JOIN %1$s t ON t.id = k.id
        WHERE k.former = 0 OR NOT EXISTS
          (SELECT 1 FROM %1$s_known_as o WHERE o.name = k.name COLLATE NOCASE AND o.former < k.former)
        """
        .formatted(table);
  }

  /**
   * Lets a name through that begins as something in the question does; and any that begins with
   * other than two letters of English or digits, since SQLite knows the small letters of no other.
   */
  private static final String MAY_BE_HELD =
      """
      instr(?, lower(substr(name, 1, 2))) > 0
        OR name GLOB '[^0-9A-Za-z]*' OR name GLOB '?[^0-9A-Za-z]*'
      """;

  private final Map<String, Term> terms = new HashMap<>();
  private final Set<String> words = new TreeSet<>();
  private int longest = 1;

  private final Database database;
  private boolean people;

  private Vocabulary(Database database) {
    this.database = database;
  }

  /** The words of a log, those that it came with and those that it has learnt. */
  public static Vocabulary of(Logbook log) {
    return log.database().inSnapshot(() -> read(log));
  }

  private static Vocabulary read(Logbook log) {
    Vocabulary vocabulary = new Vocabulary(log.database());
    for (FamilyFacts family : log.reference().families()) {
      vocabulary.learn(Facet.FAMILY, Set.of(family.name()), family.name(), family.aliases());
    }
    for (WoodFacts wood : log.reference().woods()) {
      vocabulary.learn(
          Facet.WOOD, log.reference().kindsOf(wood.name()), wood.name(), wood.aliases());
    }
    for (Mark mark : Mark.values()) {
      vocabulary.learn(Facet.MARK, Set.of(mark.word()), mark.word(), mark.others());
    }
    String clean = Mark.CLEAN.word();
    vocabulary.learn(Facet.MARK, Set.of(clean), clean, WORKED);
    return vocabulary;
  }

  /** Learns those of the log's own names that a question may hold. */
  void meetNames(String question) {
    NAMES.forEach(
        (facet, sql) ->
            learnNames(
                facet,
                "SELECT name, called FROM (%s) WHERE %s".formatted(sql, MAY_BE_HELD),
                question.toLowerCase(Locale.ROOT)));
  }

  /**
   * Learns who burned and judged. That takes a look at every patch and reading, so it waits for a
   * word that has no other meaning.
   *
   * @return false if they were known already
   */
  boolean meetPeople() {
    if (people) {
      return false;
    }
    people = true;
    learnNames(
        Facet.PERSON,
        """
        SELECT burned_by AS name, burned_by AS called FROM patch WHERE burned_by IS NOT NULL
        UNION SELECT judged_by, judged_by FROM reading WHERE judged_by IS NOT NULL
        """);
    return true;
  }

  private void learnNames(Facet facet, String sql, Object... values) {
    record Name(String name, String called) {}
    database
        .query(sql, row -> new Name(row.text("name"), row.text("called")), values)
        .forEach(known -> learn(facet, Set.of(known.called()), known.name(), List.of()));
  }

  private void learn(Facet facet, Set<String> values, String name, Collection<String> aliases) {
    List<String> all = new ArrayList<>(aliases);
    all.add(name);
    for (String word : all) {
      String key = WordKey.key(word);
      if (!key.isEmpty()) {
        terms.merge(key, new Term(facet, values), Vocabulary::sooner);
        words.add(word);
        longest = Math.max(longest, key.split(" ").length);
      }
    }
  }

  /** Two names that differ in a hyphen or a blank alone are both meant. */
  private static Term sooner(Term known, Term other) {
    int order = known.facet().compareTo(other.facet());
    if (order == 0 && known.facet().compareTo(Facet.RIG) >= 0) {
      Set<String> both = new LinkedHashSet<>(known.values());
      both.addAll(other.values());
      return new Term(known.facet(), both);
    }
    return order > 0 ? other : known;
  }

  /** The meaning of one or several words, if known. */
  Optional<Term> term(String phrase) {
    return Optional.ofNullable(terms.get(WordKey.key(phrase)));
  }

  /** Most words that any term has. */
  int longest() {
    return longest;
  }

  /** The code of the patch, void or not, that a word names, if there is one. */
  Optional<String> patchCode(String word) {
    return database.first(
        "SELECT code FROM patch WHERE code = ?1 OR code = ?2 ORDER BY code <> ?1",
        row -> row.text("code"),
        word,
        PatchCode.spelledOut(word).orElse(word));
  }

  /** Every word of the log apart from people not met yet, as written. */
  Set<String> words() {
    NAMES.forEach(this::learnNames);
    return words;
  }
}
