/**
 * Keeps values that take long to compute, so that a question that was answered before is answered
 * at once: fits, the windows found from them, lists of patches to burn. {@link
 * charline.cache.Cache} is the door.
 *
 * <p>This package must not know what a fit, a patch or a question is: it takes values apart by
 * their record components. It depends on {@code log.database} only, for files that are private to
 * their owner.
 *
 * <h2>Decisions</h2>
 *
 * <p>A value is found by a SHA-256 over the very arguments that it is computed from, over what is
 * computed, and over this build of the program ({@code BuildMark}): a patch that was amended,
 * another prior or seed, other code or another Java is another name, and whatever was kept before
 * is never looked at. Rejected: the state of the log as the key, which a patch of another wood
 * changes; a version number alone, which two builds of one version share; a list of what counts,
 * which somebody forgets to lengthen. Ids count by the order in which they come, as they only say
 * which things are one.
 *
 * <p>Files hold the bits of a value, not text, so that the answer is the same to the last digit.
 * What stands in the arguments (patches, boards, rigs, names) is written as a reference to them,
 * and cannot be read without the log.
 *
 * <p>Only records and enums of this program are read back, by their canonical constructors with all
 * that these check, and a few classes that the caller names ({@code Form}). Rejected: Java
 * serialisation, which makes objects of any class; JSON, which rounds or takes as long as a fit.
 *
 * <p>A file that is damaged, cut off, or of another program or person is passed over and written
 * anew. Each carries its own name and a checksum. CRC-32 finds every slip of a disk up to 32 bits
 * and all but one in four thousand million others; it is not there against somebody who may write
 * into the folder. So the folder must be its owner's alone, or it is not used. Rejected: SHA-256
 * over the draws, which takes longer before Java has compiled it than all the rest of a second
 * answer.
 *
 * <p>Values are written by a thread of their own after the answer; where that fails, nothing more
 * is written by this run and nobody is bothered. Rejected: a sentence about a full disk beside a
 * window, which has nothing to do with it.
 */
package charline.cache;
