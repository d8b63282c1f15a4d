package charline.web.entry;

import java.util.UUID;

/**
 * An entry that is in the log.
 *
 * @param id its identity
 * @param patch the patch that it is or belongs to
 * @param code the code on the patch's tape
 * @param passes passes made so far
 * @param outcome what was seen
 * @param again true if the log had it already
 */
public record Receipt(
    UUID id, UUID patch, String code, int passes, String outcome, boolean again) {}
