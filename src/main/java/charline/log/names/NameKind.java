package charline.log.names;

/** What names are of. */
public enum NameKind {
  RIG("SELECT name FROM rig WHERE joined_into IS NULL ORDER BY name"),
  BOARD("SELECT name FROM board WHERE joined_into IS NULL AND voided_why IS NULL ORDER BY name"),
  FINISH("SELECT name FROM finish WHERE joined_into IS NULL ORDER BY name"),
  /** Woods that boards are of come first. */
  WOOD("SELECT name FROM wood ORDER BY name NOT IN (SELECT wood FROM board), name"),
  /** Coating families that finishes are of come first. */
  FAMILY("SELECT name FROM coating_family ORDER BY name NOT IN (SELECT family FROM finish), name"),
  /** Of the latest patches, as a large log has many. */
  PERSON(
      """
      SELECT burned_by AS name FROM (SELECT burned_by FROM patch ORDER BY recorded DESC LIMIT 2000)
      WHERE burned_by IS NOT NULL
      UNION SELECT judged_by FROM reading WHERE judged_by IS NOT NULL
        AND patch_id IN (SELECT id FROM patch ORDER BY recorded DESC LIMIT 2000)
      ORDER BY name
      """),
  JOB(
      """
      SELECT job AS name FROM board WHERE job IS NOT NULL AND voided_why IS NULL
      UNION SELECT job FROM sample WHERE job IS NOT NULL AND voided_why IS NULL ORDER BY name
      """),
  /** The latest come first. */
  PATCH("SELECT code FROM patch ORDER BY recorded DESC LIMIT 2000"),
  /** Those that are still to be burned. */
  PLAN(
      "SELECT code FROM planned_patch WHERE patch_id IS NULL AND voided_why IS NULL ORDER BY code"),
  SAMPLE("SELECT code FROM sample WHERE voided_why IS NULL ORDER BY code"),
  SUBSTANCE("SELECT name FROM substance ORDER BY name"),
  /** What a question may name. */
  WORD(
      """
      SELECT family AS name FROM finish UNION SELECT wood FROM board
      UNION SELECT name FROM rig WHERE joined_into IS NULL
      UNION SELECT name FROM board WHERE joined_into IS NULL
      UNION SELECT name FROM finish WHERE joined_into IS NULL
      UNION SELECT job FROM board WHERE job IS NOT NULL
      UNION VALUES ('clean'), ('tint'), ('char'), ('residue'), ('today'), ('yesterday')
      ORDER BY name
      """);

  private final String sql;

  NameKind(String sql) {
    this.sql = sql;
  }

  /** A query for one column. */
  String sql() {
    return sql;
  }

  /** The kind in a word, as a shell asks for it. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
