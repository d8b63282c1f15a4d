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
 * <p>A window is what one posterior promises. How much boards differ, which few boards show badly,
 * is learned from the whole log, and a piece with patches of its own is told by them. Rejected: a
 * second, more cautious prior that promises had to survive, with a step back from both limits where
 * boards are seen to differ. In 80 simulated shops that served to choose, those two left 50 windows
 * where learning left 68, and where boards differ by 0.5 they broke as many promises. Rejected as
 * well: the posterior's mean risk in place of a bound, which found windows where nothing works.
 *
 * <p>A window for a piece needs no three boards where six patches lie on the piece itself. Three
 * clean patches at its start setting confirm it (common practice, no published source); one that
 * charred inside its ranges takes it back, whatever the model says. Rejected: counting cooler
 * patches as confirmation, since they say nothing of char.
 *
 * <p>A window that would be gone if both limits moved by 0.15 in ln dose is provisional: in ninety
 * simulated shops 7 of 39 of those were gone at the next look and 2 of 27 of the others. Rejected:
 * the number of patches or boards, which says nothing of how much room a window has; the upper
 * bound of the boards' spread, by which every window on three boards is provisional.
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
 * <p>A window goes no hotter than four patches that were burned in its way and came through (one in
 * five where fewer than 16 were), whatever the models promise: the largest box leans on its hottest
 * corner, where they are least sure. In 280 simulated shops that served to choose, 20 broken
 * promises of char became 8, and 163 windows 158. Rejected: three patches, which left nearly twice
 * as many broken; the same of clearing, which left hardly a window where each patch is read once; a
 * wider prior of the transitions, which closes windows everywhere.
 *
 * <p>A window clears with half of the doubt that was asked for (95 % for 90 %) wherever that leaves
 * room for a hand, and goes before faster ones that do not: of many boxes and passes the largest
 * and fastest is the one whose clearing is most likely overrated. In 690 simulated shops that
 * served to choose, 37 broken promises to clear became 15 (of 344 windows for a piece, 45 became
 * 28), broken promises of char 31 instead of 27, no window was lost, and windows took 7 % more
 * passes. Rejected: 97.5 % where there is room for that, which took as many passes again; 95 %
 * always, which lost nearly one window in five.
 *
 * <p>Windows are searched for every number of passes up to about forty between the fewest and most
 * tried, then in steps of 5 %, so that one mistyped number cannot make the search endless.
 * Rejected: tried numbers alone, which leave out good ones between; a fixed limit, which leaves out
 * finishes that take many passes.
 */
package charline.window;
