package charline.cli;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;

/**
 * Runs commands one after another in one process, so that Java can keep what they need in an
 * archive for those that start later. What they print is thrown away.
 */
public final class Rehearsal {
  private Rehearsal() {}

  /**
   * Begins and ends as each start does, as that takes classes too; in between runs each argument as
   * a command.
   */
  public static void main(String[] commands) {
    HeadStart.begin();
    rehearse(commands);
    System.exit(0);
  }

  /**
   * Runs commands, their words split at blanks.
   *
   * @throws IllegalStateException if a command says no or fails: an archive of that is of no use
   */
  static void rehearse(String... commands) {
    PrintStream nowhere =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
    for (String command : List.of(commands)) {
      int code =
          Main.run(
              command.split(" "),
              System.in,
              nowhere,
              System.err,
              System.getenv(),
              Clock.systemDefaultZone());
      if (code != 0) {
        throw new IllegalStateException("`%s` ended with %d.".formatted(command, code));
      }
    }
  }
}
