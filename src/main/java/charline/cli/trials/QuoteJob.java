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
import charline.quote.Lead;
import charline.quote.Quoting;
import charline.quote.Rates;
import charline.quote.Task;
import charline.refusal.Refusal;
import charline.window.Recommendation;
import charline.wording.ApplicabilityText;
import charline.wording.BriefList;
import charline.wording.QuoteReport;
import charline.wording.ReasonText;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code quote}. */
@Command(
    addMethodSubcommands = false,
    name = "quote",
    header = "Estimate the hours for a job.",
    description =
        "Gives the hours (h) as a range with every part, which add up as printed, and the days."
            + " Usual times are common practice with no published source. Prices are in your own"
            + " money and only where you give them. Exit code 1 means: no window, so no quote.",
    footer = {
      "",
      "Examples:",
      "  charline quote latex pine --area 4.5m2",
      "  charline quote latex pine --area 48ft2 --edges 1.4 --efficiency 55%% --rate 65",
      "  charline quote latex pine --area 4.5m2 --masking 15 --fire-watch 2h",
      "  charline quote latex pine --area 20m2 --lead free --second-person 100%%",
      "  charline quote latex pine --area 20m2 --rate 65 --machine-day 240"
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
      names = "--day",
      paramLabel = "TIME",
      description =
          "All hours of a day, set-up and fire watch included, in min. Default: 480, which is 8h.")
  private String day;

  @Option(
      names = "--setup",
      paramLabel = "TIME",
      description = "Set-up and clean-up for a day, in min. Default: 60 (45 to 90).")
  private String setup;

  @Option(
      names = "--waste",
      paramLabel = "TIME",
      description = "Waste and filters for a day, in min. Default: 15 (10 to 30).")
  private String waste;

  @Option(
      names = "--masking",
      paramLabel = "TIME",
      description = "Masking for a square metre, in min. Default: 10 (5 to 20).")
  private String masking;

  @Option(
      names = "--sanding",
      paramLabel = "TIME",
      description = "Sanding after, for a square metre, in min. Default: 15 (10 to 30).")
  private String sanding;

  @Option(
      names = "--cooling",
      paramLabel = "TIME",
      description =
          "Rest between two passes, until the wood is cold, in min. Default: 5 (2 to 10).")
  private String cooling;

  @Option(
      names = "--rework",
      paramLabel = "TIME",
      description = "Putting one charred spot right, in min. Default: 10 (5 to 20).")
  private String rework;

  @Option(
      names = "--fire-watch",
      paramLabel = "TIME",
      description =
          "Watch after the last pass of a day, in min. Default: 60 (to 120); NFPA 51B has one"
              + " hour, and your insurer or permit may ask for up to four.")
  private String fireWatch;

  @Option(
      names = "--lead",
      paramLabel = "RESULT",
      description =
          "free, found or untested; where it is not free, containment and clearance are added."
              + " Default: untested for coats that may hold lead.")
  private String lead;

  @Option(
      names = "--containment",
      paramLabel = "TIME",
      description = "Containment for lead, in min. Default: 240 (120 to 480).")
  private String containment;

  @Option(
      names = "--clearance",
      paramLabel = "TIME",
      description =
          "Cleaning and clearance test after lead work, in min. Default: 180 (120 to 360).")
  private String clearance;

  @Option(
      names = "--contingency",
      paramLabel = "SHARE",
      description = "Share of the work added for what nobody foresees, in %%. Default: 10.")
  private String contingency;

  @Option(
      names = "--second-person",
      paramLabel = "SHARE",
      description = "Share of the hours on site that a second person is there, in %%. Default: 0.")
  private String secondPerson;

  @Option(
      names = "--rate",
      paramLabel = "MONEY",
      description = "Price of an hour, in your own currency: adds the price of the job.")
  private String rate;

  @Option(
      names = "--second-rate",
      paramLabel = "MONEY",
      description = "Price of the second person's hour. Default: that of --rate.")
  private String secondRate;

  @Option(
      names = "--machine-day",
      paramLabel = "MONEY",
      description = "Price of the machine for a day. Default: none.")
  private String machineDay;

  @Option(
      names = "--waste-cost",
      paramLabel = "MONEY",
      description = "Filters, bags and disposal for the whole job. Default: none.")
  private String wasteCost;

  @Option(
      names = "--smallest-charge",
      paramLabel = "MONEY",
      description = "The least that a job is charged. Default: none.")
  private String smallestCharge;

  @Mixin private QuestionOptions options;
  @Mixin private WorkOptions work;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    double squareMetres = TypedValues.measure("--area", area, Quantity.SURFACE);
    Quoting quoting = quoting(squareMetres);
    TrialQuestion question =
        work.of(options.question(), options, OptionalDouble.of(squareMetres), "--area");
    refuseIdle();
    Rates rates =
        new Rates(
            money("--rate", rate, "an hour"),
            money("--second-rate", secondRate, "an hour"),
            money("--machine-day", machineDay, "a day"),
            money("--waste-cost", wasteCost, "for the job"),
            money("--smallest-charge", smallestCharge, "for the job"));
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now(), desk.kept());
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
                        found.stratum().words(),
                        ReasonText.of(found),
                        BriefList.paragraph(answer.window().next())));
        return NO;
      }
      ApplicabilityText validity = ApplicabilityText.of(answer.window().applicability());
      reply.print(
          desk.out(),
          () -> validity.json(QuoteReport.json(answer, rates)),
          () -> validity.text(CommandHints.HINTS) + QuoteReport.text(answer, rates));
      return DONE;
    }
  }

  private Quoting quoting(double squareMetres) {
    Quoting quoting =
        Quoting.usual(squareMetres).withEdges(TypedValues.plainNumber("--edges", edges));
    if (efficiency != null) {
      quoting = quoting.withEfficiency(TypedValues.chance("--efficiency", efficiency));
    }
    if (day != null) {
      quoting = quoting.withHoursADay(TypedValues.measure("--day", day, Quantity.MINUTES) / 60);
    }
    if (contingency != null) {
      quoting = quoting.withContingency(TypedValues.chance("--contingency", contingency));
    }
    if (secondPerson != null) {
      quoting = quoting.withSecondPerson(TypedValues.chance("--second-person", secondPerson));
    }
    if (lead != null) {
      quoting = quoting.with(lead());
    }
    quoting = with(quoting, Task.SET_UP, "--setup", setup);
    quoting = with(quoting, Task.WASTE, "--waste", waste);
    quoting = with(quoting, Task.MASKING, "--masking", masking);
    quoting = with(quoting, Task.SANDING, "--sanding", sanding);
    quoting = with(quoting, Task.COOLING, "--cooling", cooling);
    quoting = with(quoting, Task.REWORK, "--rework", rework);
    quoting = with(quoting, Task.CONTAINMENT, "--containment", containment);
    quoting = with(quoting, Task.CLEARANCE, "--clearance", clearance);
    return with(quoting, Task.FIRE_WATCH, "--fire-watch", fireWatch);
  }

  /** What was typed and would change nothing. */
  private void refuseIdle() {
    boolean free = lead != null && lead() == Lead.FREE;
    if (free && (containment != null || clearance != null)) {
      throw TypedValues.refused(
          "--lead", "where it is free, nothing is contained or cleared; leave those times out.");
    }
    if (secondRate != null && secondPerson == null) {
      throw TypedValues.refused(
          "--second-rate", "there is no second person; give their share with --second-person.");
    }
  }

  private Lead lead() {
    try {
      return Lead.ofWord(lead);
    } catch (Refusal e) {
      throw TypedValues.refused("--lead", e.getMessage());
    }
  }

  private static OptionalDouble money(String option, String text, String unit) {
    return text == null
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Invariant.positive(option, TypedValues.plainNumber(option, text), unit));
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
