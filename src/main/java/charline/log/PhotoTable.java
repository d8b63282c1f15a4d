package charline.log;

import charline.log.database.Database;
import charline.log.database.RowValues;
import java.io.InputStream;
import java.util.List;
import java.util.UUID;

/** Photographs of patches. */
record PhotoTable(Database database) {
  private static final String KEPT =
      "SELECT id, file_name, media_type, octet_length(content) AS bytes, coalesce(sha256, 'none')"
          + " AS sha256, taken_at_utc, taken_at_offset, caption FROM photo ";

  /** Those of a patch, without what they show. */
  List<KeptPhoto> of(UUID patch) {
    return database.query(
        KEPT + "WHERE patch_id = ? ORDER BY taken_at_utc, id",
        row ->
            new KeptPhoto(
                row.id("id"),
                row.text("file_name"),
                row.text("media_type"),
                Long.parseLong(row.text("bytes")),
                row.text("sha256"),
                row.moment("taken_at"),
                row.optionalText("caption")),
        patch);
  }

  /** What a photograph shows, read piece by piece. */
  InputStream content(UUID id) {
    return new BlobStream(
        database, "SELECT substr(content, ?, ?) AS piece FROM photo WHERE id = ?", id);
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
