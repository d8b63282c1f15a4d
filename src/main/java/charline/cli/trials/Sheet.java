package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.answer.WindowAnswer;
import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.paper.Paper;
import charline.paper.SheetStamp;
import charline.paper.WindowSheet;
import charline.wording.Json;
import charline.wording.SheetCautions;
import charline.wording.VerdictText;
import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code sheet}. */
@Command(
    addMethodSubcommands = false,
    name = "sheet",
    header = "Write the one-page window sheet for the bench and the client's file.",
    description =
        "An HTML file that loads nothing else and prints on one page: start setting, ranges of"
            + " power (%%) and speed (mm/s), map, evidence and cautions. You get a sheet without a"
            + " window too.",
    footer = {"", "Example:", "  charline sheet latex pine --to latex-pine.html --job-area 4.5m2"})
public final class Sheet extends LogCommand {
  @Option(names = "--to", paramLabel = "FILE.html", required = true, description = "File to write.")
  private Path to;

  @Option(names = "--replace", description = "Overwrite an existing file.")
  private boolean replace;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      defaultValue = "any",
      description = "a4, letter, or any. Default: any, the paper in the printer.")
  private String paper;

  @Mixin private QuestionOptions options;
  @Mixin private WorkOptions work;
  @Mixin private JobAreaOption job;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who prints it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    Paper size = paper();
    PageFile.check(to, replace);
    TrialQuestion question = work.of(options.question(), options, job.squareMetres(), "--job-area");
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now(), desk.kept());
      TrialQuestion asked = question.about(options.about(log));
      Precautions known = answers.precautions(asked);
      if (known.barred()) {
        int no = NoBeamReply.print(desk, reply, asked, known);
        desk.err()
            .println(
                "%s was not written: there is no sheet for a coat that the beam stays off."
                    .formatted(to));
        return no;
      }
      WindowAnswer window = answers.window(asked);
      SheetStamp stamp = PageFile.stamp(desk, by);
      PageFile.write(WindowSheet.of(window, SheetCautions.of(window), stamp).html(size), to);
      reply.print(
          desk.out(),
          () ->
              new Json()
                  .put("file", to.toString())
                  .put("family", window.found().stratum().family())
                  .put("wood", window.found().stratum().wood())
                  .put("verdict", window.found().verdict().word()),
          () ->
              "%s written: %s, verdict %s.%n"
                  .formatted(to, window.found().stratum().words(), VerdictText.of(window.found())));
    }
    return DONE;
  }

  private Paper paper() {
    return switch (paper.strip().toLowerCase(Locale.ROOT)) {
      case "any" -> Paper.ANY;
      case "a4" -> Paper.A4;
      case "letter" -> Paper.LETTER;
      default ->
          throw TypedValues.refused(
              "--paper", "the size must be a4, letter or any, not \"%s\".".formatted(paper));
    };
  }
}
