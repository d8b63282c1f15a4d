package charline.cli;

import charline.cli.command.Asker;
import charline.cli.command.CommandContext;
import charline.cli.command.Release;
import charline.cli.completion.CompletionScript;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** Writes the manual page and the shell completion, both from the help of the commands. */
public final class Handbook {
  private static final String SURROUNDINGS =
      """
      .SH ENVIRONMENT
      .TP
      .B CHARLINE_LOG
      The log to use if \\-\\-log is not given.
      .TP
      .B CHARLINE_BY
      Your name on records if \\-\\-by is not given. Default: the login name.
      .TP
      .B CHARLINE_CACHE
      The folder of kept fits. Default: charline in the cache folder.
      .TP
      .B XDG_DATA_HOME
      The data folder. Default: ~/.local/share.
      .TP
      .B XDG_CACHE_HOME
      The cache folder. Default: ~/.cache.
      .SH FILES
      .TP
      .I ~/.local/share/charline/log.db
      The log, one SQLite file; what lies beside it under the same name with \\-wal and \\-shm belongs to it
      while charline runs. Copy it with
      .BR "charline backup" .
      .TP
      .I ~/.local/share/charline/faults
      Details of faults in charline, one file for each.
      .TP
      .I ~/.cache/charline
      Fits that charline keeps, so that a question asked again is answered at once. You can delete it at any
      time.
      .SH EXIT STATUS
      .TP
      .B 0
      Done.
      .TP
      .B 1
      The answer is no.
      .TP
      .B 2
      Usage error.
      .TP
      .B 3
      Bad data or log error.
      .TP
      .B 4
      A fault in charline; it prints the path of a file with the details.
      """;

  private Handbook() {}

  /** Takes the folder to write to. */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    Files.writeString(folder.resolve("charline.1"), manual());
    for (String shell : List.of("bash", "zsh", "fish")) {
      Files.writeString(folder.resolve("charline-completion." + shell), completion(shell));
    }
  }

  /** The completion script of a shell. */
  static String completion(String shell) {
    return new CompletionScript(Commands.everything(nobody())).of(shell);
  }

  /** The manual page in man macros. */
  static String manual() {
    CommandLine line = Commands.everything(nobody());
    StringBuilder page = new StringBuilder();
    page.append(".TH CHARLINE 1 \"\" \"charline %s\" \"charline\"\n".formatted(Release.version()));
    page.append(
        ".SH NAME\ncharline \\- test patches and safe settings for laser stripping of wood\n");
    page.append(".SH SYNOPSIS\n.B charline\n[\\-\\-log FILE] COMMAND [OPTIONS]\n");
    page.append(".SH DESCRIPTION\n");
    asIs(page, line.getUsageMessage(Ansi.OFF));
    page.append(".SH COMMANDS\n");
    for (String command : Commands.all()) {
      CommandLine at = line;
      for (String word : command.split(" ")) {
        at = at.getSubcommands().get(word);
      }
      page.append(".SS charline ").append(roff(command)).append('\n');
      asIs(page, at.getUsageMessage(Ansi.OFF));
    }
    page.append(SURROUNDINGS);
    return page.toString();
  }

  /** Help is laid out for 80 columns already. */
  private static void asIs(StringBuilder page, String help) {
    page.append(".nf\n");
    help.lines().forEach(text -> page.append(roff(text)).append('\n'));
    page.append(".fi\n");
  }

  private static String roff(String text) {
    String plain = text.replace("\\", "\\e").replace("-", "\\-");
    return plain.startsWith(".") || plain.startsWith("'") ? "\\&" + plain : plain;
  }

  private static CommandContext nobody() {
    PrintStream nowhere =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
    return new CommandContext(Asker.NOBODY, nowhere, nowhere, Map.of(), Clock.systemUTC());
  }
}
