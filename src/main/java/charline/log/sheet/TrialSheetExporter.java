package charline.log.sheet;

import static charline.log.sheet.Column.*;

import charline.log.OwnWords;
import charline.log.PatchEntry;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.PlainText;
import charline.trial.Reading;
import charline.trial.Tone;
import charline.trial.WoodForm;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes patches as the trial sheet that {@link TrialSheetImporter} reads. Void patches are left
 * out. Columns past {@code note} are written only where some patch needs them. Settings that were
 * left to the rig are written out, so that the sheet can be read without the log. Text that could
 * run as a formula in a spreadsheet is guarded with an apostrophe, which the import takes off.
 * Doses rest on the rigs and their power checks too, which {@link RigSheetExporter} writes.
 */
public final class TrialSheetExporter {
  /** What each wood and each family is like that somebody added. */
  private record Likes(Map<String, String> woods, Map<String, String> families) {
    static Likes of(OwnWords words) {
      return new Likes(of(words, OwnWords.Sort.WOOD), of(words, OwnWords.Sort.FAMILY));
    }

    private static Map<String, String> of(OwnWords words, OwnWords.Sort sort) {
      Map<String, String> likes = new LinkedHashMap<>();
      words.all(sort).forEach(each -> likes.put(each.word().name(), each.word().like()));
      return likes;
    }
  }

  private TrialSheetExporter() {}

  /**
   * Writes a file at once: an existing one is replaced only by a whole sheet.
   *
   * @param words woods and families that somebody added to the log of the patches
   * @throws charline.refusal.Refusal if the file cannot be written
   */
  public static void write(List<PatchEntry> entries, OwnWords words, Path file) {
    CsvFile.write(text(entries, words), file);
  }

  /** Writes to a writer, which stays open. */
  public static void write(List<PatchEntry> entries, OwnWords words, Writer writer) {
    try {
      writer.write(text(entries, words));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(List<PatchEntry> entries, OwnWords words) {
    Likes likes = Likes.of(words);
    List<Map<Column, String>> lines = new ArrayList<>();
    for (PatchEntry entry : entries) {
      if (entry.voided().isEmpty()) {
        for (int i = 0; i < entry.patch().readings().size(); i++) {
          lines.add(line(entry, i, likes));
        }
      }
    }
    boolean ownBurner =
        entries.stream().anyMatch(e -> !e.by().equals(e.patch().readings().get(0).by()));
    Map<String, List<String>> columns = new LinkedHashMap<>();
    for (Column column : Column.values()) {
      boolean used =
          column == BURNED_BY ? ownBurner : lines.stream().anyMatch(l -> l.containsKey(column));
      if (column.compareTo(NOTE) <= 0 || used) {
        columns.put(column.heading(), lines.stream().map(l -> l.getOrDefault(column, "")).toList());
      }
    }
    return CsvFile.text(columns);
  }

  private static Map<Column, String> line(PatchEntry entry, int index, Likes likes) {
    Map<Column, String> cells = new EnumMap<>(Column.class);
    Patch patch = entry.patch();
    Reading reading = patch.readings().get(index);
    put(cells, PATCH, patch.code());
    put(cells, BURNED_AT, SheetTimes.text(index == 0 ? patch.burnedAt() : reading.at()));
    if (index == 0 && !reading.at().equals(patch.burnedAt())) {
      put(cells, READ_AT, SheetTimes.text(reading.at()));
    }
    put(cells, RIG, patch.rig().name());
    putBoard(cells, patch.board());
    putFinish(cells, patch.finish());
    putLikes(cells, patch, likes);
    KnobCells.values(patch.settings(), patch.rig().spotDefinition(), patch.areaSquareCentimetres())
        .forEach(
            (column, value) ->
                put(
                    cells,
                    column,
                    SheetNumbers.cell(column, value, entry.typed().get(column.key()))));
    patch
        .circumstances()
        .values()
        .forEach((knob, value) -> put(cells, Column.of(knob), cell(entry, knob, value)));
    put(cells, PASSES, Integer.toString(reading.passes()));
    put(cells, OUTCOME, reading.outcome().text());
    reading.soot().ifPresent(s -> put(cells, SOOT, s ? "yes" : "no"));
    reading.depthMicrometres().ifPresent(d -> put(cells, DEPTH_UM, SheetNumbers.text(d)));
    reading.by().ifPresent(by -> put(cells, BY, by));
    reading.note().ifPresent(note -> put(cells, NOTE, note));
    entry.by().ifPresent(by -> put(cells, BURNED_BY, by));
    entry.note().ifPresent(note -> put(cells, PATCH_NOTE, note));
    return cells;
  }

  private static String cell(PatchEntry entry, Knob knob, Object value) {
    if (value instanceof Double number) {
      return SheetNumbers.cell(Column.of(knob), number, entry.typed().get(knob.key()));
    }
    if (value instanceof Boolean yes) {
      return yes ? "yes" : "no";
    }
    return knob == Knob.STROKES
        ? entry.typed().getOrDefault(knob.key(), value.toString())
        : value.toString();
  }

  private static void putLikes(Map<Column, String> cells, Patch patch, Likes likes) {
    String wood = SheetVocabulary.text(List.of(patch.board().wood()), likes.woods());
    if (!wood.isEmpty()) {
      put(cells, WOOD_LIKE, wood);
    }
    List<String> families = new ArrayList<>(List.of(patch.finish().family()));
    patch.finish().coats().forEach(coat -> families.add(coat.family()));
    String family = SheetVocabulary.text(families, likes.families());
    if (!family.isEmpty()) {
      put(cells, FAMILY_LIKE, family);
    }
  }

  private static void putBoard(Map<Column, String> cells, Board board) {
    put(cells, BOARD, board.name());
    put(cells, WOOD, board.wood());
    // Without a form, an import takes the usual one of the wood, which an older one took for solid.
    if (board.form() != WoodForm.SOLID || WoodForm.ofPanel(board.wood()).isPresent()) {
      put(cells, FORM, board.form().word());
    }
    board.condition().ifPresent(c -> put(cells, CONDITION, c));
    board.moisturePercent().ifPresent(m -> put(cells, MOISTURE_PCT, SheetNumbers.text(m)));
    board.job().ifPresent(j -> put(cells, JOB, j));
  }

  private static void putFinish(Map<Column, String> cells, Finish finish) {
    put(cells, FINISH, finish.name());
    put(cells, FAMILY, finish.family());
    finish.tone().map(Tone::word).ifPresent(t -> put(cells, TONE, t));
    if (!Coats.areSaidByTone(finish)) {
      put(cells, COATS, Coats.text(finish.coats()));
    }
  }

  private static void put(Map<Column, String> cells, Column column, String text) {
    // Names that an earlier version took may hold what a sheet cannot.
    String plain = PlainText.of(text);
    cells.put(column, column.isPersonal() ? FormulaGuard.guard(plain) : plain);
  }
}
