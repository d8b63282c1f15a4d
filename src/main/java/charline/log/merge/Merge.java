package charline.log.merge;

import charline.log.Logbook;
import charline.log.database.Database;
import charline.log.upgrade.LogCopy;
import charline.progress.WorkWatch;
import charline.refusal.Refusal;
import charline.trial.PlainText;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/**
 * Joins another log into one, all of it or nothing; the other file is left as it is. Rows are told
 * apart by identity, so joining twice adds nothing. A name or code that is taken by something else
 * gives way, the old one kept. What only the other log amended comes in as it is there; what both
 * amended is a conflict, left as it is here and named, unless a {@link Resolution} decides it.
 */
public final class Merge {
  private final Logbook log;
  private final Attribution by;
  private final boolean sure;
  private final String confirmation;
  private final boolean join;

  private WorkWatch progress = WorkWatch.NONE;

  private Merge(Logbook log, Attribution by, boolean sure, String confirmation, boolean join) {
    this.log = log;
    this.by = by;
    this.sure = sure;
    this.confirmation = confirmation;
    this.join = join;
  }

  /**
   * A merge into a log.
   *
   * @param by who decides, blank or null if not noted
   */
  public static Merge into(Logbook log, String by) {
    Attribution decided = new Attribution(log.now(), PlainText.answer(Optional.ofNullable(by)));
    return new Merge(log, decided, false, "confirm it", false);
  }

  /** The same for a person who knows that patches that look like ones of this log are others. */
  public Merge sure(boolean known) {
    return new Merge(log, by, known, confirmation, join);
  }

  /**
   * The same with the words for how a person confirms that.
   *
   * @param how as in "void it in one of the logs, or HOW if they are different patches"
   */
  public Merge confirmedBy(String how) {
    return new Merge(log, by, sure, how, join);
  }

  /** The same, telling how far it is; the last thing to be said of a merge. */
  public Merge watched(WorkWatch by) {
    progress = by;
    return this;
  }

  /** The same that joins rigs, boards and finishes that both logs set up and that agree. */
  public Merge joining(boolean wanted) {
    return new Merge(log, by, sure, confirmation, wanted);
  }

  /**
   * Joins another log.
   *
   * @throws Refusal if nobody is {@link #sure}, and patches of one code, time, board, setting and
   *     first reading have identities of their own in both logs, so that they would count twice
   */
  public Merged from(Path file, Resolution resolution) {
    if (LogCopy.same(file, log.file())) {
      throw Refusal.usage("%s is this log itself; choose another one.".formatted(file));
    }
    return ReadableCopy.of(file, copy -> attached(file.getFileName().toString(), copy, resolution));
  }

  private Merged attached(String name, Path copy, Resolution resolution) {
    DeliveredPowers there = powersIn(copy);
    Database database = log.database();
    database.update("ATTACH DATABASE ? AS other", copy.toAbsolutePath().toString());
    try {
      if (!sure) {
        refuseTwins(new OtherLog(database).twins(), name);
      }
      return database.inTransaction(
          () -> new OtherRows(log, name, by, join, progress).bringIn(resolution, there));
    } finally {
      database.update("DETACH DATABASE other");
    }
  }

  private static DeliveredPowers powersIn(Path copy) {
    try (Logbook there = Logbook.openToRead(copy, Clock.systemUTC())) {
      return DeliveredPowers.of(there);
    }
  }

  /** A trial sheet imported into both logs gives every patch two identities. */
  private void refuseTwins(List<String> twins, String name) {
    if (!twins.isEmpty()) {
      throw Refusal.data(
          "%s in %s %s recorded here too, as if one trial sheet had been imported into both logs (%s%s), and would count twice; void %s in one of the logs, or %s if they are different patches."
              .formatted(
                  twins.size() == 1 ? "A patch" : twins.size() + " patches",
                  name,
                  twins.size() == 1 ? "is" : "are",
                  String.join(", ", twins.subList(0, Math.min(3, twins.size()))),
                  twins.size() > 3 ? " and so on" : "",
                  twins.size() == 1 ? "it" : "them",
                  confirmation));
    }
  }
}
