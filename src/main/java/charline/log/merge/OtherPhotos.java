package charline.log.merge;

import charline.log.Photo;
import charline.log.database.Database;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * Photographs of the log that is attached as {@code other}. Nobody can amend one, so where one is
 * not what was recorded, it is damaged: it stays out and is named.
 */
final class OtherPhotos {
  private final Database database;
  private final OtherLog other;
  private final String name;
  private final List<String> damage = new ArrayList<>();

  OtherPhotos(Database database, OtherLog other, String name) {
    this.database = database;
    this.other = other;
    this.name = name;
  }

  /** Adds those that only the other log has, and gives how many. */
  int bringIn() {
    clashes();
    int added = 0;
    for (UUID id : other.newcomers("photo")) {
      if (sound(id)) {
        other.copy("photo", id);
        added++;
      } else {
        damage.add(
            "A photo of %s in %s is damaged: its checksum differs from the one recorded. It was left out."
                .formatted(code(id), name));
      }
    }
    return added;
  }

  List<String> damage() {
    return damage;
  }

  private boolean sound(UUID id) {
    return database
        .first(
            "SELECT content, sha256 FROM other.photo WHERE id = ?",
            row ->
                row.optionalText("sha256").isEmpty()
                    || row.text("sha256").equals(Photo.sha256(row.bytes("content"))),
            id)
        .orElseThrow();
  }

  private String code(UUID photo) {
    return database
        .first(
            "SELECT p.code FROM main.patch p JOIN other.photo o ON o.patch_id = p.id WHERE o.id ="
                + " ?",
            row -> row.text("code"),
            photo)
        .orElseThrow();
  }

  private void clashes() {
    damage.addAll(
        database.query(
            """
            SELECT p.code FROM main.photo m JOIN other.photo o ON o.id = m.id
            JOIN main.patch p ON p.id = m.patch_id WHERE m.content IS NOT o.content ORDER BY m.rowid
            """,
            row ->
                "A photo of %s differs between this log and %s, so one of them is damaged; check both logs."
                    .formatted(row.text("code"), name)));
  }
}
