package charline.log.merge;

import charline.log.ColumnWords;
import charline.log.database.Database;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** Names what two logs hold differently, side by side and in one sentence for the person. */
final class ConflictText {
  /** Said by another column of the same row, in fewer words. */
  private static final List<String> TWICE_SAID = List.of("typed_json");

  private final Database database;
  private final OtherLog other;
  private final String name;

  ConflictText(Database database, OtherLog other, String name) {
    this.database = database;
    this.other = other;
    this.name = name;
  }

  /** What differs in a row that both hold. */
  Conflict of(String table, UUID id) {
    List<String> differences = new ArrayList<>();
    List<Conflict.Side> sides = new ArrayList<>();
    for (String column : other.amendable(table)) {
      database
          .first(
              """
              SELECT m.%2$s AS here, o.%2$s AS there FROM main.%1$s m
              JOIN other.%1$s o ON o.id = m.id WHERE m.id = ? AND m.%2$s IS NOT o.%2$s
              """
                  .formatted(table, column),
              row -> new Stored(row.text("here"), row.text("there")),
              id)
          .filter(stored -> !TWICE_SAID.contains(column))
          .ifPresent(
              stored -> {
                differences.add(difference(table, column, stored.here(), stored.there()));
                sides.add(side(table, column, stored.here(), stored.there()));
              });
    }
    String what = differences.isEmpty() ? "the typed words differ" : String.join(", ", differences);
    return new Conflict(
        whose(table, id),
        sides,
        "%s was amended here and in %s: %s.".formatted(whose(table, id), name, what));
  }

  private record Stored(String here, String there) {}

  private Conflict.Side side(String table, String column, String here, String there) {
    if (column.equals("voided_why")) {
      String state = table.equals("reading") ? "struck" : "void";
      return new Conflict.Side("whether it counts", counts(state, here), counts(state, there));
    }
    ColumnWords words = ColumnWords.of(table + "." + column);
    return new Conflict.Side(
        words.name(),
        value(words, table, column, here, "main"),
        value(words, table, column, there, "other"));
  }

  private static String counts(String state, String why) {
    return why == null ? "it counts" : "%s: %s".formatted(state, why);
  }

  /** A reading of the other log that does not fit those here. */
  Conflict ofReading(UUID id) {
    String patch = code(UUID.fromString(other.text("reading", "patch_id", id)));
    String passes = passes(other.text("reading", "passes", id));
    String outcome = other.text("reading", "outcome", id);
    String what = "%s after %s".formatted(patch, passes);
    return database
        .first(
            """
            SELECT outcome FROM main.reading WHERE voided_why IS NULL AND (patch_id, passes) =
              (SELECT patch_id, passes FROM other.reading WHERE id = ?)
            """,
            row -> row.text("outcome"),
            id)
        .map(
            here ->
                new Conflict(
                    what,
                    List.of(new Conflict.Side("outcome", here, outcome)),
                    "%s after %s was read here (%s) and in %s (%s)."
                        .formatted(patch, passes, here, name, outcome)))
        .orElseGet(
            () ->
                new Conflict(
                    what,
                    List.of(),
                    "The reading of %s after %s in %s (%s) does not fit the readings here."
                        .formatted(patch, passes, name, outcome)));
  }

  /** A finish whose coats differ. */
  Conflict ofCoats(UUID finish) {
    String named = here("finish", "name", finish);
    return new Conflict(
        "Finish " + named, List.of(), "Finish %s has other coats in %s.".formatted(named, name));
  }

  private String whose(String table, UUID id) {
    return switch (table) {
      case "patch" -> code(id);
      case "reading" ->
          "The reading of %s after %s"
              .formatted(
                  code(UUID.fromString(other.text("reading", "patch_id", id))),
                  passes(here("reading", "passes", id)));
      case "photo" -> "A photo of " + code(UUID.fromString(other.text("photo", "patch_id", id)));
      case "sample" -> "Sample " + here("sample", "code", id);
      case "power_check" ->
          "A power check of rig " + here("rig", "name", UUID.fromString(here(table, "rig_id", id)));
      case "upkeep" ->
          "Upkeep of rig " + here("rig", "name", UUID.fromString(here(table, "rig_id", id)));
      default -> capital(table) + " " + here(table, "name", id);
    };
  }

  private String code(UUID patch) {
    return here("patch", "code", patch);
  }

  private String here(String table, String column, UUID id) {
    return database
        .first(
            "SELECT %s AS value FROM main.%s WHERE id = ?".formatted(column, table),
            row -> row.text("value"),
            id)
        .orElseThrow();
  }

  private String difference(String table, String column, String here, String there) {
    if (column.equals("voided_why")) {
      return ofVoid(table.equals("reading") ? "struck" : "void", here, there);
    }
    ColumnWords words = ColumnWords.of(table + "." + column);
    return "%s is %s here and %s there"
        .formatted(
            words.name(),
            value(words, table, column, here, "main"),
            value(words, table, column, there, "other"));
  }

  private static String ofVoid(String state, String here, String there) {
    if (here == null) {
      return "it counts here and is %s there (%s)".formatted(state, there);
    }
    return there == null
        ? "it is %s here (%s) and counts there".formatted(state, here)
        : "the reason for being %s is %s here and %s there".formatted(state, here, there);
  }

  private String value(
      ColumnWords words, String ofTable, String column, String stored, String log) {
    if (stored == null) {
      return "not given";
    }
    if (column.endsWith("_id") || column.equals("joined_into")) {
      String table =
          column.equals("joined_into")
              ? ofTable
              : column.substring(0, column.length() - "_id".length());
      return database
          .first(
              "SELECT name FROM %s.%s WHERE id = ?".formatted(log, table),
              row -> row.text("name"),
              stored)
          .orElse(stored);
    }
    return words.value(stored);
  }

  private static String passes(String number) {
    return number.equals("1") ? "1 pass" : number + " passes";
  }

  private static String capital(String word) {
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
  }
}
