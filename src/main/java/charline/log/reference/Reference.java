package charline.log.reference;

import charline.exposure.Emission;
import charline.log.database.Database;
import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.FamilyFacts;
import charline.trial.Finish;
import charline.trial.SubstanceFacts;
import charline.trial.TestDemand;
import charline.trial.WoodFacts;
import charline.trial.WoodForm;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Woods, coating families and cautions: those that come with the program, and words that people
 * added. The words are read when one is first asked for, since recording a patch asks for none, and
 * again when somebody added one.
 */
public final class Reference {
  private final Database database;
  private volatile Read<Lexicon> read;
  private volatile Read<Precepts> kept;

  /** What was read in a state of the log. */
  private record Read<T>(String state, T what) {}

  public Reference(Database database) {
    this.database = database;
  }

  /** Two threads may both read it, which is the same twice. */
  private Lexicon lexicon() {
    read = current(read, Lexicon::new);
    return read.what();
  }

  private <T> Read<T> current(Read<T> known, Function<Database, T> reading) {
    String state = state();
    return known != null && known.state().equals(state)
        ? known
        : new Read<>(state, reading.apply(database));
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

  /** All woods, by name. */
  public List<WoodFacts> woods() {
    return lexicon().woods();
  }

  /** All coating families. */
  public List<FamilyFacts> families() {
    return lexicon().families();
  }

  /**
   * The log's own word for a wood ("pine"), from any of its aliases; nearest offered if unknown.
   */
  public String wood(String word) {
    return lexicon().wood(word);
  }

  /** The log's own word for a coating family ("latex"), from any of its aliases. */
  public String family(String word) {
    return lexicon().family(word);
  }

  /** What is known of a wood, by any of its names. */
  public WoodFacts woodFacts(String word) {
    String wood = wood(word);
    return woods().stream().filter(w -> w.name().equals(wood)).findAny().orElseThrow();
  }

  /** What is known of a coating family, by any of its names. */
  public FamilyFacts familyFacts(String word) {
    String family = family(word);
    return families().stream().filter(f -> f.name().equals(family)).findAny().orElseThrow();
  }

  /** What a word means already, as "the wood pine"; empty if it is free. */
  public Optional<String> meaning(String word) {
    return lexicon().meaning(word);
  }

  /** What to say instead of a word that names no wood and no family, if that is known. */
  public Optional<String> advice(String word) {
    return lexicon().advice(word);
  }

  /** Other woods of the same generic wood, that wood included: oak and white oak for red oak. */
  public Set<String> near(String wood) {
    return lexicon().near(wood);
  }

  /** The form that a wood has where none is given: a panel its own, all else solid. */
  public WoodForm usualForm(String wood) {
    return lexicon().usualForm(wood);
  }

  /** A wood with its species: "pine" gives pine, longleaf pine, ...; a species gives itself. */
  public Set<String> kindsOf(String wood) {
    return lexicon().kindsOf(wood);
  }

  /** Cautions for all coats of a finish on a board, most serious first. */
  public List<Caution> cautions(Finish finish, Board board, Emission emission) {
    return precepts()
        .cautions(
            new Precepts.Subject(
                familiesOf(finish),
                CoatWords.of(finish),
                wordsOf(board),
                Optional.of(board.wood()),
                Optional.of(board.form()),
                Optional.of(emission)));
  }

  /** Cautions that a family calls for on any wood, beside those that every family does. */
  public List<Caution> cautionsOf(String family) {
    return precepts().cautionsOf(family(family));
  }

  /** Cautions that the coats of a finish bring, whatever they are on; most serious first. */
  public List<Caution> cautions(Finish finish) {
    return precepts()
        .cautions(
            new Precepts.Subject(
                familiesOf(finish),
                CoatWords.of(finish),
                CoatWords.of(List.of()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()))
        .stream()
        .filter(caution -> !caution.always())
        .toList();
  }

  /** Cautions that a board brings, whatever is on it; most serious first. */
  public List<Caution> cautions(Board board) {
    return precepts()
        .cautions(
            new Precepts.Subject(
                Set.of(),
                CoatWords.of(List.of()),
                wordsOf(board),
                Optional.of(board.wood()),
                Optional.of(board.form()),
                Optional.empty()))
        .stream()
        .filter(caution -> !caution.always())
        .toList();
  }

  private static CoatWords wordsOf(Board board) {
    return CoatWords.of(
        Stream.concat(Stream.of(board.name()), board.condition().stream()).toList());
  }

  private static Set<String> familiesOf(Finish finish) {
    Set<String> all = new LinkedHashSet<>(Set.of(finish.family()));
    finish.coats().forEach(coat -> all.add(coat.family()));
    return all;
  }

  /** Cautions for a family on a wood with one kind of light, most serious first. */
  public List<Caution> cautions(String family, String wood, Emission emission) {
    return precepts()
        .cautions(
            new Precepts.Subject(
                Set.of(family(family)),
                CoatWords.of(List.of()),
                CoatWords.of(List.of()),
                Optional.of(wood(wood)),
                Optional.empty(),
                Optional.of(emission)));
  }

  /** All cautions, most serious first. */
  public List<Caution> everyCaution() {
    return precepts().everyCaution();
  }

  /** What the coats of a finish must be tested for before the beam is on, by substance. */
  public List<TestDemand> demands(Finish finish) {
    return precepts().demands(familiesOf(finish), CoatWords.of(finish));
  }

  /** What a coat of that family must be tested for before the beam is on. */
  public List<TestDemand> demands(String family) {
    return precepts().demands(Set.of(family(family)), CoatWords.of(List.of()));
  }

  /** What samples are tested for. */
  public List<SubstanceFacts> substances() {
    return precepts().substances();
  }

  /** The log's own word for a substance, from any of its aliases; empty for a person's own word. */
  public Optional<String> substance(String word) {
    return precepts().substance(word);
  }

  /** Two threads may both read them, which is the same twice. */
  private Precepts precepts() {
    kept = current(kept, Precepts::new);
    return kept.what();
  }
}
