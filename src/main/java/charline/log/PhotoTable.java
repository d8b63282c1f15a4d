package charline.log;

import charline.log.database.Database;
import charline.log.database.RowValues;
import java.util.List;
import java.util.UUID;

/** Photographs of patches. */
record PhotoTable(Database database) {
  List<Photo> of(UUID patch) {
    return database.query(
        "SELECT * FROM photo WHERE patch_id = ? ORDER BY taken_at_utc, id",
        row ->
            new Photo(
                row.id("id"),
                row.text("file_name"),
                row.text("media_type"),
                row.bytes("content"),
                row.moment("taken_at"),
                row.optionalText("caption")),
        patch);
  }

  void add(UUID patch, Photo photo, String by) {
    database.insert(
        "photo",
        new RowValues()
            .put("id", photo.id())
            .put("patch_id", patch)
            .put("file_name", photo.fileName())
            .put("media_type", photo.mediaType())
            .put("content", photo.content())
            .moment("taken_at", photo.takenAt())
            .put("caption", photo.caption())
            .put("recorded_by", by)
            .put("sha256", photo.sha256()));
  }

  /** Reads when each was taken, the only value of a photograph that may be unreadable. */
  void requireReadable() {
    database.query(
        "SELECT taken_at_utc, taken_at_offset FROM photo", row -> row.moment("taken_at"));
  }

  /** Photographs whose bytes are no longer those that were recorded, as codes of their patches. */
  List<String> altered() {
    return database
        .query(
            """
            SELECT p.code, o.content, o.sha256 FROM photo o JOIN patch p ON p.id = o.patch_id
            WHERE o.sha256 IS NOT NULL ORDER BY o.rowid
            """,
            row ->
                Photo.sha256(row.bytes("content")).equals(row.text("sha256"))
                    ? ""
                    : row.text("code"))
        .stream()
        .filter(code -> !code.isEmpty())
        .toList();
  }
}
