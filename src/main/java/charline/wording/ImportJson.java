package charline.wording;

import charline.log.sheet.OwnHeadings;
import charline.record.SheetImport;
import java.util.List;

/** What came of an import, as JSON. */
public final class ImportJson {
  private ImportJson() {}

  /**
   * @param recorded false if it was only looked at
   */
  public static Json of(List<SheetImport.Done> done, boolean recorded) {
    return new Json()
        .put("recorded", recorded)
        .put("sheets", done.stream().map(ImportJson::sheet).toList());
  }

  private static Json sheet(SheetImport.Done done) {
    Json json = new Json().put("file", done.file());
    done.rigs()
        .ifPresent(
            brought ->
                json.put("rigs", brought.rigs())
                    .put("power_checks", brought.furtherChecks())
                    .put("upkeep", brought.furtherUpkeep()));
    done.trials()
        .ifPresent(
            result ->
                json.put("patches", result.patches())
                    .put("readings", result.readings())
                    .put("boards", result.boards())
                    .put("finishes", result.finishes())
                    .put("already_there", result.skipped()));
    done.columns()
        .ifPresent(
            columns ->
                json.put("own_headings", headings(columns.own()))
                    .put("in_notes", columns.inNotes())
                    .put("left_out", columns.leftOut()));
    done.samples().ifPresent(count -> json.put("samples", count));
    return json;
  }

  /** What headings of a person's own mean. */
  public static List<Json> headings(List<OwnHeadings.Meaning> meanings) {
    return meanings.stream()
        .map(
            meaning ->
                new Json()
                    .put("heading", meaning.heading())
                    .put("column", meaning.column())
                    .put("unit", meaning.unit().isEmpty() ? null : meaning.unit()))
        .toList();
  }
}
