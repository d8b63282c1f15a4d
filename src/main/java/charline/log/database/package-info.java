/**
 * The open SQLite file: statements, transactions, rows, times as text, and every failure in one
 * sentence.
 *
 * <p>This package must know no table, and nothing of trials.
 */
package charline.log.database;
