/**
 * The log: every patch kept, nothing ever deleted. {@link charline.log.Logbook} is the door; behind
 * it is a class for each table. Nothing outside this package and those inside it sees SQL.
 *
 * <p>Inside: {@code database} and {@code upgrade} (the file), {@code reference} (words), which know
 * nothing of this one; {@code search}, {@code merge} and {@code sheet}, which use it.
 *
 * <p>This package must not know of statistics, models, windows or screens.
 *
 * <h2>Decisions</h2>
 *
 * <p>A planned code is a row of its own, not a patch without readings, because every patch has been
 * burned. Rejected: a flag on {@code patch}, which every query would have to mind.
 *
 * <p>A dropped plan is void and keeps its code, which may be on a printed list or on tape. A patch
 * burned under it is recorded all the same. Rejected: freeing the code, which would name two
 * patches.
 *
 * <p>A device without connection gives its patch a code of its own, W- and four signs, and the log
 * keeps it, because what is on the tape must not change later. Rejected: promising the next P- code
 * to two devices at once.
 *
 * <p>The last patch is one's own: burned or recorded by that person or device in this log.
 * Rejected: the last to enter the log, which after a merge or an import is anybody's.
 *
 * <p>Two records of one thing are joined by moving what refers to the one, and the row stays and
 * says where it has gone, so that a merge moves what another bench still burns on it. Rejected:
 * taking both for one in every query, which each of them would have to mind.
 *
 * <p>Identities come from a generator that SQLite seeds. They are no secrets, and a generator for
 * secrets costs every start 10 ms.
 */
package charline.log;
