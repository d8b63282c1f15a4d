package charline.model;

/**
 * What an analysis rests on: plain counts.
 *
 * @param patches patches, each counted once
 * @param boards different boards
 * @param readings readings over all patches
 * @param charredPatches patches that charred by their last reading
 * @param clearedPatches patches that were cleared by their last reading
 */
public record Evidence(
    int patches, int boards, int readings, int charredPatches, int clearedPatches) {}
