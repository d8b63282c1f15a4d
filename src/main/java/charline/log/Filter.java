package charline.log;

import charline.log.database.Where;
import java.util.Locale;
import java.util.Optional;

/**
 * Which patches are wanted: all that count, or those of one thing.
 *
 * @param of the thing, empty where all are wanted
 * @param name its name
 */
public record Filter(Optional<Thing> of, String name) {
  /** What a patch is burned with, on, or through. */
  public enum Thing {
    RIG,
    BOARD,
    FINISH
  }

  /** A patch that counts: neither it nor its board is void. */
  public static final String COUNTING =
      "p.voided_why IS NULL AND NOT EXISTS (SELECT 1 FROM board v WHERE v.id = p.board_id AND"
          + " v.voided_why IS NOT NULL)";

  /** Everything. */
  public static final Filter ALL = new Filter(Optional.empty(), "");

  /** Everything burned with one rig. */
  public static Filter ofRig(String name) {
    return new Filter(Optional.of(Thing.RIG), name);
  }

  /** Everything on one finish. */
  public static Filter onFinish(String name) {
    return new Filter(Optional.of(Thing.FINISH), name);
  }

  /** Everything on one board. */
  public static Filter onBoard(String name) {
    return new Filter(Optional.of(Thing.BOARD), name);
  }

  Where where() {
    return of.map(
            thing ->
                new Where(
                    COUNTING
                        + " AND p.%1$s_id IN (SELECT id FROM %1$s WHERE name = ?1)"
                            .formatted(thing.name().toLowerCase(Locale.ROOT)),
                    name))
        .orElseGet(() -> new Where(COUNTING));
  }
}
