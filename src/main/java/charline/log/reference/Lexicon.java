package charline.log.reference;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.refusal.Refusal;
import charline.trial.FamilyFacts;
import charline.trial.WoodFacts;
import charline.trial.WoodForm;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Woods and coating families, those that come with the program and those that people added, and the
 * words for them.
 */
final class Lexicon {
  /** Generic names that say nothing of how woods are akin. */
  private static final Set<String> CATCH_ALL = Set.of("hardwood", "softwood");

  private static final String PANEL = "panel";

  private final Map<String, WoodFacts> woods = new LinkedHashMap<>();
  private final List<FamilyFacts> families;
  private final Map<String, String> woodByWord = new HashMap<>();
  private final Map<String, String> familyByWord = new HashMap<>();
  private final Map<String, Set<String>> kindsOfWood = new HashMap<>();
  private final Map<String, String> unclearWoods;
  private final Map<String, String> unclearFamilies;

  Lexicon(Database database) {
    Map<String, List<String>> woodAliases =
        aliases(database, "SELECT wood AS name, alias FROM wood_alias ORDER BY rowid");
    Map<String, List<String>> familyAliases =
        aliases(database, "SELECT family AS name, alias FROM family_alias ORDER BY rowid");
    database
        .query(
            "SELECT w.*, o.like_wood FROM wood w LEFT JOIN own_wood o ON o.name = w.name ORDER BY"
                + " w.name",
            row -> wood(row, woodAliases))
        .forEach(wood -> woods.put(wood.name(), wood));
    woods.replaceAll((name, wood) -> asTheOneItIsLike(wood));
    woods.values().forEach(this::note);
    Map<String, FamilyFacts> byName = new LinkedHashMap<>();
    database
        .query(
            "SELECT f.*, o.like_family FROM coating_family f LEFT JOIN own_family o ON o.name ="
                + " f.name ORDER BY f.rowid",
            row -> family(row, familyAliases))
        .forEach(family -> byName.put(family.name(), family));
    families = byName.values().stream().map(f -> asTheOneItIsLike(f, byName)).toList();
    woods.values().forEach(w -> woodByWord.put(WordKey.key(w.name()), w.name()));
    woods.values().forEach(w -> learn(woodByWord, w.name(), w.aliases()));
    families.forEach(f -> familyByWord.put(WordKey.key(f.name()), f.name()));
    families.forEach(f -> learn(familyByWord, f.name(), f.aliases()));
    unclearWoods = unclear(database, "wood");
    unclearFamilies = unclear(database, "family");
  }

  private static Map<String, List<String>> aliases(Database database, String sql) {
    Map<String, List<String>> aliases = new HashMap<>();
    database.query(
        sql,
        row ->
            aliases
                .computeIfAbsent(row.text("name"), n -> new ArrayList<>())
                .add(row.text("alias")));
    return aliases;
  }

  private static Map<String, String> unclear(Database database, String about) {
    Map<String, String> advice = new HashMap<>();
    database.query(
        "SELECT word, advice FROM unclear_word WHERE about = ?",
        row -> advice.put(WordKey.key(row.text("word")), row.text("advice")),
        about);
    return advice;
  }

  private static WoodFacts wood(ResultRow row, Map<String, List<String>> aliases)
      throws SQLException {
    return new WoodFacts(
        row.text("name"),
        aliases.getOrDefault(row.text("name"), List.of()),
        row.optionalText("generic"),
        row.text("kind"),
        row.optionalNumber("specific_gravity"),
        row.text("pores"),
        row.text("resin"),
        row.text("source"),
        row.optionalText("like_wood"));
  }

  /** Class, pores and resin of a wood that somebody added are those of the one that it is like. */
  private WoodFacts asTheOneItIsLike(WoodFacts wood) {
    if (wood.like().isEmpty()) {
      return wood;
    }
    WoodFacts root = woods.get(known(wood.name()));
    Optional<String> generic =
        root.kind().equals(PANEL)
            ? Optional.empty()
            : root.generic().or(() -> Optional.of(root.name()));
    return new WoodFacts(
        wood.name(),
        wood.aliases(),
        generic,
        root.kind(),
        wood.specificGravity(),
        root.pores(),
        root.resin(),
        wood.source(),
        wood.like());
  }

  /** The wood of the program that a wood is or is like. */
  private String known(String wood) {
    String name = wood;
    while (woods.get(name).like().isPresent()) {
      name = woods.get(name).like().get();
    }
    return name;
  }

  private void note(WoodFacts wood) {
    kindsOfWood.computeIfAbsent(wood.name(), n -> new LinkedHashSet<>()).add(wood.name());
    wood.generic()
        .ifPresent(
            g ->
                kindsOfWood
                    .computeIfAbsent(g, n -> new LinkedHashSet<>(Set.of(n)))
                    .add(wood.name()));
  }

  private static FamilyFacts family(ResultRow row, Map<String, List<String>> aliases)
      throws SQLException {
    return new FamilyFacts(
        row.text("name"),
        aliases.getOrDefault(row.text("name"), List.of()),
        row.text("usual_film"),
        row.text("clue"),
        row.text("behaviour"),
        row.text("source"),
        row.optionalText("like_family"));
  }

  /** Film, clue and behaviour of a family that somebody added are those of the one it is like. */
  private static FamilyFacts asTheOneItIsLike(
      FamilyFacts family, Map<String, FamilyFacts> families) {
    FamilyFacts root = family;
    while (root.like().isPresent()) {
      root = families.get(root.like().get());
    }
    return family.like().isEmpty()
        ? family
        : new FamilyFacts(
            family.name(),
            family.aliases(),
            root.usualFilm(),
            root.clue(),
            root.behaviour(),
            family.source(),
            family.like());
  }

  /** A name counts before another's alias, which a merge may have brought. */
  private static void learn(Map<String, String> words, String name, List<String> aliases) {
    aliases.forEach(alias -> words.putIfAbsent(WordKey.key(alias), name));
  }

  List<WoodFacts> woods() {
    return List.copyOf(woods.values());
  }

  List<FamilyFacts> families() {
    return families;
  }

  String wood(String word) {
    return known("wood", woodByWord, unclearWoods, word);
  }

  String family(String word) {
    return known("coating family", familyByWord, unclearFamilies, word);
  }

  /** What a word means already, as "the wood pine"; empty if it is free. */
  Optional<String> meaning(String word) {
    String key = WordKey.key(word);
    return Optional.ofNullable(woodByWord.get(key))
        .map(name -> "the wood " + name)
        .or(() -> Optional.ofNullable(familyByWord.get(key)).map(name -> "the family " + name))
        .or(
            () ->
                Optional.of(key)
                    .filter(k -> unclearWoods.containsKey(k) || unclearFamilies.containsKey(k))
                    .map(k -> "something else"));
  }

  /** What to say instead of a word that names no wood and no family, if that is known. */
  Optional<String> advice(String word) {
    String key = WordKey.key(word);
    return Optional.ofNullable(unclearWoods.get(key))
        .or(() -> Optional.ofNullable(unclearFamilies.get(key)));
  }

  private static String known(
      String kind, Map<String, String> words, Map<String, String> unclear, String word) {
    String name = words.get(WordKey.key(word));
    if (name == null) {
      String advice = unclear.get(WordKey.key(word));
      throw advice == null ? Nearest.refusal(kind, word, words.keySet()) : Refusal.usage(advice);
    }
    return name;
  }

  /** The wood itself and, for a generic wood, its species. */
  Set<String> kindsOf(String wood) {
    return kindsOfWood.get(wood(wood));
  }

  /** Other woods of the same generic wood, that wood included: white oak and oak for red oak. */
  Set<String> near(String wood) {
    WoodFacts facts = woods.get(wood(wood));
    String generic = facts.generic().orElse(facts.name());
    if (CATCH_ALL.contains(generic)) {
      return Set.of();
    }
    Set<String> near = new TreeSet<>(kindsOfWood.get(generic));
    near.add(generic);
    near.remove(facts.name());
    return near;
  }

  /** The form that a wood has where none is given: a panel its own, all else solid. */
  WoodForm usualForm(String wood) {
    return WoodForm.ofPanel(known(wood(wood))).orElse(WoodForm.SOLID);
  }
}
