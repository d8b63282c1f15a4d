package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.LogPriors;
import charline.answer.Priors;
import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.wording.Json;
import charline.wording.PriorFileText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code prior}. */
@Command(
    addMethodSubcommands = false,
    name = "prior",
    header = "Print the priors of the models, or learn some from your log for another shop.",
    description =
        "Prints a text file with one line for each parameter of the burn-onset (char) and removal"
            + " (clearing) models, doses in J/cm2, with the reason and source of each. Save it,"
            + " edit it, and give it to any question about trials.",
    footer = {
      "",
      "Examples:",
      "  charline prior",
      "  charline prior --from-log --to shop.prior",
      "  charline prior --from-log latex pine --to latex-on-pine.prior"
    })
public final class PriorShow extends LogCommand {
  private static final String USE = "give the file to `charline window --prior FILE`";

  @Option(
      names = "--from-log",
      description =
          "Move the usual priors by what the trials of your log have in common, as a start for"
              + " another shop. Names, jobs and dates stay out of the file.")
  private boolean fromLog;

  @Parameters(
      arity = "0..*",
      paramLabel = "FAMILY WOOD",
      description =
          "With --from-log: coating family, and wood if you like, that the priors are to be for."
              + " Trials of that family, and for char on that wood, count in full; the others are"
              + " taken to differ twice as much. Default: all count alike.")
  private List<String> near = List.of();

  @Option(names = "--to", paramLabel = "FILE", description = "Write the priors to a new file.")
  private Path to;

  @Option(names = "--replace", description = "Overwrite an existing file.")
  private boolean replace;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    if (!near.isEmpty() && !fromLog) {
      throw TypedValues.refused(
          "FAMILY WOOD",
          "the usual priors are the same for all; name trials with --from-log only.");
    }
    if (to != null && !replace && Files.exists(to)) {
      throw Refusal.usage(
          "%s already exists; give another name, or --replace to overwrite it.".formatted(to));
    }
    if (fromLog) {
      try (Logbook log = desk.logToRead()) {
        LogPriors learned =
            Answers.of(log, desk.now(), desk.kept()).priors(LogPriors.kin(near, log));
        answer(() -> PriorFileText.json(learned), PriorFileText.of(learned, USE));
      }
    } else {
      answer(() -> PriorFileText.json(Priors.USUAL), PriorFileText.of(Priors.USUAL, USE));
    }
    return DONE;
  }

  private void answer(Supplier<Json> json, String text) {
    if (to == null) {
      reply.print(desk.out(), json, () -> text);
      return;
    }
    write(text, to);
    reply.print(
        desk.out(),
        json,
        () -> "%s written; give it to any question with --prior %s.%n".formatted(to, to));
  }

  /** Writes a file at once: none is ever left half written. */
  private static void write(String text, Path file) {
    try {
      Path draft = Files.createTempFile(file.toAbsolutePath().getParent(), ".prior", ".txt");
      try {
        Files.writeString(draft, text);
        Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(draft);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
