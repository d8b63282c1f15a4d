package charline.cli.rig;

import charline.cli.command.CommandContext;
import charline.cli.command.TypedTime;
import charline.cli.command.TypedValues;
import charline.log.VoidCheck;
import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Finds the power check that a person means: by its day, its time or its setting, or the last. */
final class ChecksOfRig {
  private static final String FORMS =
      "last, 2026-06-01, \"2026-06-01 09:30\" or \"2026-06-01 60%\"";

  private final String rig;
  private final List<PowerCheck> checks;
  private final String state;

  private ChecksOfRig(String rig, List<PowerCheck> checks, String state) {
    this.rig = rig;
    this.checks = checks;
    this.state = state;
  }

  static ChecksOfRig counting(Rig rig) {
    return new ChecksOfRig(rig.name(), rig.checks(), "counts");
  }

  static ChecksOfRig out(Rig rig, List<VoidCheck> voided) {
    return new ChecksOfRig(rig.name(), voided.stream().map(VoidCheck::check).toList(), "is void");
  }

  PowerCheck of(String typed, CommandContext desk) {
    if (checks.isEmpty()) {
      throw Refusal.usage("Rig %s has no power check that %s.".formatted(rig, state));
    }
    List<String> words = new ArrayList<>(Arrays.asList(typed.strip().split("\\s+")));
    OptionalDouble percent = OptionalDouble.empty();
    String last = words.get(words.size() - 1);
    if (last.endsWith("%")) {
      percent = OptionalDouble.of(TypedValues.percentage("The setting", last));
      words.remove(words.size() - 1);
    }
    String when = String.join(" ", words);
    OptionalDouble setting = percent;
    List<PowerCheck> found =
        checks.stream()
            .filter(c -> setting.isEmpty() || c.percent() == setting.getAsDouble())
            .filter(c -> when.isEmpty() || when.equalsIgnoreCase("last") || isAt(c, when, desk))
            .toList();
    if (found.size() > 1 && (when.isEmpty() || when.equalsIgnoreCase("last"))) {
      return found.get(found.size() - 1);
    }
    if (found.size() != 1) {
      throw Refusal.usage(
          "%s power check of rig %s is meant by \"%s\"; it has %s. Name one as %s."
              .formatted(
                  found.isEmpty() ? "No" : "More than one",
                  rig,
                  typed,
                  checks.stream().map(ChecksOfRig::words).collect(Collectors.joining(", ")),
                  FORMS));
    }
    return found.get(0);
  }

  private static boolean isAt(PowerCheck check, String when, CommandContext desk) {
    if (TypedTime.isDay(when)) {
      return check.at().toLocalDate().equals(TypedTime.day("The power check", when, desk.now()));
    }
    OffsetDateTime at = desk.past("The power check", when);
    return check
        .at()
        .toInstant()
        .truncatedTo(ChronoUnit.MINUTES)
        .equals(at.toInstant().truncatedTo(ChronoUnit.MINUTES));
  }

  /** "114 W at 100 % on 2026-06-01 at 09:30"; without a time where only the day was given. */
  static String words(PowerCheck check) {
    LocalTime time = check.at().toLocalTime();
    return "%s W at %s %% on %s%s"
        .formatted(
            Figures.plain(check.meteredWatts()),
            Figures.plain(check.percent()),
            check.at().toLocalDate(),
            time.equals(LocalTime.MIDNIGHT) ? "" : " at " + time.truncatedTo(ChronoUnit.MINUTES));
  }
}
