package charline.cli;

import charline.cli.command.Asker;
import charline.cli.command.CommandContext;
import charline.cli.command.LogCommand;
import charline.cli.command.ProgressLine;
import charline.cli.completion.LogNames;
import charline.refusal.Refusal;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;

/** Start of the program. */
public final class Main {
  /** The longest path of common systems; nothing that a person types is longer. */
  private static final int LONGEST_WORD = 4096;

  private static final int SHOWN = 20;

  private Main() {}

  /** Runs one command and ends the process with its exit code; nothing else ever ends it. */
  public static void main(String[] args) {
    HeadStart.begin();
    boolean terminal = System.console() != null;
    // A pipe or a file gets UTF-8 on every platform; a terminal gets what it can show.
    PrintStream out =
        terminal
            ? System.out
            : new PrintStream(
                new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
    Asker asker = terminal ? Asker.at(System.in, System.err) : Asker.NOBODY;
    int code = run(args, asker, out, System.err, System.getenv(), Clock.systemDefaultZone());
    out.flush();
    System.exit(code);
  }

  /**
   * Runs one command.
   *
   * @param args command and options
   * @param in read for answers, if the process has a terminal
   * @param out gets the answer
   * @param err gets refusals and warnings, one sentence each
   * @param env environment
   * @param clock tells the time and the zone
   * @return 0 done, 1 the answer is no, 2 not understood, 3 bad data or log error; 4 a fault in
   *     charline
   */
  public static int run(
      String[] args,
      InputStream in,
      PrintStream out,
      PrintStream err,
      Map<String, String> env,
      Clock clock) {
    Asker asker = System.console() == null ? Asker.NOBODY : Asker.at(in, err);
    return run(args, asker, out, err, env, clock);
  }

  static int run(
      String[] args,
      Asker asker,
      PrintStream out,
      PrintStream err,
      Map<String, String> env,
      Clock clock) {
    return run(args, new CommandContext(asker, out, err, env, clock));
  }

  /** Runs a further command at the same desk, with the same log and the same person to ask. */
  static int asked(List<String> words, CommandContext desk) {
    return run(words.toArray(String[]::new), desk);
  }

  private static int run(String[] args, CommandContext desk) {
    if (args.length > 0 && args[0].equals(LogNames.WORD)) {
      LogNames.print(args, desk); // before any class of the commands is loaded
      return LogCommand.DONE;
    }
    PrintStream out = desk.out();
    PrintStream err = desk.err();
    FailureReporter troubles = new FailureReporter(desk);
    try {
      requireShort(args);
      String[] words = helpLast(args);
      CommandLine line = Commands.lineFor(words, desk);
      line.setParameterExceptionHandler(troubles);
      line.setExecutionExceptionHandler(troubles);
      ProgressLine shown = desk.watch("charline " + (words.length == 0 ? "" : words[0]));
      try {
        return line.execute(words);
      } finally {
        shown.close();
      }
    } catch (Exception | LinkageError | StackOverflowError | OutOfMemoryError e) {
      return troubles.codeFor(e, "charline");
    } finally {
      out.flush();
      err.flush();
      desk.close();
    }
  }

  private static void requireShort(String[] args) {
    for (String word : args) {
      if (word.length() > LONGEST_WORD) {
        throw Refusal.usage(
            "A word of a command must be at most %d characters, and \"%s...\" has %d; shorten it."
                .formatted(LONGEST_WORD, word.substring(0, SHOWN), word.length()));
      }
    }
  }

  /** Runs a further command at the same desk, with nobody to ask and a log of its own. */
  static int again(List<String> words, CommandContext desk) {
    return run(
        words.toArray(String[]::new),
        Asker.NOBODY,
        desk.out(),
        desk.err(),
        desk.env(),
        desk.clock());
  }

  /** {@code help patch add} asks for the same as {@code patch add --help}. */
  private static String[] helpLast(String[] args) {
    if (args.length == 0 || !args[0].equals("help")) {
      return args;
    }
    List<String> words = new ArrayList<>(List.of(args));
    words.remove(0);
    words.add("--help");
    return words.toArray(String[]::new);
  }
}
