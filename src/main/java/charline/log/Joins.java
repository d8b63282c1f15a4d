package charline.log;

import charline.log.database.Database;
import java.util.UUID;

/**
 * One thing that was set up twice, joined into one: whatever refers to the one record refers to the
 * other from then on. The joined row stays, with its name, and says where it has gone. To be called
 * where changes are kept under a name.
 */
public final class Joins {
  /** What can be set up twice; the word is the name of its table too. */
  public enum Kind {
    RIG("rig"),
    BOARD("board"),
    FINISH("finish");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  private final Database database;

  public Joins(Database database) {
    this.database = database;
  }

  /** Joins one record into another and lets everything follow. */
  public void join(Kind kind, UUID from, UUID into) {
    database.update(
        "UPDATE main.%s SET joined_into = ? WHERE id = ?".formatted(kind.word), into, from);
    settle();
  }

  /** Lets follow what still refers to a joined record, as a merge may bring it in later. */
  public void settle() {
    for (Kind kind : Kind.values()) {
      follow("patch", kind, "1 = 1");
    }
    follow("sample", Kind.FINISH, "1 = 1");
    follow("power_check", Kind.RIG, "1 = 1");
    follow("upkeep", Kind.RIG, "1 = 1");
    follow("planned_patch", Kind.RIG, "patch_id IS NULL AND voided_why IS NULL");
    follow("planned_patch", Kind.BOARD, "patch_id IS NULL AND voided_why IS NULL");
  }

  private void follow(String table, Kind kind, String condition) {
    database.update(
        """
        UPDATE main.%1$s SET %2$s_id = (SELECT target FROM main.joined_%2$s WHERE id = %2$s_id)
        WHERE %3$s AND %2$s_id IN (SELECT id FROM main.joined_%2$s)
        """
            .formatted(table, kind.word, condition));
  }

  /** True if rows were joined in a circle, so that nothing is left of them. */
  public boolean isCircle(Kind kind, UUID id) {
    return database
        .first(
            """
            SELECT 1 FROM main.%1$s WHERE id = ? AND joined_into IS NOT NULL
            AND id NOT IN (SELECT id FROM main.joined_%1$s)
            """
                .formatted(kind.word),
            row -> true,
            id)
        .isPresent();
  }
}
