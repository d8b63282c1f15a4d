package charline.cli.sample;

import charline.answer.Precautions;
import charline.cli.command.Hints;
import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.record.SampleEntries;
import charline.trial.Sample;
import charline.trial.SampleResult;
import charline.wording.NoBeamText;
import charline.wording.PrecautionText;
import charline.wording.SampleText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code sample add}. */
@Command(
    addMethodSubcommands = false,
    name = "add",
    header = "Record what a coat was tested for, and the result.",
    description =
        "One result for one substance: lead, asbestos, chlorinated film, chromate, isocyanates,"
            + " arsenic and others, or your own word. It belongs to a finish or to a job. Who may"
            + " take a sample, and who may test it, the local rules say.",
    footer = {
      "",
      "Examples:",
      "  charline sample add asbestos free --finish hall-texture --on 2026-05-04"
          + " --tested-by \"Shore Lab\" --reference B-17",
      "  charline sample add lead found --finish sill-enamel --value \"1.8 mg/cm2\"",
      "  charline sample add lead free --job boathouse"
    })
public final class SampleAdd extends LogCommand {
  @Parameters(
      index = "0",
      paramLabel = "SUBSTANCE",
      description = "What was tested for, such as lead or \"chlorinated film\".")
  private String substance;

  @Parameters(index = "1", paramLabel = "RESULT", description = "found, free or inconclusive.")
  private String result;

  @Mixin private SampleOptions options;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who records it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    SampleResult found = SampleResult.ofWord(result);
    try (Logbook log = desk.logToRead()) {
      SampleEntries entries = new SampleEntries(log, sure, desk.person(by));
      Sample sample =
          entries.add(
              new Sample(
                  log.newId(),
                  "",
                  options.finish(log),
                  options.job(),
                  entries.substance(substance),
                  options.day(desk).orElseGet(() -> desk.now().toLocalDate()),
                  options.testedBy(),
                  options.reference(),
                  found,
                  options.value(),
                  options.note(),
                  Optional.empty()));
      List<String> cautions =
          sample.finish().map(finish -> cautions(Precautions.of(log, finish))).orElse(List.of());
      reply.say(
          desk.out(),
          () -> SampleText.json(sample).put("cautions", cautions),
          SampleText.line(sample) + ".");
      if (!reply.json()) {
        cautions.forEach(this::say);
      }
    }
    return DONE;
  }

  private static List<String> cautions(Precautions known) {
    List<String> cautions = new ArrayList<>();
    PrecautionText.headline(known).ifPresent(cautions::add);
    if (known.barred()) {
      cautions.add(NoBeamText.inFull(known.bars(), Hints.RECORD_SAMPLE));
    }
    return cautions;
  }
}
