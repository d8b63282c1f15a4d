package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.QuoteAnswer;
import charline.answer.TrialQuestion;
import charline.cli.command.CommandContext;
import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.quantity.Invariant;
import charline.quantity.Measure.Quantity;
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
    header = "Reckon the hours of a job from its window.",
    description =
        "Hours (h) as a range with its parts: beam and handling at the window's start setting,"
            + " cooling, test patches, set-up, masking and fire watch. Exit code 1 means: no"
            + " window, so no quote.",
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
      description = "Edges and mouldings take the work this many times as long. Default: 1.")
  private String edges;

  @Option(
      names = "--efficiency",
      paramLabel = "SHARE",
      description = "Share of the time with the beam at work, in %%. Default: 60 (50 to 70).")
  private String efficiency;

  @Option(
      names = "--setup",
      paramLabel = "TIME",
      description = "Set-up and clean-up of a day, in min. Default: 60 (45 to 90).")
  private String setup;

  @Option(
      names = "--masking",
      paramLabel = "TIME",
      description = "Masking of a square metre, in min. Default: 10 (5 to 20).")
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
      description = "Money for an hour, in your own currency: adds the price.")
  private String rate;

  @Mixin private QuestionOptions options;
  @Mixin private JsonReply reply;

  public QuoteJob(CommandContext desk) {
    super(desk);
  }

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
      QuoteAnswer answer =
          Answers.of(log, desk.now()).quote(question.about(options.about(log)), quoting);
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
    if (setup != null) {
      quoting = quoting.withSetUp(minutes("--setup", setup));
    }
    if (masking != null) {
      quoting = quoting.withMasking(minutes("--masking", masking));
    }
    if (cooling != null) {
      quoting = quoting.withCooling(minutes("--cooling", cooling));
    }
    if (fireWatch != null) {
      quoting = quoting.withFireWatch(minutes("--fire-watch", fireWatch));
    }
    return quoting;
  }

  private static double minutes(String option, String text) {
    return Invariant.notNegative(
        option, TypedValues.measure(option, text, Quantity.MINUTES), "min");
  }
}
