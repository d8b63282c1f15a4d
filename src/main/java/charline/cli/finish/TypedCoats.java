package charline.cli.finish;

import charline.cli.command.TypedValues;
import charline.log.Logbook;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Coat;
import charline.trial.Tone;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Coats as a person types them, outermost first. */
final class TypedCoats {
  private TypedCoats() {}

  static List<Coat> read(Logbook log, List<String> typed) {
    return typed.stream().map(text -> coat(log, text)).toList();
  }

  private static Coat coat(Logbook log, String text) {
    String[] parts = text.split(":", -1);
    if (parts.length > 3) {
      throw Refusal.usage(
          "A coat must read FAMILY:TONE:THICKNESS, such as latex:pale:90um, not \"%s\"."
              .formatted(text));
    }
    String family = log.reference().family(parts[0].strip());
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
