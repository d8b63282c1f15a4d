package charline.cli.render;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.record.Setup;
import charline.wording.Json;
import java.util.function.Supplier;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A command that joins two records of one thing. */
public abstract class JoinCommand extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The record that goes.")
  private String name;

  @Option(
      names = "--into",
      paramLabel = "NAME",
      required = true,
      description = "The record that stays.")
  private String into;

  @Mixin private WhyOption why;
  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  /**
   * What was joined.
   *
   * @param from name of the record that goes
   * @param into name of the record that stays
   * @param patches that count for the second now
   * @param json the record that stays
   */
  public record Joined(String from, String into, int patches, Supplier<Json> json) {}

  /** The thing in a word, with a capital. */
  protected abstract String thing();

  /** Joins the records of these names. */
  protected abstract Joined join(Logbook log, Setup setup, String from, String onto, String reason);

  @Override
  public final Integer call() {
    String reason = why.reasonIfAny();
    try (Logbook log = desk.logToRead()) {
      Joined joined = join(log, new Setup(log, sure, why.person(desk)), name, into, reason);
      reply.say(
          desk.out(),
          () -> joined.json().get().put("joined", joined.from()).put("patches", joined.patches()),
          "%s %s is joined into %s: %s counted for it now. Both names find it."
              .formatted(
                  thing(),
                  joined.from(),
                  joined.into(),
                  Figures.count(joined.patches(), "patch is", "patches are")));
    }
    return DONE;
  }
}
