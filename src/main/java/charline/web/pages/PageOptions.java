package charline.web.pages;

import charline.fault.FaultFiles;
import java.time.Clock;
import java.time.Duration;
import java.util.function.Consumer;

/**
 * How the bench page is served.
 *
 * @param port where; 0 for any that is free
 * @param shared whether paired devices on the network are let in
 * @param person who stands in where a device does not say who is at the bench
 * @param version version of the program, for the sheet
 * @param clock the time
 * @param announce is told every new pairing code
 * @param patience how long a page waits for an answer before it shows the last known one
 * @param faults where the program's own faults are written down
 */
public record PageOptions(
    int port,
    boolean shared,
    String person,
    String version,
    Clock clock,
    Consumer<String> announce,
    Duration patience,
    FaultFiles faults) {
  /** Short enough that a page is there at once. */
  public static final Duration PATIENCE = Duration.ofMillis(150);
}
