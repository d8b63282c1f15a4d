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
 * Woods, coating families and cautions that come with the program. The words are read when one is
 * first asked for, since recording a patch asks for none.
 */
public final class Reference {
  private final Database database;
  private volatile Lexicon read;

  public Reference(Database database) {
    this.database = database;
  }

  /** Two threads may both read it, which is the same twice. */
  private Lexicon lexicon() {
    if (read == null) {
      read = new Lexicon(database);
    }
    return read;
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

  /** Cautions that any of the families calls for, on a wood in a form, under one kind of light. */
  public List<Caution> cautions(
      Collection<String> families, String wood, Optional<WoodForm> form, Emission emission) {
    String named = "," + String.join(",", families) + ",";
    return database.query(
        """
        SELECT * FROM caution c WHERE EXISTS (
          SELECT 1 FROM caution_scope s WHERE s.caution = c.rank
            AND (s.family IS NULL OR instr(?1, ',' || s.family || ',') > 0)
            AND (s.wood IS NULL OR s.wood = ?2)
            AND (s.wood_kind IS NULL OR s.wood_kind = (SELECT kind FROM wood WHERE name = ?2))
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
