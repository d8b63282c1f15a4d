package charline.log.reference;

import charline.exposure.Emission;
import charline.log.database.Database;
import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.FamilyFacts;
import charline.trial.Finish;
import charline.trial.WoodFacts;
import charline.trial.WoodForm;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Woods, coating families and cautions: those that come with the program, and words that people
 * added. The words are read when one is first asked for, since recording a patch asks for none, and
 * again when somebody added one.
 */
public final class Reference {
  private final Database database;
  private volatile Read read;

  /** The words as they were in a state of the log. */
  private record Read(String state, Lexicon lexicon) {}

  public Reference(Database database) {
    this.database = database;
  }

  /** Two threads may both read it, which is the same twice. */
  private Lexicon lexicon() {
    String state = state();
    Read known = read;
    if (known == null || !known.state().equals(state)) {
      known = new Read(state, new Lexicon(database));
      read = known;
    }
    return known.lexicon();
  }

  /** Differs after anyone, in this program or another, added a word or said what it is like. */
  private String state() {
    return database
        .first(
            """
            SELECT coalesce((SELECT group_concat(name || ' ' || like_wood) FROM own_wood), '')
              || ';' || coalesce((SELECT group_concat(name || ' ' || like_family) FROM own_family), '')
              || ';' || (SELECT count(*) FROM wood_alias) || ' ' || (SELECT count(*) FROM family_alias)
              AS state
            """,
            row -> row.text("state"))
        .orElseThrow();
  }

  public List<WoodFacts> woods() {
    return lexicon().woods();
  }

  public List<FamilyFacts> families() {
    return lexicon().families();
  }

  public String wood(String word) {
    return lexicon().wood(word);
  }

  public String family(String word) {
    return lexicon().family(word);
  }

  /** What a word means already, as "the wood pine"; empty if it is free. */
  public Optional<String> meaning(String word) {
    return lexicon().meaning(word);
  }

  /** What to say instead of a word that names no wood and no family, if that is known. */
  public Optional<String> advice(String word) {
    return lexicon().advice(word);
  }

  /** Other woods of the same generic wood, that wood included. */
  public Set<String> near(String wood) {
    return lexicon().near(wood);
  }

  /** The form that a wood has where none is given. */
  public WoodForm usualForm(String wood) {
    return lexicon().usualForm(wood);
  }

  /** The wood itself and, for a generic wood, its species. */
  public Set<String> kindsOf(String wood) {
    return lexicon().kindsOf(wood);
  }

  /** Cautions for all coats of a finish on a board. */
  public List<Caution> cautions(Finish finish, Board board, Emission emission) {
    Set<String> all = new LinkedHashSet<>(Set.of(finish.family()));
    finish.coats().forEach(coat -> all.add(coat.family()));
    return cautions(all, board.wood(), Optional.of(board.form()), emission);
  }

  /** Cautions that a family calls for on any wood, beside those that every family does. */
  public List<Caution> cautionsOf(String family) {
    return database.query(
        """
        WITH RECURSIVE families (name) AS (
          SELECT ?1 UNION SELECT o.like_family FROM own_family o JOIN families f ON o.name = f.name)
        SELECT * FROM caution WHERE rank IN (
          SELECT caution FROM caution_scope WHERE family IN families)
        ORDER BY rank
        """,
        row -> new Caution(row.text("topic"), row.text("text"), row.text("source")),
        family(family));
  }

  /**
   * Cautions that any of the families calls for, on a wood in a form, under one kind of light. A
   * word that somebody added calls for all that the one calls for that it is like.
   */
  public List<Caution> cautions(
      Collection<String> families, String wood, Optional<WoodForm> form, Emission emission) {
    String named = "," + String.join(",", families) + ",";
    return database.query(
        """
        WITH RECURSIVE
          families (name) AS (
            SELECT name FROM coating_family WHERE instr(?1, ',' || name || ',') > 0
            UNION SELECT o.like_family FROM own_family o JOIN families f ON o.name = f.name),
          woods (name) AS (
            SELECT ?2 UNION SELECT o.like_wood FROM own_wood o JOIN woods w ON o.name = w.name)
        SELECT * FROM caution c WHERE EXISTS (
          SELECT 1 FROM caution_scope s WHERE s.caution = c.rank
            AND (s.family IS NULL OR s.family IN families)
            AND (s.wood IS NULL OR s.wood IN woods)
            AND (s.wood_kind IS NULL
              OR s.wood_kind IN (SELECT kind FROM wood WHERE name IN woods))
            AND (s.form IS NULL OR s.form = ?3)
            AND (s.emission IS NULL OR s.emission = ?4))
        ORDER BY c.rank
        """,
        row -> new Caution(row.text("topic"), row.text("text"), row.text("source")),
        named,
        wood,
        form.map(WoodForm::word),
        emission.word());
  }
}
