package charline.log.sheet;

import charline.log.reference.Nearest;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * The first record of a sheet, which names its columns.
 *
 * @param line where it is
 * @param given a name for each column as it was written, blank where it has none
 * @param known headings that may be there, lower case
 * @param needed headings that must be there
 * @param manner what a person said of the headings
 */
record Headings(
    int line, List<String> given, List<String> known, List<String> needed, SheetManner manner) {
  private static final int MOST_COLUMNS = 500;

  /** Letters of a first line that a message repeats. */
  private static final int LONGEST_READ = 80;

  /**
   * @throws Refusal if there are too many columns, or none that is known
   */
  static Headings of(SheetText text, List<String> known, List<String> needed) {
    return of(text, known, needed, SheetManner.PLAIN);
  }

  /** The same where a person has said what headings mean. */
  static Headings of(SheetText text, List<String> known, List<String> needed, SheetManner manner) {
    SheetText.Record first = text.records().get(0);
    if (first.cells() > MOST_COLUMNS) {
      throw Refusal.data(
          "%s must have at most %d columns, not %d; check its separators."
              .formatted(text.name(), MOST_COLUMNS, first.cells()));
    }
    refuseOtherFirstLine(text, first, known, needed, manner);
    List<String> given = new ArrayList<>();
    for (int i = 0; i < first.cells(); i++) {
      given.add(text.cell(first, i).strip());
    }
    return new Headings(first.line(), given, known, needed, manner);
  }

  /** The columns' names as they are known here, in lower case, blank where one has none. */
  List<String> names() {
    return given.stream().map(this::name).toList();
  }

  private String name(String written) {
    return manner
        .own()
        .of(written)
        .map(OwnHeadings.Meaning::column)
        .orElseGet(() -> written.toLowerCase(Locale.ROOT));
  }

  /** The unit of numbers in a column that carry none, blank for the usual one. */
  String unit(int column) {
    return manner.own().of(given.get(column)).map(OwnHeadings.Meaning::unit).orElse("");
  }

  /** Whether the cells of a column go into the notes. */
  boolean isForNotes(int column) {
    return isOther(column) && manner.others() == OtherColumns.NOTE;
  }

  /** Whether a column is left out. */
  boolean isLeftOut(int column) {
    return name(given.get(column)).equals(OwnHeadings.SKIP)
        || isOther(column) && manner.others() == OtherColumns.SKIP;
  }

  private boolean isOther(int column) {
    String name = name(given.get(column));
    return !name.isEmpty() && !known.contains(name) && !name.equals(OwnHeadings.SKIP);
  }

  /** What became of the columns that are not charline's own. */
  SheetColumns columns() {
    return new SheetColumns(
        given.stream()
            .flatMap(written -> manner.own().of(written).stream())
            .filter(meaning -> !meaning.column().equals(OwnHeadings.SKIP))
            .toList(),
        some(this::isForNotes),
        some(this::isLeftOut));
  }

  private List<String> some(IntPredicate which) {
    return IntStream.range(0, given.size()).filter(which).mapToObj(given::get).toList();
  }

  /** Adds what is wrong with the names. */
  void addTo(Faults faults) {
    Set<String> seen = new HashSet<>();
    List<String> strange = new ArrayList<>();
    List<String> names = names();
    for (int i = 0; i < given.size(); i++) {
      String written = given.get(i);
      String heading = names.get(i);
      if (heading.isEmpty() || isLeftOut(i) && !isSlip(heading, names)) {
        continue;
      }
      if (isForNotes(i) && !isSlip(heading, names)) {
        if (!seen.add(heading)) {
          faults.add(line, "Column %s is there twice; keep one.".formatted(heading));
        }
        continue;
      }
      if (!known.contains(heading)) {
        List<String> near = Nearest.to(heading, known);
        if (near.isEmpty()) {
          strange.add("\"%s\"".formatted(written));
        } else {
          faults.lack(Missing.HEADINGS);
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
      faults.lack(Missing.HEADINGS);
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

  /** Whether a name looks mistyped for a column that the sheet lacks: too much would go with it. */
  private boolean isSlip(String name, List<String> names) {
    return !name.equals(OwnHeadings.SKIP)
        && Nearest.to(name, known).stream().anyMatch(near -> !names.contains(near));
  }

  /** A title above the columns, or columns named in another language, is best told in one go. */
  private static void refuseOtherFirstLine(
      SheetText text,
      SheetText.Record first,
      List<String> known,
      List<String> needed,
      SheetManner manner) {
    List<String> cells =
        Arrays.stream(text.body().substring(first.from(), first.to()).split("[,;\\t\n]"))
            .map(cell -> cell.replace("\"", "").strip())
            .filter(cell -> !cell.isEmpty())
            .toList();
    if (cells.stream()
        .noneMatch(
            c -> known.contains(c.toLowerCase(Locale.ROOT)) || manner.own().of(c).isPresent())) {
      String read = String.join(", ", cells);
      throw Refusal.data(
          Missing.HEADINGS,
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
