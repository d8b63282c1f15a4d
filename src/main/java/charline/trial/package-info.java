/**
 * The things a person has and does at the bench: rigs, boards, finishes, patches and what was seen
 * on them. Trade words with their rules, as plain values.
 *
 * <p>This package must not know of statistics, databases, files or screens.
 *
 * <h2>Decisions</h2>
 *
 * <p>Patches and boards lie between exposure and log, in a package of their own. Rejected: all of
 * it in exposure, which would then know finishes and people.
 *
 * <p>{@code PlainText} makes text plain where records are made: line ends become LF, other control
 * characters a blank, because whoever pastes a note means its words. A name or code with such a
 * character is refused, because nobody could type it again. Rejected: refusing notes too; cleaning
 * in the tables alone, which leaves what older logs hold.
 *
 * <p>Power on the work follows the checks of the latest day, at the nearest repetition rate and
 * pulse duration; where those are others, every paper says so. Rejected: the latest check at the
 * same rate however old, which would miss a window that has fouled since; one factor for all
 * settings, which was a fifth too high where a source is turned down.
 *
 * <p>A value is a slip if it is far from all that the rig had, not from what rigs have: 6 mm is a
 * spot of some rig. Rejected: a narrower range for everybody, which asks about every odd machine.
 */
package charline.trial;
