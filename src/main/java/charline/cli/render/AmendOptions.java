package charline.cli.render;

import charline.cli.command.CommandContext;
import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.log.Logbook;
import charline.record.Setup;
import charline.wording.Json;
import java.util.function.Supplier;
import picocli.CommandLine.Mixin;

/** How a record that is set up once is amended: why, by whom, and in what form to say so. */
public final class AmendOptions {
  @Mixin private WhyOption why;
  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  /**
   * What a record reads now.
   *
   * @param sentence for a person
   */
  public record Amended(Supplier<Json> json, String sentence) {}

  /** Amends one record. */
  @FunctionalInterface
  public interface Amendment {
    /**
     * The record as it reads now.
     *
     * @param setup checks and writes it
     * @param reason null if none was given
     */
    Amended in(Logbook log, Setup setup, String reason);
  }

  /** Amends a record of the log and says what it reads now. */
  public int amend(CommandContext desk, Amendment amendment) {
    String reason = why.reasonIfAny();
    try (Logbook log = desk.logToRead()) {
      Amended now = amendment.in(log, new Setup(log, sure, why.person(desk)), reason);
      reply.say(desk.out(), now.json(), now.sentence());
    }
    return LogCommand.DONE;
  }
}
