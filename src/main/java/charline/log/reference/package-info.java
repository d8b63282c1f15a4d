/**
 * The words that come with the program, woods and coating families with their aliases, and words
 * like a mistyped one.
 *
 * <p>This package must know no patch.
 */
package charline.log.reference;
