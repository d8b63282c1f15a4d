package charline.log.merge;

import java.util.List;

/**
 * What two logs hold differently and nobody has decided; it stays as it is here.
 *
 * @param what what it is about
 * @param sides what each log says, a value each; empty where a sentence alone can say it
 * @param sentence the same in one sentence
 */
public record Conflict(String what, List<Side> sides, String sentence) {
  /** One value, in the words of both logs. */
  public record Side(String name, String here, String there) {}

  public Conflict {
    sides = List.copyOf(sides);
  }
}
