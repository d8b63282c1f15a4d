/**
 * The log: every patch kept, nothing ever deleted. {@link charline.log.Logbook} is the door; behind
 * it is a class for each table. Nothing outside this package and those inside it sees SQL.
 *
 * <p>Inside: {@code database} and {@code upgrade} (the file), {@code reference} (words), which know
 * nothing of this one; {@code search}, {@code merge} and {@code sheet}, which use it.
 *
 * <p>This package must not know of statistics, models, windows or screens.
 */
package charline.log;
