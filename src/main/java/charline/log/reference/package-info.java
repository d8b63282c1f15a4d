/**
 * The words for woods and coating families, those that come with the program and those that people
 * added, and words like a mistyped one.
 *
 * <p>This package must know no patch.
 */
package charline.log.reference;
