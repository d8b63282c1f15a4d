package charline.cli.completion;

import charline.cli.command.LogCommand;
import charline.refusal.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code completion}. */
@Command(
    addMethodSubcommands = false,
    name = "completion",
    header = "Print the script that completes charline in your shell.",
    description =
        "With it, the tab key completes commands and options, and the names of rigs, boards,"
            + " finishes, woods, families, people, jobs and codes from your log ($$CHARLINE_LOG, or"
            + " the one after --log). Save what it prints as the file that your shell looks for:%n"
            + "  bash: ~/.local/share/bash-completion/completions/charline%n"
            + "  zsh: ~/.zfunc/_charline, with fpath+=~/.zfunc before compinit in ~/.zshrc%n"
            + "  fish: ~/.config/fish/completions/charline.fish%n"
            + "Then start a new shell. Without the package bash-completion, put the script into"
            + " ~/.bashrc.",
    footer = {"", "Example:", "  charline completion bash"})
public final class Completion extends LogCommand {
  private static final List<String> SHELLS = List.of("bash", "zsh", "fish");

  private final Supplier<CommandLine> everything;

  @Parameters(paramLabel = "SHELL", description = "bash, zsh or fish.")
  private String shell;

  /**
   * @param everything the program with all its commands
   */
  public Completion(Supplier<CommandLine> everything) {
    this.everything = everything;
  }

  @Override
  public Integer call() {
    String name = shell.strip().toLowerCase(Locale.ROOT);
    if (!SHELLS.contains(name)) {
      throw Refusal.usage("The shell must be bash, zsh or fish, not \"%s\".".formatted(shell));
    }
    desk.out().print(new CompletionScript(everything.get()).of(name));
    return DONE;
  }
}
