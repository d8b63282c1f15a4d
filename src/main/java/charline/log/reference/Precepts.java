package charline.log.reference;

import charline.exposure.Emission;
import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.trial.Caution;
import charline.trial.SubstanceFacts;
import charline.trial.TestDemand;
import charline.trial.WoodForm;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Cautions and tests that come with the program, and what each is about. A word that somebody added
 * calls for all that the one calls for that it is like, and is never without.
 */
final class Precepts {
  /**
   * What cautions are asked for.
   *
   * @param families of all coats
   * @param coats words in which the finish and its coats are named
   * @param boards words in which the board is named
   * @param wood the log's word, if it is known
   * @param form if it is known
   * @param emission if it is known
   */
  record Subject(
      Set<String> families,
      CoatWords coats,
      CoatWords boards,
      Optional<String> wood,
      Optional<WoodForm> form,
      Optional<Emission> emission) {}

  /** When a caution is shown: all that is named must fit. */
  private record Scope(
      Optional<String> family,
      Optional<String> wood,
      Optional<String> woodKind,
      Optional<String> form,
      Optional<String> emission,
      Optional<String> coatWord,
      Optional<String> boardWord) {
    static Scope of(ResultRow row) throws SQLException {
      return new Scope(
          row.optionalText("family"),
          row.optionalText("wood"),
          row.optionalText("wood_kind"),
          row.optionalText("form"),
          row.optionalText("emission"),
          row.optionalText("coat_word"),
          row.optionalText("board_word"));
    }

    boolean always() {
      return Stream.of(family, wood, woodKind, form, emission, coatWord, boardWord)
          .noneMatch(Optional::isPresent);
    }
  }

  private record Ruled(int rank, OptionalDouble coveredBy, Caution caution, List<Scope> scopes) {}

  private record Rule(Optional<String> family, Optional<String> coatWord, TestDemand demand) {}

  private final List<Ruled> cautions;
  private final List<Rule> rules;
  private final List<SubstanceFacts> substances;
  private final Map<String, String> kindOfWood = new HashMap<>();
  private final Map<String, String> substanceByWord = new HashMap<>();
  private final Map<String, String> likeWood = new HashMap<>();
  private final Map<String, String> likeFamily = new HashMap<>();

  Precepts(Database database) {
    Map<Integer, List<Scope>> scopes = new HashMap<>();
    database.query(
        "SELECT * FROM caution_scope",
        row ->
            scopes
                .computeIfAbsent(row.whole("caution"), rank -> new ArrayList<>())
                .add(Scope.of(row)));
    cautions =
        database.query(
            "SELECT * FROM caution ORDER BY coalesce(shown_as, rank), rank",
            row -> ruled(row, scopes.getOrDefault(row.whole("rank"), List.of())));
    rules =
        database.query(
            "SELECT * FROM coat_test ORDER BY rowid",
            row ->
                new Rule(
                    row.optionalText("family"),
                    row.optionalText("coat_word"),
                    new TestDemand(
                        row.text("substance"), TestDemand.Strictness.ofWord(row.text("demand")))));
    database.query(
        "SELECT name, kind FROM wood", row -> kindOfWood.put(row.text("name"), row.text("kind")));
    database.query(
        "SELECT name, like_wood FROM own_wood",
        row -> likeWood.put(row.text("name"), row.text("like_wood")));
    kindOfWood.keySet().removeAll(likeWood.keySet()); // theirs is that of the one they are like
    database.query(
        "SELECT name, like_family FROM own_family",
        row -> likeFamily.put(row.text("name"), row.text("like_family")));
    Map<String, List<String>> aliases = new HashMap<>();
    database.query(
        "SELECT alias, substance FROM substance_alias ORDER BY rowid",
        row ->
            aliases
                .computeIfAbsent(row.text("substance"), name -> new ArrayList<>())
                .add(row.text("alias")));
    substances =
        database.query(
            "SELECT * FROM substance ORDER BY rowid",
            row ->
                new SubstanceFacts(
                    row.text("name"),
                    aliases.getOrDefault(row.text("name"), List.of()),
                    row.text("found_means"),
                    row.whole("bars_beam") == 1,
                    row.text("source")));
    for (SubstanceFacts substance : substances) {
      substanceByWord.put(WordKey.key(substance.name()), substance.name());
      substance.aliases().forEach(a -> substanceByWord.put(WordKey.key(a), substance.name()));
    }
  }

  private static Ruled ruled(ResultRow row, List<Scope> scopes) throws SQLException {
    return new Ruled(
        row.whole("rank"),
        row.optionalNumber("covered_by"),
        new Caution(
            row.text("topic"),
            row.text("text"),
            row.text("source"),
            row.optionalText("in_short"),
            row.optionalText("brief"),
            scopes.stream().anyMatch(Scope::always)),
        scopes);
  }

  /** Words with all that they are like. */
  private static Set<String> withLikes(Collection<String> words, Map<String, String> likes) {
    Set<String> all = new LinkedHashSet<>();
    for (String word : words) {
      for (String each = word; each != null && all.add(each); ) {
        each = likes.get(each);
      }
    }
    return all;
  }

  /** Those of one family on any wood, most serious first; those of every family are left out. */
  List<Caution> cautionsOf(String family) {
    Set<String> families = withLikes(Set.of(family), likeFamily);
    return cautions.stream()
        .filter(
            ruled ->
                ruled.scopes().stream()
                    .anyMatch(scope -> scope.family().filter(families::contains).isPresent()))
        .map(Ruled::caution)
        .toList();
  }

  /** Those that fit, most serious first. */
  List<Caution> cautions(Subject about) {
    Subject subject =
        new Subject(
            withLikes(about.families(), likeFamily),
            about.coats(),
            about.boards(),
            about.wood(),
            about.form(),
            about.emission());
    List<Ruled> fitting =
        cautions.stream()
            .filter(ruled -> ruled.scopes().stream().anyMatch(scope -> fits(scope, subject)))
            .toList();
    return fitting.stream()
        .filter(
            ruled ->
                ruled.coveredBy().isEmpty()
                    || fitting.stream()
                        .noneMatch(other -> other.rank() == ruled.coveredBy().getAsDouble()))
        .map(Ruled::caution)
        .toList();
  }

  List<Caution> everyCaution() {
    return cautions.stream().map(Ruled::caution).toList();
  }

  private boolean fits(Scope scope, Subject subject) {
    return scope.family().stream().allMatch(subject.families()::contains)
        && scope.wood().stream().allMatch(woods(subject)::contains)
        && scope.woodKind().stream()
            .allMatch(kind -> woods(subject).stream().map(kindOfWood::get).anyMatch(kind::equals))
        && scope.form().stream()
            .allMatch(form -> subject.form().map(WoodForm::word).filter(form::equals).isPresent())
        && scope.emission().stream()
            .allMatch(
                light -> subject.emission().map(Emission::word).filter(light::equals).isPresent())
        && scope.coatWord().stream().allMatch(subject.coats()::hold)
        && scope.boardWord().stream().allMatch(subject.boards()::hold);
  }

  private Set<String> woods(Subject subject) {
    return withLikes(subject.wood().stream().toList(), likeWood);
  }

  /** One demand for each substance, the strictest; none for what a coat is free of by its name. */
  List<TestDemand> demands(Set<String> named, CoatWords words) {
    Set<String> families = withLikes(named, likeFamily);
    Map<String, TestDemand> strictest = new LinkedHashMap<>();
    rules.stream()
        .filter(
            rule ->
                rule.family().stream().allMatch(families::contains)
                    && rule.coatWord().stream().allMatch(words::hold))
        .map(Rule::demand)
        .forEach(
            demand ->
                strictest.merge(
                    demand.substance(),
                    demand,
                    (a, b) -> a.strictness().compareTo(b.strictness()) <= 0 ? a : b));
    return strictest.values().stream()
        .filter(demand -> demand.strictness() != TestDemand.Strictness.KNOWN_FREE)
        .toList();
  }

  List<SubstanceFacts> substances() {
    return substances;
  }

  Optional<String> substance(String word) {
    return Optional.ofNullable(substanceByWord.get(WordKey.key(word)));
  }
}
