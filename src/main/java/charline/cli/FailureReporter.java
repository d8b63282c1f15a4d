package charline.cli;

import charline.cli.command.CommandContext;
import charline.cli.command.Hints;
import charline.cli.command.LogCommand;
import charline.fault.FaultFiles;
import charline.log.reference.Nearest;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns whatever went wrong into one sentence and an exit code. */
final class FailureReporter
    implements CommandLine.IParameterExceptionHandler, CommandLine.IExecutionExceptionHandler {
  /** Set to anything, the whole stack trace of a failure is printed too. */
  static final String TRACE_VARIABLE = "CHARLINE_TRACE";

  private final CommandContext desk;

  FailureReporter(CommandContext desk) {
    this.desk = desk;
  }

  /**
   * Says why a command failed; an unforeseen failure is never a success.
   *
   * @param task the command, without what was typed after it
   */
  int codeFor(Throwable trouble, String task) {
    if (desk.env().containsKey(TRACE_VARIABLE)) {
      trouble.printStackTrace(desk.err());
    }
    if (trouble instanceof Refusal refused) {
      desk.err().println(Hints.sentence(refused));
      return switch (refused.kind()) {
        case NOTHING_FOUND -> LogCommand.NO;
        case USAGE -> LogCommand.USAGE;
        case DATA -> LogCommand.DATA;
      };
    }
    if (trouble instanceof UncheckedIOException unchecked) {
      desk.err().println(sentence(unchecked.getCause()));
      return LogCommand.DATA;
    }
    if (trouble instanceof IOException io) {
      desk.err().println(sentence(io));
      return LogCommand.DATA;
    }
    desk.err()
        .println(FaultFiles.sentence(trouble, "nothing more was done", written(trouble, task)));
    return LogCommand.FAULT;
  }

  private FaultFiles.Place written(Throwable fault, String task) {
    FaultFiles files;
    try {
      files = desk.faultFiles();
    } catch (Refusal e) { // no such folder can be
      return FaultFiles.unwritten(fault);
    }
    // The system's clock, since that of the desk may be what fails.
    return files.write(fault, task, Instant.now());
  }

  @Override
  public int handleExecutionException(Exception e, CommandLine at, ParseResult parsed) {
    return codeFor(e, at.getCommandSpec().qualifiedName());
  }

  /** Reports a usage error with the nearest known word and the command that shows help. */
  @Override
  public int handleParseException(ParameterException e, String[] args) {
    CommandLine at = e.getCommandLine();
    if (e.getCause() instanceof Refusal) {
      return codeFor(e.getCause(), at.getCommandSpec().qualifiedName());
    }
    desk.err().println(reason(e) + " See `" + at.getCommandSpec().qualifiedName() + " --help`.");
    return LogCommand.USAGE;
  }

  private static String reason(ParameterException e) {
    if (e instanceof UnmatchedArgumentException unmatched) {
      return unmatchedReason(unmatched);
    }
    if (e instanceof OverwrittenOptionException twice
        && twice.getOverwritten() instanceof OptionSpec option) {
      return option.longestName() + " was given twice; give it once.";
    }
    if (e instanceof MissingParameterException missing) {
      return missingReason(missing);
    }
    String message = e.getMessage().lines().findFirst().orElse("The command was not understood");
    return message.endsWith(".") ? message : message + ".";
  }

  private static String unmatchedReason(UnmatchedArgumentException e) {
    String word = e.getUnmatched().get(0);
    CommandSpec at = e.getCommandLine().getCommandSpec();
    if (word.startsWith("-")) {
      String option = word.replaceFirst("=.*", "");
      return "There is no option %s here%s"
          .formatted(option, offer(option, at.optionsMap().keySet()));
    }
    return at.subcommands().isEmpty()
        ? "\"%s\" is one word too many; put quotes around words that belong together."
            .formatted(word)
        : "There is no command \"%s\"%s".formatted(word, offer(word, at.subcommands().keySet()));
  }

  private static String offer(String word, Set<String> known) {
    List<String> near = Nearest.to(word, known);
    return near.isEmpty() ? "." : "; did you mean " + String.join(" or ", near) + "?";
  }

  private static String missingReason(MissingParameterException e) {
    if (e.getMessage().contains("parameter for option")) {
      String option = e.getMissing().isEmpty() ? "An option" : name(e.getMissing().get(0));
      return option + " needs a value after it.";
    }
    return e.getMissing().stream()
            .map(FailureReporter::name)
            .collect(Collectors.joining(" and ", "", ""))
        + (e.getMissing().size() == 1 ? " is missing." : " are missing.");
  }

  private static String name(ArgSpec arg) {
    return arg instanceof OptionSpec option ? option.longestName() : arg.paramLabel();
  }

  private static String sentence(IOException e) {
    if (e instanceof NoSuchFileException missing) {
      return "There is no file " + missing.getFile() + ".";
    }
    if (e instanceof AccessDeniedException denied) {
      return denied.getFile() + " cannot be opened; check its permissions.";
    }
    if (e instanceof FileAlreadyExistsException there) {
      return there.getFile() + " already exists; give another name.";
    }
    if (e instanceof FileSystemException file && file.getReason() != null) {
      return "%s could not be read or written: %s.".formatted(file.getFile(), file.getReason());
    }
    return "Reading or writing failed: " + e.getMessage() + ".";
  }
}
