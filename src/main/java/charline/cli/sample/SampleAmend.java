package charline.cli.sample;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.record.SampleEntries;
import charline.refusal.Refusal;
import charline.trial.Sample;
import charline.trial.SampleResult;
import charline.wording.SampleText;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code sample amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct the result of a sample; the old values stay in the history.",
    description = "Values that you do not give stay unchanged.",
    footer = {
      "",
      "Example:",
      "  charline sample amend S-0003 --result found --why \"the report came by post\""
    })
public final class SampleAmend extends LogCommand {
  @Parameters(paramLabel = "CODE", description = "The sample: S-0003 or 3.")
  private String code;

  @Option(names = "--substance", paramLabel = "WORD", description = "What was tested for.")
  private String substance;

  @Option(names = "--result", paramLabel = "RESULT", description = "found, free or inconclusive.")
  private String result;

  @Mixin private SampleOptions options;
  @Mixin private WhyOption why;
  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      Sample old = log.samples().byCode(code);
      String reason = why.reason("a record is amended", () -> log.isFresh(old.id()));
      old.voided()
          .ifPresent(
              earlier -> {
                throw Refusal.usage(
                    "%s is void (%s); record the result anew.".formatted(old.code(), earlier));
              });
      SampleEntries entries = new SampleEntries(log, sure, why.person(desk));
      Sample amended =
          new Sample(
              old.id(),
              old.code(),
              options.finish(log).or(old::finish),
              options.job().or(old::job),
              substance == null ? old.substance() : entries.substance(substance),
              options.day(desk).orElse(old.takenOn()),
              options.testedBy().or(old::testedBy),
              options.reference().or(old::reference),
              result == null ? old.result() : SampleResult.ofWord(result),
              options.value().or(old::value),
              options.note().or(old::note),
              Optional.empty());
      entries.amend(old, amended, reason);
      reply.say(desk.out(), () -> SampleText.json(amended), SampleText.line(amended) + ".");
    }
    return DONE;
  }
}
