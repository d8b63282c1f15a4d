package charline.cli.trials;

import charline.answer.Answers;
import charline.answer.AskedRisk;
import charline.answer.FixedKnobs;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.cli.command.LogCommand;
import charline.cli.command.TypedValues;
import charline.cli.render.JsonReply;
import charline.exposure.PowerSetting;
import charline.log.Logbook;
import charline.quantity.Invariant;
import charline.trial.Knob;
import charline.window.SpeedKnob;
import charline.wording.ApplicabilityText;
import charline.wording.RiskText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code risk}. */
@Command(
    addMethodSubcommands = false,
    name = "risk",
    header = "Show the char risk and the clearing chance of one setting.",
    description =
        "Says for a power (%% or W), a speed (mm/s) and passes how many areas may char and how many"
            + " clear, each with a bound that has your confidence, on a new board or on one piece,"
            + " and whether the setting lies inside what was tried. Other knobs are as most of the"
            + " patches had them. Exit code 3 means that the models do not fit the trials.",
    footer = {
      "",
      "Examples:",
      "  charline risk latex pine --power 60%% --hand 27mm/s --passes 2",
      "  charline risk latex pine --power 60%% --hand 27mm/s --piece boathouse-door",
      "  charline risk latex pine --power 90W --scan 3m/s --at spacing=0.1mm --json"
    })
public final class Risk extends LogCommand {
  @Option(
      names = "--power",
      paramLabel = "POWER",
      required = true,
      description = "60%% of the rated power, or 120W on the work. Without a unit: %%.")
  private String power;

  @Option(
      names = "--hand",
      paramLabel = "SPEED",
      description = "Hand speed, in mm/s; or give --scan.")
  private String hand;

  @Option(
      names = "--scan",
      paramLabel = "SPEED",
      description = "Spot speed of a scanner, in mm/s; its spacing is that of most patches.")
  private String scan;

  @Option(
      names = "--passes",
      paramLabel = "COUNT",
      defaultValue = "1",
      description = "Passes in all. Default: 1.")
  private String passes;

  @Mixin private QuestionOptions options;
  @Mixin private WorkOptions work;
  @Mixin private JobAreaOption job;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    PowerSetting typedPower = TypedValues.power(power);
    SpeedKnob.Kind kind = kind();
    String option = kind == SpeedKnob.Kind.HAND ? "--hand" : "--scan";
    double speed =
        Invariant.positive(
            option,
            TypedValues.measure(
                option, kind == SpeedKnob.Kind.HAND ? hand : scan, kind.knob().quantity()),
            "mm/s");
    int count = TypedValues.count("--passes", "the number of passes", passes);
    TrialQuestion question = work.of(options.question(), options, job.squareMetres(), "--job-area");
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now(), desk.kept());
      TrialQuestion asked = question.about(options.about(log));
      Precautions known = answers.precautions(asked);
      if (known.barred()) {
        return NoBeamReply.print(desk, reply, asked, known);
      }
      requireSpeed(kind, answers.choose(asked).bench().speed().kind(), asked.fixed());
      AskedRisk risk = answers.risk(asked, typedPower, speed, count);
      reply.print(
          desk.out(),
          () -> RiskText.json(risk),
          () ->
              ApplicabilityText.of(risk.applicability()).text(CommandHints.HINTS)
                  + RiskText.of(risk));
      return risk.risk().reliable() ? DONE : DATA;
    }
  }

  private SpeedKnob.Kind kind() {
    if (hand == null && scan == null) {
      throw TypedValues.refused("--hand", "the speed is missing; give --hand or --scan.");
    }
    if (hand != null && scan != null) {
      throw TypedValues.refused("--hand", "give --hand or --scan, not both.");
    }
    return hand != null ? SpeedKnob.Kind.HAND : SpeedKnob.Kind.SCAN;
  }

  /** A speed of the other kind says nothing until what lies across it is known. */
  private static void requireSpeed(SpeedKnob.Kind typed, SpeedKnob.Kind bench, FixedKnobs fixed) {
    if (typed == bench) {
      return;
    }
    throw typed == SpeedKnob.Kind.HAND
        ? TypedValues.refused(
            "--hand",
            fixed.of(Knob.SPACING).isPresent()
                ? "a line spacing goes with a scan speed; give --scan, or a width with --at."
                : "these patches were scanned; give --scan, or the width with --at width=60mm.")
        : TypedValues.refused(
            "--scan",
            fixed.of(Knob.WIDTH).isPresent()
                ? "a width goes with a hand speed; give --hand, or a spacing with --at."
                : "these patches were led by hand; give --hand, or the spacing with --at"
                    + " spacing=0.1mm.");
  }
}
