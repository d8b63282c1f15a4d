package charline.log.sheet;

import static charline.log.sheet.Column.*;

import charline.refusal.Refusal;
import charline.trial.Outcome;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Reads readings cell by cell; wrong cells become faults. */
final class Readings {
  private static final Pattern COUNT = Pattern.compile("0*[1-9]\\d{0,8}");

  private Readings() {}

  /** Passes so far, 0 if there was a fault. */
  static int passes(SheetRow row, Faults faults) {
    String text = row.text(PASSES);
    if (!COUNT.matcher(text).matches()) {
      faults.add(row, PASSES, "Passes must be a whole number, 1 or more.");
      return 0;
    }
    return Integer.parseInt(text);
  }

  static Optional<Outcome> outcome(SheetRow row, Faults faults) {
    try {
      return Optional.of(Outcome.parse(row.text(OUTCOME)));
    } catch (Refusal e) {
      faults.add(row, OUTCOME, e.getMessage());
      return Optional.empty();
    }
  }

  static Optional<Boolean> soot(SheetRow row, Faults faults) {
    switch (row.text(SOOT).toLowerCase(Locale.ROOT)) {
      case "":
        return Optional.empty();
      case "yes":
        return Optional.of(true);
      case "no":
        return Optional.of(false);
      default:
        faults.add(row, SOOT, "Soot must be yes, no or empty.");
        return Optional.empty();
    }
  }
}
