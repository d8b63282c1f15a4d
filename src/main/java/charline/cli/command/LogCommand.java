package charline.cli.command;

import charline.wording.Table;
import java.util.concurrent.Callable;
import picocli.CommandLine.Option;

/** What every command is: work at a desk that ends with an exit code. */
public abstract class LogCommand implements Callable<Integer> {
  /** Done. */
  public static final int DONE = 0;

  /** The answer is no: nothing found, no window. */
  public static final int NO = 1;

  /** The command was not understood. */
  public static final int USAGE = 2;

  /** Bad data or log error. */
  public static final int DATA = 3;

  /** A fault in charline. */
  public static final int FAULT = 4;

  /** Where it works; there before anything is parsed. */
  protected CommandContext desk;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      order = 1000,
      description = "Show this help.")
  boolean help;

  /** Puts the command where it shall work. */
  public final LogCommand in(CommandContext context) {
    desk = context;
    return this;
  }

  /** Prints a sentence, folded to the width of a page of text. */
  protected final void say(String sentence) {
    desk.out().println(Table.paragraph(sentence));
  }
}
