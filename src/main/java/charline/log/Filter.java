package charline.log;

import charline.trial.Mark;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.Set;

/**
 * Which patches are wanted; every part narrows, an empty part does not.
 *
 * @param families coating families, any of them
 * @param woods woods, any of them
 * @param marks marks that a patch's last reading must all show
 * @param since burned at or after
 * @param until burned before
 * @param rigs rig names, any of them
 * @param boards board names, any of them
 * @param finishes finish names, any of them
 * @param people who burned or judged it, any of them
 * @param jobs jobs of the board, any of them
 */
public record Filter(
    Set<String> families,
    Set<String> woods,
    Set<Mark> marks,
    Optional<OffsetDateTime> since,
    Optional<OffsetDateTime> until,
    Set<String> rigs,
    Set<String> boards,
    Set<String> finishes,
    Set<String> people,
    Set<String> jobs) {
  /** Everything. */
  public static final Filter ALL =
      new Filter(
          Set.of(),
          Set.of(),
          Set.of(),
          Optional.empty(),
          Optional.empty(),
          Set.of(),
          Set.of(),
          Set.of(),
          Set.of(),
          Set.of());

  /** Everything burned with one rig. */
  public static Filter ofRig(String name) {
    Set<String> any = Set.of();
    Optional<OffsetDateTime> always = Optional.empty();
    return new Filter(any, any, Set.of(), always, always, Set.of(name), any, any, any, any);
  }

  /** Everything on one finish. */
  public static Filter onFinish(String name) {
    Set<String> any = Set.of();
    Optional<OffsetDateTime> always = Optional.empty();
    return new Filter(any, any, Set.of(), always, always, any, any, Set.of(name), any, any);
  }

  /** Everything on one board. */
  public static Filter onBoard(String name) {
    Set<String> any = Set.of();
    Optional<OffsetDateTime> always = Optional.empty();
    return new Filter(any, any, Set.of(), always, always, any, Set.of(name), any, any, any);
  }

  /** The same whatever was seen: everything that was tried there. */
  public Filter withoutMarks() {
    return new Filter(
        families, woods, Set.of(), since, until, rigs, boards, finishes, people, jobs);
  }
}
