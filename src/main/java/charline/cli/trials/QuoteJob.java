package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.Precautions;
import charline.answer.QuoteAnswer;
import charline.answer.TrialQuestion;
import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
import charline.quote.Quote.Task;
import charline.quote.Quoting;
import charline.window.Recommendation;
import charline.wording.ApplicabilityText;
import charline.wording.NextStepText;
import charline.wording.QuoteReport;
import charline.wording.ReasonText;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code quote}. */
@Command(
    name = "quote",
    header = "Estimate the hours for a job.",
    description =
        "Gives the hours (h) as a range with its parts: beam and handling at the window's start"
            + " setting, cooling, test patches, set-up, masking and fire watch. Exit code 1 means:"
            + " no window, so no quote.",
    footer = {
      "",
      "Examples:",
      "  charline quote latex pine --area 4.5m2",
      "  charline quote latex pine --area 48ft2 --edges 1.4 --efficiency 55%% --rate 65",
      "  charline quote latex pine --area 4.5m2 --masking 15 --fire-watch 2h"
    })
public final class QuoteJob extends LogCommand {
  @Option(names = "--area", paramLabel = "AREA", required = true, description = "Area, in m2.")
  private String area;

  @Option(
      names = "--edges",
      paramLabel = "FACTOR",
      defaultValue = "1",
      description = "Factor by which edges and mouldings lengthen the work. Default: 1.")
  private String edges;

  @Option(
      names = "--efficiency",
      paramLabel = "SHARE",
      description = "Share of the time with the beam at work, in %%. Default: 60 (50 to 70).")
  private String efficiency;

  @Option(
      names = "--setup",
      paramLabel = "TIME",
      description = "Set-up and clean-up for a day, in min. Default: 60 (45 to 90).")
  private String setup;

  @Option(
      names = "--masking",
      paramLabel = "TIME",
      description = "Masking for a square metre, in min. Default: 10 (5 to 20).")
  private String masking;

  @Option(
      names = "--cooling",
      paramLabel = "TIME",
      description =
          "Rest between two passes, until the wood is cold, in min. Default: 5 (2 to 10).")
  private String cooling;

  @Option(
      names = "--fire-watch",
      paramLabel = "TIME",
      description =
          "Watch after the last pass of a day, in min. Default: 60 (to 240), the least by NFPA 51B;"
              + " your insurer or permit may ask for more.")
  private String fireWatch;

  @Option(
      names = "--rate",
      paramLabel = "MONEY",
      description = "Price of an hour, in your own currency: adds the price of the job.")
  private String rate;

  @Mixin private QuestionOptions options;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    Quoting quoting = quoting();
    TrialQuestion question = options.question();
    OptionalDouble money =
        rate == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(TypedValues.plainNumber("--rate", rate));
    money.ifPresent(m -> Invariant.positive("--rate", m, "an hour"));
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now());
      TrialQuestion asked = question.about(options.about(log));
      Precautions known = answers.precautions(asked);
      if (known.barred()) {
        return NoBeamReply.print(desk, reply, asked, known);
      }
      QuoteAnswer answer = answers.quote(asked, quoting);
      if (answer.quote().isEmpty()) {
        Recommendation found = answer.window().found();
        desk.err()
            .println(
                "A quote needs a window, and there is none for %s: %s %s"
                    .formatted(
                        found.stratum().words(), ReasonText.of(found), NextStepText.of(found)));
        return NO;
      }
      ApplicabilityText validity = ApplicabilityText.of(answer.window().applicability());
      reply.print(
          desk.out(),
          () -> validity.json(QuoteReport.json(answer, money)),
          () -> validity.text() + QuoteReport.text(answer, money));
      return DONE;
    }
  }

  private Quoting quoting() {
    Quoting quoting =
        Quoting.usual(TypedValues.measure("--area", area, Quantity.SURFACE))
            .withEdges(TypedValues.plainNumber("--edges", edges));
    if (efficiency != null) {
      quoting = quoting.withEfficiency(TypedValues.chance("--efficiency", efficiency));
    }
    quoting = with(quoting, Task.SET_UP, "--setup", setup);
    quoting = with(quoting, Task.MASKING, "--masking", masking);
    quoting = with(quoting, Task.COOLING, "--cooling", cooling);
    return with(quoting, Task.FIRE_WATCH, "--fire-watch", fireWatch);
  }

  private static Quoting with(Quoting quoting, Task task, String option, String text) {
    return text == null
        ? quoting
        : quoting.with(
            task,
            Invariant.notNegative(
                option, TypedValues.measure(option, text, Quantity.MINUTES), "min"));
  }
}
