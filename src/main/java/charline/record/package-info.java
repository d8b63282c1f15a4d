/**
 * Recording: what may be added, read, amended and taken out, and what is doubted first. Command
 * line, page and import come through here, so that one entry has one answer; they only parse and
 * show. Knows no SQL, no options and no HTTP.
 */
package charline.record;
