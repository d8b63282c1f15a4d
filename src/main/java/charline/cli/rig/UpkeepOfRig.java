package charline.cli.rig;

import charline.cli.command.CommandContext;
import charline.cli.command.TypedTime;
import charline.refusal.Refusal;
import charline.trial.Upkeep;
import charline.wording.UpkeepText;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Finds the upkeep that a person means: the last, or by its day and what was done. */
final class UpkeepOfRig {
  private UpkeepOfRig() {}

  /**
   * @param all upkeep to choose from, in the order of doing
   * @param typed last, a day, or a day and what was done
   */
  static Upkeep of(String rig, List<Upkeep> all, String typed, CommandContext desk) {
    if (all.isEmpty()) {
      throw Refusal.usage("Rig %s has no such upkeep.".formatted(rig));
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
                  rig,
                  typed,
                  all.stream().map(UpkeepText::words).collect(Collectors.joining("; "))));
    }
    return found.get(0);
  }
}
