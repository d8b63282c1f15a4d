/**
 * Whether a rig still does what it did: control patches and power checks over time. Knows no files,
 * pages or commands.
 */
package charline.drift;
