package charline.log.reference;

import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.trial.FamilyFacts;
import charline.trial.WoodFacts;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Woods and coating families that come with the program, and the words for them. */
final class Lexicon {
  private final List<WoodFacts> woods;
  private final List<FamilyFacts> families;
  private final Map<String, String> woodByWord = new HashMap<>();
  private final Map<String, String> familyByWord = new HashMap<>();
  private final Map<String, Set<String>> kindsOfWood = new HashMap<>();

  Lexicon(Database database) {
    Map<String, List<String>> woodAliases =
        aliases(database, "SELECT wood AS name, alias FROM wood_alias ORDER BY rowid");
    Map<String, List<String>> familyAliases =
        aliases(database, "SELECT family AS name, alias FROM family_alias ORDER BY rowid");
    woods =
        database.query(
            "SELECT * FROM wood ORDER BY name", row -> noted(wood(row, woodAliases), row));
    families =
        database.query(
            "SELECT * FROM coating_family ORDER BY rowid", row -> family(row, familyAliases));
    woods.forEach(w -> learn(woodByWord, w.name(), w.aliases()));
    families.forEach(f -> learn(familyByWord, f.name(), f.aliases()));
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

  private static WoodFacts wood(ResultRow row, Map<String, List<String>> aliases)
      throws SQLException {
    return new WoodFacts(
        row.text("name"),
        aliases.getOrDefault(row.text("name"), List.of()),
        row.optionalNumber("specific_gravity"),
        row.text("pores"),
        row.text("resin"),
        row.text("source"));
  }

  private WoodFacts noted(WoodFacts wood, ResultRow row) throws SQLException {
    kindsOfWood.computeIfAbsent(wood.name(), n -> new LinkedHashSet<>()).add(wood.name());
    Optional<String> generic = row.optionalText("generic");
    generic.ifPresent(
        g -> kindsOfWood.computeIfAbsent(g, n -> new LinkedHashSet<>(Set.of(n))).add(wood.name()));
    return wood;
  }

  private static FamilyFacts family(ResultRow row, Map<String, List<String>> aliases)
      throws SQLException {
    return new FamilyFacts(
        row.text("name"),
        aliases.getOrDefault(row.text("name"), List.of()),
        row.text("usual_film"),
        row.text("clue"),
        row.text("behaviour"),
        row.text("source"));
  }

  private static void learn(Map<String, String> words, String name, List<String> aliases) {
    words.put(WordKey.key(name), name);
    aliases.forEach(alias -> words.put(WordKey.key(alias), name));
  }

  List<WoodFacts> woods() {
    return woods;
  }

  List<FamilyFacts> families() {
    return families;
  }

  String wood(String word) {
    return known("wood", woodByWord, word);
  }

  String family(String word) {
    return known("coating family", familyByWord, word);
  }

  private static String known(String kind, Map<String, String> words, String word) {
    String name = words.get(WordKey.key(word));
    if (name == null) {
      throw Nearest.refusal(kind, word, words.keySet());
    }
    return name;
  }

  /** The wood itself and, for a generic wood, its species. */
  Set<String> kindsOf(String wood) {
    return kindsOfWood.get(wood(wood));
  }
}
