package charline.log.sheet;

import charline.log.reference.Nearest;
import charline.quantity.Measure;
import charline.refusal.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the headings of a person's own sheets mean, kept in a small CSV file beside the log: the log
 * itself holds what was burned, not how somebody lays out a sheet.
 */
public final class OwnHeadings {
  /** Nothing but the headings that charline knows. */
  public static final OwnHeadings NONE = new OwnHeadings(Map.of());

  /** Stands in place of a column for one that is to be left out. */
  static final String SKIP = "skip";

  private static final List<String> HEADINGS = List.of("heading", "column", "unit");

  /**
   * What a heading means.
   *
   * @param heading as the person writes it
   * @param column the column that charline knows, or "skip"
   * @param unit of numbers without one; blank for the unit of the column
   */
  public record Meaning(String heading, String column, String unit) {
    /** "speed" is read as hand_mm_s, in in/s. */
    public String words() {
      return column.equals(SKIP)
          ? "\"%s\" is left out".formatted(heading)
          : "\"%s\" is read as %s%s"
              .formatted(heading, column, unit.isEmpty() ? "" : ", numbers in " + unit);
    }
  }

  private final Map<String, Meaning> meanings;

  private OwnHeadings(Map<String, Meaning> meanings) {
    this.meanings = meanings;
  }

  /** Those that are kept beside a log. */
  public static OwnHeadings keptBeside(Path log) {
    Path file = file(log);
    if (!Files.exists(file)) {
      return NONE;
    }
    OwnHeadings all = NONE;
    for (SheetRow row :
        TextTable.read(SheetText.read(file), HEADINGS, HEADINGS.subList(0, 2)).rows()) {
      all =
          all.with(
              new Meaning(
                  FormulaGuard.undo(row.cells().get("heading")),
                  row.cells().get("column"),
                  row.cells().getOrDefault("unit", "")));
    }
    return all;
  }

  /**
   * Writes them beside a log.
   *
   * @throws Refusal if they cannot be written
   */
  public void keepBeside(Path log) {
    Path file = file(log);
    if (meanings.isEmpty()) {
      try {
        Files.deleteIfExists(file);
      } catch (IOException e) {
        throw Refusal.data("%s cannot be deleted; check its folder.".formatted(file), e);
      }
      return;
    }
    Map<String, List<String>> columns = new LinkedHashMap<>();
    HEADINGS.forEach(heading -> columns.put(heading, new ArrayList<>()));
    for (Meaning meaning : meanings.values()) {
      columns.get("heading").add(FormulaGuard.guard(meaning.heading()));
      columns.get("column").add(meaning.column());
      columns.get("unit").add(meaning.unit());
    }
    CsvFile.write(CsvFile.text(columns), file);
  }

  /** Where those of a log are kept. */
  public static Path file(Path log) {
    String name = log.getFileName().toString().replaceFirst("\\.db$", "");
    return log.toAbsolutePath().resolveSibling(name + ".headings.csv");
  }

  /**
   * These and one more.
   *
   * @param typed {@code speed=hand_mm_s}, {@code speed=hand_mm_s in/s} or {@code mood=skip}
   * @throws Refusal if it does not read like that, or there is no such column or unit
   */
  public OwnHeadings with(String typed) {
    int equals = typed.lastIndexOf('=');
    List<String> meant =
        equals < 0 ? List.of() : Arrays.asList(typed.substring(equals + 1).strip().split("\\s+"));
    if (equals < 1 || meant.get(0).isEmpty() || meant.size() > 2) {
      throw Refusal.usage(
          "A heading of your own must read HEADING=COLUMN, such as \"speed=hand_mm_s\" or \"speed=hand_mm_s in/s\", not \"%s\"."
              .formatted(typed));
    }
    return with(
        new Meaning(
            typed.substring(0, equals).strip(),
            meant.get(0).toLowerCase(Locale.ROOT),
            meant.size() > 1 ? meant.get(1) : ""));
  }

  private OwnHeadings with(Meaning meaning) {
    if (meaning.heading().isBlank()) {
      throw Refusal.usage("A heading of your own must have a name.");
    }
    List<String> known = Column.headings();
    if (!known.contains(meaning.column()) && !meaning.column().equals(SKIP)) {
      List<String> near = Nearest.to(meaning.column(), known);
      throw Refusal.usage(
          "There is no column \"%s\"; %s."
              .formatted(
                  meaning.column(),
                  near.isEmpty()
                      ? "the columns are " + String.join(", ", known)
                      : "nearest: " + String.join(", ", near)));
    }
    requireUnit(meaning);
    Map<String, Meaning> more = new LinkedHashMap<>(meanings);
    more.put(key(meaning.heading()), meaning);
    return new OwnHeadings(more);
  }

  private static void requireUnit(Meaning meaning) {
    if (meaning.unit().isEmpty()) {
      return;
    }
    Optional<Column> column =
        Stream.of(Column.values()).filter(c -> c.heading().equals(meaning.column())).findFirst();
    if (column.isEmpty() || !column.get().isNumber()) {
      throw Refusal.usage(
          "%s holds no numbers with a unit; leave \"%s\" out."
              .formatted(meaning.column(), meaning.unit()));
    }
    Measure.parse("1" + meaning.unit(), column.get().quantity());
  }

  /**
   * These without one.
   *
   * @throws Refusal if there is no such heading
   */
  public OwnHeadings without(String heading) {
    Map<String, Meaning> fewer = new LinkedHashMap<>(meanings);
    if (fewer.remove(key(heading)) == null) {
      throw Refusal.usage(
          meanings.isEmpty()
              ? "No heading of your own is remembered."
              : "\"%s\" is not remembered; remembered are %s."
                  .formatted(
                      heading,
                      String.join(
                          ", ",
                          meanings.values().stream()
                              .map(m -> "\"" + m.heading() + "\"")
                              .toList())));
    }
    return new OwnHeadings(fewer);
  }

  /** What a heading means, empty where it is none of a person's own. */
  Optional<Meaning> of(String heading) {
    return Optional.ofNullable(meanings.get(key(heading)));
  }

  /** All of them, in the order in which they were given. */
  public List<Meaning> all() {
    return List.copyOf(meanings.values());
  }

  private static String key(String heading) {
    return heading.strip().toLowerCase(Locale.ROOT);
  }
}
