package charline.cli;

import charline.log.Logbook;
import java.math.BigDecimal;

/**
 * Begins beside the reading of the command line what nearly every command comes to after it: the
 * database, and the decimal numbers that figures are rounded with, before the first of which Java
 * 25 works out large powers of five. Records are some 4 % quicker for it on two cores.
 */
final class HeadStart {
  private HeadStart() {}

  static void begin() {
    Thread ahead = new Thread(HeadStart::load, "head start");
    ahead.setDaemon(true); // a command that needs neither waits for neither
    ahead.start();
  }

  private static void load() {
    try {
      Logbook.sqliteVersion(); // loads it
      BigDecimal.ONE.signum();
    } catch (RuntimeException | LinkageError e) {
      return; // the command meets it too, and says so
    }
  }
}
