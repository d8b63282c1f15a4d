package charline.log;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * One change to something recorded, written by the database itself.
 *
 * @param at when
 * @param by who, if known
 * @param what table and column, such as "reading.outcome"
 * @param before old value, empty where there was none
 * @param after new value, empty where it was taken out
 * @param why reason given, if any
 */
public record Change(
    OffsetDateTime at,
    Optional<String> by,
    String what,
    Optional<String> before,
    Optional<String> after,
    Optional<String> why) {}
