package charline.cli;

import charline.cli.command.LogCommand;
import charline.refusal.Refusal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A first word that needs a second one, such as {@code rig}. */
@Command(addMethodSubcommands = false)
final class Group extends LogCommand {
  private final String words;
  @Spec private CommandSpec spec;

  /**
   * @param words the second words, as a sentence lists them
   */
  Group(String words) {
    this.words = words;
  }

  @Override
  public Integer call() {
    throw Refusal.usage("`%s` needs a second word: %s.".formatted(spec.qualifiedName(), words));
  }
}
