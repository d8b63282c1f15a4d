package charline.log.sheet;

import charline.log.reference.Nearest;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The first record of a sheet, which names its columns.
 *
 * @param line where it is
 * @param given a name for each column as it was written, blank where it has none
 * @param known headings that may be there, lower case
 * @param needed headings that must be there
 */
record Headings(int line, List<String> given, List<String> known, List<String> needed) {
  private static final int MOST_COLUMNS = 500;

  /** Letters of a first line that a message repeats. */
  private static final int LONGEST_READ = 80;

  /**
   * @throws Refusal if there are too many columns, or none that is known
   */
  static Headings of(SheetText text, List<String> known, List<String> needed) {
    SheetText.Record first = text.records().get(0);
    if (first.cells() > MOST_COLUMNS) {
      throw Refusal.data(
          "%s must have at most %d columns, not %d; check its separators."
              .formatted(text.name(), MOST_COLUMNS, first.cells()));
    }
    refuseOtherFirstLine(text, first, known, needed);
    List<String> given = new ArrayList<>();
    for (int i = 0; i < first.cells(); i++) {
      given.add(text.cell(first, i).strip());
    }
    return new Headings(first.line(), given, known, needed);
  }

  /** The columns' names in lower case, blank where one has none. */
  List<String> names() {
    return given.stream().map(name -> name.toLowerCase(Locale.ROOT)).toList();
  }

  /** Adds what is wrong with the names. */
  void addTo(Faults faults) {
    Set<String> seen = new HashSet<>();
    List<String> strange = new ArrayList<>();
    for (String written : given) {
      String heading = written.toLowerCase(Locale.ROOT);
      if (heading.isEmpty()) {
        continue;
      }
      if (!known.contains(heading)) {
        List<String> near = Nearest.to(heading, known);
        if (near.isEmpty()) {
          strange.add("\"%s\"".formatted(written));
        } else {
          faults.add(
              line,
              "There is no column \"%s\"; nearest: %s."
                  .formatted(written, String.join(", ", near)));
        }
      } else if (!seen.add(heading)) {
        faults.add(line, "Column %s is there twice; keep one.".formatted(heading));
      }
    }
    if (!strange.isEmpty()) {
      faults.add(
          line,
          "There %s %s; the columns are %s."
              .formatted(
                  strange.size() == 1 ? "is no column" : "are no columns",
                  String.join(", ", strange),
                  String.join(", ", known)));
    }
    List<String> missing = needed.stream().filter(h -> !seen.contains(h)).toList();
    if (!missing.isEmpty()) {
      faults.add(
          line,
          "Column%s %s %s missing; every sheet needs %s."
              .formatted(
                  missing.size() == 1 ? "" : "s",
                  String.join(", ", missing),
                  missing.size() == 1 ? "is" : "are",
                  String.join(", ", needed)));
    }
  }

  /** A title above the columns, or columns named in another language, is best told in one go. */
  private static void refuseOtherFirstLine(
      SheetText text, SheetText.Record first, List<String> known, List<String> needed) {
    List<String> cells =
        Arrays.stream(text.body().substring(first.from(), first.to()).split("[,;\\t\n]"))
            .map(cell -> cell.replace("\"", "").strip())
            .filter(cell -> !cell.isEmpty())
            .toList();
    if (cells.stream().noneMatch(c -> known.contains(c.toLowerCase(Locale.ROOT)))) {
      String read = String.join(", ", cells);
      throw Refusal.data(
          "Line %d of %s must name the columns, not read \"%s\"; remove any title above the names, and name at least %s, of %s."
              .formatted(
                  first.line(),
                  text.name(),
                  read.length() > LONGEST_READ ? read.substring(0, LONGEST_READ) + "..." : read,
                  String.join(", ", needed),
                  String.join(", ", known)));
    }
  }
}
