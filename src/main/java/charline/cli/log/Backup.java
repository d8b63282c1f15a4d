package charline.cli.log;

import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code backup}. */
@Command(
    addMethodSubcommands = false,
    name = "backup",
    header = "Copy the log, even while others record in it.",
    description =
        "The copy is the complete log at one moment; a copy that fails leaves no file. If you give"
            + " a folder, the copy is named after the log and the time. To go back to a copy, give"
            + " it with --log, or put it in place of the log while charline is not running.",
    footer = {"", "Example:", "  charline backup log-before-the-panels.db"})
public final class Backup extends LogCommand {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss", Locale.ROOT);

  @Parameters(paramLabel = "FILE", description = "A new file, or a folder.")
  private Path to;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Path copy = Files.isDirectory(to) ? to.resolve(stamped(log.file())) : to;
      log.backup(copy);
      try (Logbook copied = Logbook.openToRead(copy, desk.clock())) {
        LogContents contents = LogContents.of(copied);
        reply.say(
            desk.out(),
            () -> contents.json(copy),
            "%s contains %s.".formatted(copy, contents.words()));
      }
    }
    return DONE;
  }

  private String stamped(Path log) {
    String name = log.getFileName().toString().replaceFirst("\\.db$", "");
    return "%s-%s.db".formatted(name, STAMP.format(desk.now()));
  }
}
