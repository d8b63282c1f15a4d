package charline.cli.finish;

import charline.answer.Precautions;
import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.TypedValues;
import charline.log.Logbook;
import charline.quantity.Measure.Quantity;
import charline.record.Setup;
import charline.refusal.Refusal;
import charline.trial.Coat;
import charline.trial.Finish;
import charline.trial.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code finish add}. */
@Command(
    name = "add",
    header = "Set up a finish: the coats on the wood.",
    description =
        "Give one --coat for each coat, outermost first, as FAMILY:TONE:THICKNESS; tone "
            + "(pale, mid, dark) and dry thickness (um, or mil) may be left out.",
    footer = {
      "",
      "Example:",
      "  charline finish add wall-latex --coat latex:pale:90um --coat primer:pale"
    })
public final class FinishAdd extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "Your name for the finish.")
  private String name;

  @Option(
      names = "--coat",
      paramLabel = "COAT",
      required = true,
      description = "A coat, such as latex:pale:90um, varnish:mid or shellac.")
  private List<String> coats;

  @Option(
      names = "--family",
      paramLabel = "FAMILY",
      description = "Coating family that it counts as. Default: that of the outermost coat.")
  private String family;

  @Option(names = "--by", paramLabel = "WHO", description = "Who sets it up.")
  private String by;

  @Mixin private SureOption sure;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToWrite()) {
      List<Coat> stack = new ArrayList<>();
      coats.forEach(coat -> stack.add(coat(log, coat)));
      Finish finish = new Setup(log, sure, desk.person(by)).addFinish(name, family, stack);
      desk.out()
          .println(
              "Finish %s is set up: %s, counted as %s."
                  .formatted(finish.name(), FinishView.stack(finish), finish.family()));
      desk.out().print(FinishView.warning(Precautions.of(log, finish)));
    }
    return DONE;
  }

  private static Coat coat(Logbook log, String text) {
    String[] parts = text.split(":", -1);
    if (parts.length > 3) {
      throw Refusal.usage(
          "A coat must read FAMILY:TONE:THICKNESS, such as latex:pale:90um, not \"%s\"."
              .formatted(text));
    }
    String family = log.family(parts[0].strip());
    Optional<Tone> tone = Optional.empty();
    OptionalDouble thickness = OptionalDouble.empty();
    for (int i = 1; i < parts.length; i++) {
      String part = parts[i].strip();
      if (part.isEmpty()) {
        continue;
      }
      // latex:90um says all there is to say of a coat whose tone nobody noted.
      if (Character.isDigit(part.charAt(0)) || part.startsWith("-") || i == 2) {
        thickness = TypedValues.ifGiven("--coat", part, Quantity.THICKNESS);
      } else {
        tone = Optional.of(Tone.ofWord(part));
      }
    }
    return new Coat(family, tone, thickness, Optional.of(parts[0]));
  }
}
