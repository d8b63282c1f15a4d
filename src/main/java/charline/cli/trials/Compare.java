package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.CompareAnswer;
import charline.answer.FamilyAndWood;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.paper.ComparePage;
import charline.wording.CompareText;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code compare}. */
@Command(
    addMethodSubcommands = false,
    name = "compare",
    header = "Compare two ways of working on the same stock.",
    description =
        "Says which of two rigs, figures, lights, pass counts, tones, places or rests leaves more"
            + " room between the dose that clears and the dose that chars, how sure that is, and"
            + " how many more pairs of patches would settle it. Give an option twice to tell the"
            + " two ways apart. Exit code 1 means that it is not settled, 3 that the models do not"
            + " fit the trials.",
    footer = {
      "",
      "Examples:",
      "  charline compare latex pine --figure circle --figure line",
      "  charline compare varnish oak --rig heron --rig grebe --passes 2",
      "  charline compare latex pine --light pulsed --light cw --to pulsed-or-cw.html"
    })
public final class Compare extends LogCommand {
  @Mixin private StockOptions stock;
  @Mixin private CompareOptions ways;

  @Option(
      names = "--to",
      paramLabel = "FILE.html",
      description = "Also write a page with a picture of both, to print.")
  private Path to;

  @Option(names = "--replace", description = "Overwrite an existing file.")
  private boolean replace;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who prints it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    ways.check();
    if (to != null) {
      PageFile.check(to, replace);
    }
    TrialQuestion base = stock.question();
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now(), desk.kept());
      FamilyAndWood about = stock.about(log);
      TrialQuestion first = ways.question(base, 0, log).about(about);
      TrialQuestion second = ways.question(base, 1, log).about(about);
      Precautions known = answers.precautions(first);
      if (known.barred()) {
        return NoBeamReply.print(desk, reply, first, known);
      }
      CompareAnswer answer = answers.compare(first, second, ways.passes(0), ways.passes(1));
      CompareText words = new CompareText(answer);
      if (to != null) {
        PageFile.write(new ComparePage(words, PageFile.stamp(desk, by)).html(), to);
      }
      reply.print(
          desk.out(),
          words::json,
          () -> words.text() + (to == null ? "" : "\n%s written.\n".formatted(to)));
      if (!answer.contest().reliable()) {
        return DATA;
      }
      return answer.contest().settled() ? DONE : NO;
    }
  }
}
