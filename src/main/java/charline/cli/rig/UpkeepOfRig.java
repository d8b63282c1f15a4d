package charline.cli.rig;

import charline.cli.command.CommandContext;
import charline.cli.command.TypedTime;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.wording.UpkeepText;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Parameters;

/** Which upkeep of which rig a command is about: the last, or by its day and what was done. */
final class UpkeepOfRig {
  @Parameters(index = "0", paramLabel = "NAME", description = "The rig.")
  private String name;

  @Parameters(
      index = "1",
      paramLabel = "UPKEEP",
      description = "The upkeep: last, its day, or its day and work, such as \"2026-06-01 lens\".")
  private String typed;

  /** The rig. */
  Rig rig(Logbook log) {
    return log.rig(name);
  }

  /**
   * The upkeep of it.
   *
   * @param all upkeep to choose from, in the order of doing
   */
  Upkeep of(Rig rig, List<Upkeep> all, CommandContext desk) {
    if (all.isEmpty()) {
      throw Refusal.usage("Rig %s has no such upkeep.".formatted(rig.name()));
    }
    if (typed.strip().equalsIgnoreCase("last")) {
      return all.get(all.size() - 1);
    }
    List<String> words = Arrays.asList(typed.strip().split("\\s+", 2));
    LocalDate day = TypedTime.day("The upkeep", words.get(0), desk.now());
    List<Upkeep> found =
        all.stream()
            .filter(u -> u.at().toLocalDate().equals(day))
            .filter(u -> words.size() < 2 || u.work().equalsIgnoreCase(words.get(1)))
            .toList();
    if (found.size() != 1) {
      throw Refusal.usage(
          "%s upkeep of rig %s is meant by \"%s\"; it has %s. Name one as last, 2026-06-01 or \"2026-06-01 lens\"."
              .formatted(
                  found.isEmpty() ? "No" : "More than one",
                  rig.name(),
                  typed,
                  all.stream().map(UpkeepText::words).collect(Collectors.joining("; "))));
    }
    return found.get(0);
  }
}
