/**
 * The window: settings that lift the finish and leave the wood unburned, with the risk and the
 * confidence they were asked for, or a plain no.
 *
 * <p>This package must not know of the log, of files or of screens.
 *
 * <h2>Decisions</h2>
 *
 * <p>Leverage of a setting is measured with every direction spread by at least 3 %. A knob that was
 * never moved would make it undefined. Rejected: dropping directions, which forgets that they were
 * never tried.
 *
 * <p>A hand-held range narrower than 15 % from slowest to fastest is passed over where a wider one
 * exists, and the answer says that it is narrow where none does. No hand keeps closer than that
 * (common practice, no published source).
 *
 * <p>A promise has to survive a more cautious prior: boards half as different again, transitions a
 * quarter wider. Re-weighting the draws costs next to nothing. In simulated shops the usual prior
 * alone broke char promises in three windows of ten where boards differ by 0.3, and in two of three
 * where they differ by 0.5 ({@code reports/validation.md}). Rejected: boards twice as different (a
 * third of the good windows gone), a heavy-tailed prior on boards (the same), twice the spread on
 * all (windows gone, promises no better).
 *
 * <p>Where boards are seen to differ, a window keeps back from both limits, in proportion to how
 * far the median of their spread lies above 0.15 in ln dose: twice that on three boards, once on
 * five. In ninety simulated shops looked at with 12, 18 and 24 patches on three boards (boards
 * 0.15, 0.3 and 0.5), some of which had been looked at while the slope was chosen, 9 of 66 windows
 * were gone at the next look and 24 of 115 broke a promise (under the char prior that was cut off
 * at 0). Rejected: no window above 0.2 on fewer than five boards and above 0.3 at all (16 of 61
 * gone, 25 of 100 broken); twice as steep, which is nearly that threshold; no such caution.
 *
 * <p>A window that would be gone if both limits moved by 0.15 in ln dose is provisional: in the
 * same shops 7 of 39 of those were gone at the next look and 2 of 27 of the others. Rejected: the
 * number of patches or boards, which says nothing of how much room a window has; the upper bound of
 * the boards' spread, by which every window on three boards is provisional.
 *
 * <p>A knob that stands outside the trials does not close a window, but marks it as untried, as
 * another rig does: a person may have no other lens. Hand and scan speed are axes of the box, so
 * they are kept to what was tried. Rejected: no answer at all, which leaves the person without the
 * patches that would try it; extrapolating in silence.
 *
 * <p>A limit that no patch crossed applies as far as six patches support it. Without a charred
 * patch the prior alone sets the hot side, and in simulated shops whose passes hardly count most
 * such windows broke their promise. Rejected: always one charred patch, which doubled the patches
 * to a window; three supporting patches.
 *
 * <p>Windows are searched for every number of passes up to about forty between the fewest and most
 * tried, then in steps of 5 %, so that one mistyped number cannot make the search endless.
 * Rejected: tried numbers alone, which leave out good ones between; a fixed limit, which leaves out
 * finishes that take many passes.
 */
package charline.window;
