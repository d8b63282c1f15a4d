/**
 * What the beam does to the work, from what a person can read off the machine: energy, fluence,
 * irradiance, overlap, dose and area rate. Words, units and invariants only.
 *
 * <p>This package must not know of patches, boards, matrices, statistics, databases or screens.
 *
 * <p>Formulas: ISO 11145 vocabulary for laser quantities; beam widths as in ISO 11146-1.
 */
package charline.exposure;
