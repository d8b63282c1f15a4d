package charline.log.search;

import charline.exposure.Figure;
import charline.log.Logbook;
import charline.log.PatchCode;
import charline.log.database.Database;
import charline.log.reference.Reference;
import charline.log.reference.WordKey;
import charline.trial.FamilyFacts;
import charline.trial.WoodFacts;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * The words of one log that a question may use: coating families and woods with their aliases, and
 * the log's own rigs, boards, finishes, jobs and people. Where one word means two things, the first
 * in that order is meant: a job called "pine" gives way to the wood.
 */
public final class Vocabulary {
  /**
   * A log may have very many boards, so only names that a question can mean are learnt: those that
   * things have, and those that they had before or that was joined into them, unless something else
   * is called so now.
   */
  private static final Map<Attribute, String> NAMES =
      new EnumMap<>(
          Map.of(
              Attribute.RIG, named("rig"),
              Attribute.BOARD, named("board"),
              Attribute.FINISH, named("finish"),
              Attribute.JOB,
                  "SELECT DISTINCT job AS name, job AS called FROM board WHERE job IS NOT NULL"));

  private static String named(String table) {
    return """
    SELECT k.name, t.name AS called FROM %1$s_known_as k JOIN %1$s t ON t.id = k.id
    WHERE k.former = 0 OR NOT EXISTS
      (SELECT 1 FROM %1$s_known_as o WHERE o.name = k.name COLLATE NOCASE AND o.former < k.former)
    """
        .formatted(table);
  }

  /**
   * Lets a name through that begins as something in the question does, and ends in a number of the
   * question if it ends in one: boards are often numbered. What begins with other than two letters
   * of English or digits may begin in any way, since SQLite knows the small letters of no other.
   */
  private static final String MAY_BE_HELD =
      """
      (instr(?1, lower(substr(name, 1, 2))) > 0
          OR name GLOB '[^0-9A-Za-z]*' OR name GLOB '?[^0-9A-Za-z]*')
        AND instr(?1, substr(name, length(rtrim(name, '0123456789')) + 1)) > 0
      """;

  private static final String PEOPLE =
      """
      SELECT burned_by AS name, burned_by AS called FROM patch WHERE burned_by IS NOT NULL
      UNION SELECT judged_by, judged_by FROM reading WHERE judged_by IS NOT NULL
      """;

  /** The first letters of a word of a name, from so many on, mean the name. */
  private static final int SHORTEST_BEGINNING = 4;

  private static final Pattern SIGNS = Pattern.compile("[^\\p{L}\\p{N}]+");

  private record Name(String name, String called) {}

  private final Map<String, Term> terms = new HashMap<>();
  private final Map<String, Term> people = new HashMap<>();
  private final Set<String> words = new TreeSet<>();
  private final Map<Attribute, List<Name>> everyName = new EnumMap<>(Attribute.class);
  private int longest = 1;

  private final Database database;
  private final Reference reference;
  private boolean peopleKnown;

  private Vocabulary(Logbook log) {
    database = log.database();
    reference = log.reference();
  }

  /** The words of a log, those that it came with and those that it has learnt. */
  public static Vocabulary of(Logbook log) {
    return log.database().inSnapshot(() -> read(log));
  }

  private static Vocabulary read(Logbook log) {
    Vocabulary vocabulary = new Vocabulary(log);
    for (FamilyFacts family : log.reference().families()) {
      vocabulary.learn(Attribute.FAMILY, Set.of(family.name()), family.name(), family.aliases());
    }
    for (WoodFacts wood : log.reference().woods()) {
      vocabulary.learn(
          Attribute.WOOD, log.reference().kindsOf(wood.name()), wood.name(), wood.aliases());
    }
    return vocabulary;
  }

  /** What is known of all woods. */
  public List<WoodFacts> woods() {
    return reference.woods();
  }

  /** What to say to a word that names no wood and no family, if that is known. */
  public Optional<String> advice(String word) {
    return reference.advice(word);
  }

  /** Learns those of the log's own names that a question may hold. */
  public void meetNames(String question) {
    NAMES.forEach(
        (attribute, sql) ->
            names(
                    "SELECT name, called FROM (%s) WHERE %s".formatted(sql, MAY_BE_HELD),
                    question.toLowerCase(Locale.ROOT))
                .forEach(n -> learn(attribute, Set.of(n.called()), n.name(), List.of())));
    Figure.words().forEach(f -> learn(Attribute.FIGURE, Set.of(f), f, List.of()));
  }

  private List<Name> names(String sql, Object... values) {
    return database.query(sql, row -> new Name(row.text("name"), row.text("called")), values);
  }

  private void learn(
      Attribute attribute, Set<String> values, String name, Collection<String> aliases) {
    List<String> all = new ArrayList<>(aliases);
    all.add(name);
    for (String word : all) {
      String key = WordKey.key(word);
      if (!key.isEmpty()) {
        terms.merge(key, new Term(attribute, values), Vocabulary::sooner);
        words.add(word);
        longest = Math.max(longest, key.split(" ").length);
      }
    }
  }

  /** Two names that differ in a hyphen or a blank alone are both meant. */
  private static Term sooner(Term known, Term other) {
    int order = known.attribute().compareTo(other.attribute());
    if (order == 0 && known.attribute().compareTo(Attribute.RIG) >= 0) {
      return both(known, other);
    }
    return order > 0 ? other : known;
  }

  private static Term both(Term known, Term other) {
    Set<String> both = new LinkedHashSet<>(known.values());
    both.addAll(other.values());
    return new Term(known.attribute(), both);
  }

  /** The meaning of one or several words, if known. */
  public Optional<Term> term(String phrase) {
    return Optional.ofNullable(terms.get(WordKey.key(phrase)));
  }

  /** Most words that any term has. */
  public int longest() {
    return longest;
  }

  /**
   * Who is called so, or has it in the name. To learn who burned and judged takes a look at every
   * patch and reading, so ask for words that have no other meaning.
   */
  public Optional<Term> person(String phrase) {
    if (!peopleKnown) {
      peopleKnown = true;
      names(PEOPLE)
          .forEach(
              n ->
                  people.merge(
                      WordKey.key(n.name()),
                      new Term(Attribute.PERSON, Set.of(n.called())),
                      Vocabulary::both));
    }
    String key = WordKey.key(phrase);
    Term known = people.get(key);
    return known != null
        ? Optional.of(known)
        : people.entrySet().stream()
            .filter(e -> (" " + e.getKey() + " ").contains(" " + key + " "))
            .map(Map.Entry::getValue)
            .reduce(Vocabulary::both);
  }

  /** Everybody who burned or judged. */
  public Set<String> people() {
    person("");
    Set<String> all = new TreeSet<>();
    people.values().forEach(p -> all.addAll(p.values()));
    return all;
  }

  /**
   * Rigs, boards, finishes and jobs that have these words in their names, each attribute a term;
   * the last word may be the beginning of one.
   */
  public List<Term> partly(String phrase) {
    String key = WordKey.key(phrase);
    List<Term> found = new ArrayList<>();
    NAMES.forEach(
        (attribute, sql) -> {
          Set<String> called = new TreeSet<>();
          everyName
              .computeIfAbsent(attribute, a -> names(sql))
              .forEach(
                  n -> {
                    if (holds(WordKey.key(n.name()), key)) {
                      called.add(n.called());
                    }
                  });
          if (!called.isEmpty()) {
            found.add(new Term(attribute, called));
          }
        });
    return found;
  }

  private static boolean holds(String name, String key) {
    String begins = key.length() >= SHORTEST_BEGINNING ? " " + key : " " + key + " ";
    return !key.isBlank() && (" " + name + " ").contains(begins);
  }

  /** A figure by a person's own word, which takes a look at every patch to be known. */
  public Optional<Term> ownFigure(String word) {
    return database
        .first(
            "SELECT figure FROM patch WHERE figure = ?1 COLLATE NOCASE UNION SELECT figure FROM rig"
                + " WHERE figure = ?1 COLLATE NOCASE LIMIT 1",
            row -> row.text("figure"),
            word)
        .map(figure -> new Term(Attribute.FIGURE, Set.of(figure)));
  }

  /** The conditions of boards that have these words in them. */
  public Optional<Term> conditions(String phrase) {
    Set<String> found = new TreeSet<>();
    database
        .query(
            "SELECT DISTINCT condition FROM board WHERE condition IS NOT NULL",
            row -> row.text("condition"))
        .stream()
        .filter(condition -> hasWords(condition, phrase))
        .forEach(found::add);
    return found.isEmpty() ? Optional.empty() : Optional.of(new Term(Attribute.CONDITION, found));
  }

  /** Whether a note of a patch or a reading has these words in it. */
  public boolean inNotes(String phrase) {
    String like = "%" + phrase.toLowerCase(Locale.ROOT).replace("%", "").replace(' ', '%') + "%";
    return database
        .query(
            "SELECT note FROM patch WHERE note LIKE ?1 UNION SELECT note FROM reading WHERE note"
                + " LIKE ?1",
            row -> row.text("note"),
            like)
        .stream()
        .anyMatch(note -> hasWords(note, phrase));
  }

  /** Whether a text has these words side by side, the last perhaps in the plural. */
  static boolean hasWords(String text, String phrase) {
    String words = plain(phrase);
    String all = " " + plain(text) + " ";
    return !words.isBlank()
        && (all.contains(" " + words + " ") || all.contains(" " + words + "s "));
  }

  private static String plain(String text) {
    return SIGNS.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(" ").strip();
  }

  /** The code of the patch, void or not, that a word names, if there is one. */
  public Optional<String> patchCode(String word) {
    return database.first(
        "SELECT code FROM patch WHERE code = ?1 OR code = ?2 ORDER BY code <> ?1",
        row -> row.text("code"),
        word,
        PatchCode.spelledOut(word).orElse(word));
  }

  /** Every word of the log, as written. */
  public Set<String> words() {
    NAMES.forEach(
        (attribute, sql) ->
            everyName
                .computeIfAbsent(attribute, a -> names(sql))
                .forEach(n -> words.add(n.name())));
    return words;
  }
}
