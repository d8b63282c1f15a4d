package charline.log.database;

import java.nio.file.Path;

/**
 * An older log that was brought up to date when it was opened.
 *
 * @param from its version before
 * @param to its version now
 * @param kept copy of the log before the upgrade
 */
public record Upgrade(int from, int to, Path kept) {}
