package charline.log;

import charline.log.database.Database;
import charline.log.database.Timestamps;
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
    database.update(
        """
        INSERT INTO photo (id, patch_id, file_name, media_type, content, taken_at_utc,
          taken_at_offset, caption, recorded_by, sha256)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """,
        photo.id(),
        patch,
        photo.fileName(),
        photo.mediaType(),
        photo.content(),
        Timestamps.utc(photo.takenAt()),
        Timestamps.offset(photo.takenAt()),
        photo.caption(),
        by,
        photo.sha256());
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
