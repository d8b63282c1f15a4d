package charline.cli.completion;

import charline.cli.command.CommandContext;
import charline.log.names.KnownNames;
import charline.log.names.NameKind;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * Names of the log for a shell: {@code charline complete board bo}. It is no command of the help: a
 * shell runs it while a person types, so it says nothing at all where something is wrong.
 */
public final class LogNames {
  /** The first word of such a call. */
  public static final String WORD = "complete";

  private LogNames() {}

  /**
   * Prints the names, a line each.
   *
   * @param args the word, the kind of names, the beginning that was typed, and the log if another
   *     was named
   */
  public static void print(String[] args, CommandContext desk) {
    try {
      String beginning = args.length > 2 ? args[2] : "";
      if (args.length > 3 && !args[3].isBlank()) {
        desk.useLog(Path.of(args[3]));
      }
      Arrays.stream(NameKind.values())
          .filter(kind -> args.length > 1 && kind.word().equals(args[1]))
          .flatMap(kind -> KnownNames.of(desk.logFile(), kind, beginning).stream())
          .forEach(desk.out()::println);
    } catch (RuntimeException | LinkageError e) {
      return; // a mistyped path and the like: the command that is being typed will say so
    }
  }
}
