package charline.log.sheet;

import java.util.ArrayList;
import java.util.List;

/**
 * What became of the columns of a sheet that are not charline's own.
 *
 * @param own those that a person has given a meaning
 * @param inNotes headings of those whose cells are in the notes
 * @param leftOut headings of those that were left out
 */
public record SheetColumns(
    List<OwnHeadings.Meaning> own, List<String> inNotes, List<String> leftOut) {
  public SheetColumns {
    own = List.copyOf(own);
    inNotes = List.copyOf(inNotes);
    leftOut = List.copyOf(leftOut);
  }

  /** A sentence for each sort, blank before each; nothing where there are none. */
  public String words() {
    List<String> said = new ArrayList<>();
    own.forEach(meaning -> said.add(meaning.words()));
    if (!inNotes.isEmpty()) {
      said.add("in the notes: " + quoted(inNotes));
    }
    if (!leftOut.isEmpty()) {
      said.add("left out: " + quoted(leftOut));
    }
    return said.isEmpty() ? "" : "; " + String.join("; ", said);
  }

  private static String quoted(List<String> headings) {
    return "\"" + String.join("\", \"", headings) + "\"";
  }
}
