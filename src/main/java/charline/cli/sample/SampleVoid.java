package charline.cli.sample;

import charline.cli.command.LogCommand;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.trial.Sample;
import charline.wording.SampleText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code sample void}. */
@Command(
    addMethodSubcommands = false,
    name = "void",
    header = "Take the result of a sample out of every answer.",
    description =
        "It stays in the log with its value (in mg/cm2, %% or as you typed it) and the reason.",
    footer = {"", "Example:", "  charline sample void S-0003 --why \"wrong finish\""})
public final class SampleVoid extends LogCommand {
  @Parameters(paramLabel = "CODE", description = "The sample: S-0003 or 3.")
  private String code;

  @Mixin private WhyOption why;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      String reason =
          why.reason("a result is taken out", () -> log.isFresh(log.samples().byCode(code).id()));
      Sample sample = log.samples().voidSample(code, why.person(desk), reason);
      reply.say(
          desk.out(),
          () -> SampleText.json(sample).put("void_because", reason),
          "%s is void: %s. It no longer counts in any answer.".formatted(sample.code(), reason));
    }
    return DONE;
  }
}
