/**
 * The trial sheet: patches as a CSV file with one line per reading, read into the log and written
 * from it without loss; and the rig sheet that sets up the rigs beforehand, read and written
 * likewise.
 *
 * <p>This package must not know of SQL, statistics, models, windows or screens. Tablesaw stays
 * inside it.
 *
 * <h2>Decisions</h2>
 *
 * <p>icu4j is left out. Tablesaw asks for its 14 MB to guess the encoding of bytes, and charline
 * passes it text. {@code DependenciesTest} fails if that changes.
 */
package charline.log.sheet;
