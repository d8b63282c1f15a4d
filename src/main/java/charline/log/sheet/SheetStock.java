package charline.log.sheet;

import static charline.log.sheet.Column.*;

import charline.log.Logbook;
import charline.log.OwnWords;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.GivenName;
import charline.trial.Knob;
import charline.trial.Plausibility;
import charline.trial.Rig;
import charline.trial.Tone;
import charline.trial.WoodForm;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * The rigs, boards and finishes that a sheet speaks of: those of the log, and new boards and
 * finishes that the sheet brings. What a sheet says of a known one must agree.
 */
final class SheetStock {
  /** A board or finish with where it was first met, for messages. */
  private record Met<T>(T thing, String where) {}

  private final Logbook log;
  private final Faults faults;
  private final KnobCells knobs;
  private final CellDoubts doubts;
  private final SheetVocabulary words;
  private final CellMeanings<Object> answers = new CellMeanings<>();
  private final CellMeanings<WoodForm> usualForms = new CellMeanings<>();
  private final Map<String, Met<Board>> boards = new HashMap<>();
  private final Map<String, Met<Finish>> finishes = new HashMap<>();

  /** Those still to be recorded, with who used them first, null where not noted. */
  private final Map<Board, String> newBoards = new LinkedHashMap<>();

  private final Map<Finish, String> newFinishes = new LinkedHashMap<>();
  private int boardsBrought;
  private int finishesBrought;

  SheetStock(Logbook log, Faults faults, KnobCells knobs, CellDoubts doubts) {
    this.log = log;
    words = new SheetVocabulary(log);
    this.faults = faults;
    this.knobs = knobs;
    this.doubts = doubts;
    log.boards().forEach(b -> boards.put(key(b.name()), new Met<>(b, "in the log")));
    log.finishes().forEach(f -> finishes.put(key(f.name()), new Met<>(f, "in the log")));
  }

  /** How many boards the sheet brings that the log did not know. */
  int boardsBrought() {
    return boardsBrought;
  }

  /** How many finishes the sheet brings that the log did not know. */
  int finishesBrought() {
    return finishesBrought;
  }

  /** Takes what is new since the last call; gives what records it. */
  Runnable takeNew() {
    Runnable addWords = words.takeNew();
    Map<Board, String> addBoards = new LinkedHashMap<>(newBoards);
    newBoards.clear();
    Map<Finish, String> addFinishes = new LinkedHashMap<>(newFinishes);
    newFinishes.clear();
    return () -> {
      addWords.run();
      addBoards.forEach(log::add);
      addFinishes.forEach(log::add);
    };
  }

  Optional<Rig> rig(SheetRow row) {
    if (!row.has(RIG)) {
      faults.add(row, RIG, "Give the rig that burned it.");
      return Optional.empty();
    }
    return ask(row, RIG, log::rig);
  }

  Optional<Board> board(SheetRow row) {
    if (!row.has(BOARD)) {
      faults.add(row, BOARD, "Give the board that it was burned on.");
      return Optional.empty();
    }
    int before = faults.count();
    learn(row, WOOD_LIKE, OwnWords.Sort.WOOD);
    Optional<String> wood = row.has(WOOD) ? ask(row, WOOD, words::wood) : Optional.empty();
    Optional<WoodForm> form = row.has(FORM) ? ask(row, FORM, WoodForm::ofWord) : Optional.empty();
    OptionalDouble moisture = knobs.number(row, MOISTURE_PCT);
    moisture.ifPresent(m -> doubts.report(row, Knob.MOISTURE.doubts(m)));
    if (faults.count() > before) {
      return Optional.empty();
    }
    String name = row.text(BOARD);
    Met<Board> met = boards.get(key(name));
    if (met == null) {
      return newBoard(row, name, wood, form, moisture);
    }
    Board board = met.thing();
    String who = "Board %s".formatted(board.name());
    must(row, WOOD, wood, board.wood(), who, met.where());
    must(row, FORM, form, board.form(), WoodForm::word, who, met.where());
    must(row, CONDITION, text(row, CONDITION), board.condition().orElse(null), who, met.where());
    must(
        row,
        MOISTURE_PCT,
        text(moisture),
        text(board.moisturePercent()).orElse(null),
        who,
        met.where());
    must(row, JOB, text(row, JOB), board.job().orElse(null), who, met.where());
    return Optional.of(board);
  }

  private Optional<Board> newBoard(
      SheetRow row,
      String name,
      Optional<String> wood,
      Optional<WoodForm> form,
      OptionalDouble moisture) {
    if (wood.isEmpty()) {
      faults.add(row, WOOD, "Board %s is new, so its wood must be given.".formatted(name));
      return Optional.empty();
    }
    if (ask(row, BOARD, text -> GivenName.fromSheet("board", text)).isEmpty()) {
      return Optional.empty();
    }
    Board board =
        new Board(
            log.newId(),
            name,
            wood.get(),
            form.orElseGet(() -> usualForms.of(WOOD, wood.get(), words::usualForm)),
            text(row, CONDITION),
            moisture,
            text(row, JOB));
    boards.put(key(name), new Met<>(board, "on line " + row.line()));
    newBoards.put(board, text(row, BY).orElse(null));
    boardsBrought++;
    return Optional.of(board);
  }

  Optional<Finish> finish(SheetRow row) {
    int before = faults.count();
    learn(row, FAMILY_LIKE, OwnWords.Sort.FAMILY);
    Optional<String> family = row.has(FAMILY) ? ask(row, FAMILY, words::family) : Optional.empty();
    Optional<Tone> tone = row.has(TONE) ? ask(row, TONE, Tone::ofWord) : Optional.empty();
    UnaryOperator<String> word = words::family;
    Optional<List<Coat>> coats =
        row.has(COATS) ? ask(row, COATS, text -> Coats.parse(text, word)) : Optional.empty();
    if (faults.count() > before) {
      return Optional.empty();
    }
    if (!row.has(FINISH) && family.isEmpty()) {
      faults.add(row, FINISH, "Give the finish, by its name or its family.");
      return Optional.empty();
    }
    String name =
        row.has(FINISH)
            ? row.text(FINISH)
            : tone.map(t -> t.word() + " ").orElse("") + family.orElseThrow();
    Met<Finish> met = finishes.get(key(name));
    if (met == null) {
      return newFinish(row, name, family, tone, coats);
    }
    Finish finish = met.thing();
    String who = "Finish %s".formatted(finish.name());
    must(row, FAMILY, family, finish.family(), who, met.where());
    must(row, TONE, tone, finish.tone().orElse(null), Tone::word, who, met.where());
    // What a coat was called may be noted on one side alone; what it is must agree.
    must(
        row,
        COATS,
        coats.map(SheetStock::byFamily),
        byFamily(finish.coats()),
        Coats::text,
        who,
        met.where());
    return Optional.of(finish);
  }

  private static List<Coat> byFamily(List<Coat> coats) {
    return coats.stream().map(Coat::byFamily).toList();
  }

  private Optional<Finish> newFinish(
      SheetRow row,
      String name,
      Optional<String> family,
      Optional<Tone> tone,
      Optional<List<Coat>> coats) {
    String known = family.or(() -> coats.map(c -> c.get(0).family())).orElse(null);
    if (known == null) {
      faults.add(row, FAMILY, "Finish %s is new, so its family must be given.".formatted(name));
      return Optional.empty();
    }
    if (row.has(FINISH)
        && ask(row, FINISH, text -> GivenName.fromSheet("finish", text)).isEmpty()) {
      return Optional.empty();
    }
    Finish finish =
        new Finish(log.newId(), name, known, coats.orElseGet(() -> Coats.ofTone(known, tone)));
    if (coats.isPresent() && tone.isPresent() && !finish.tone().equals(tone)) {
      faults.add(row, TONE, "The tone must be that of the outermost coat in coats.");
      return Optional.empty();
    }
    doubts.report(row, COATS, Plausibility.about(finish));
    finishes.put(key(name), new Met<>(finish, "on line " + row.line()));
    newFinishes.put(finish, text(row, BY).orElse(null));
    finishesBrought++;
    return Optional.of(finish);
  }

  private void learn(SheetRow row, Column column, OwnWords.Sort sort) {
    if (row.has(column)) {
      String by = text(row, BY).orElse(null);
      ask(row, column, cell -> words.learn(sort, cell, by));
    }
  }

  private void must(
      SheetRow row, Column column, Optional<String> said, String known, String who, String where) {
    must(row, column, said, known, words -> words, who, where);
  }

  private <T> void must(
      SheetRow row,
      Column column,
      Optional<T> said,
      T known,
      Function<T, String> words,
      String who,
      String where) {
    if (said.isPresent() && !Objects.equals(said.get(), known)) {
      String has = known == null ? "" : words.apply(known);
      faults.add(
          row,
          column,
          "%s has %s %s; correct it or use another name."
              .formatted(
                  who,
                  has.isEmpty() ? "no " + column.heading() : column.heading() + " " + has,
                  where));
    }
  }

  /** Asks once for each text that a column has. */
  @SuppressWarnings("unchecked") // each column has answers of one type
  private <T> Optional<T> ask(SheetRow row, Column column, Function<String, T> answer) {
    try {
      return Optional.of((T) answers.of(column, row.text(column), answer::apply));
    } catch (Refusal e) {
      faults.add(row, column, e.getMessage());
      return Optional.empty();
    }
  }

  static Optional<String> text(SheetRow row, Column column) {
    return row.has(column) ? Optional.of(row.text(column)) : Optional.empty();
  }

  private static Optional<String> text(OptionalDouble number) {
    return number.isPresent()
        ? Optional.of(SheetNumbers.text(number.getAsDouble()))
        : Optional.empty();
  }

  private static String key(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }
}
