/**
 * Times to an event that are often only known to lie between two looks.
 *
 * <p>Arrays and plain records in, records out; the times may be passes, hours or anything above 0.
 */
package charline.stat.survival;
