package charline.log;

import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Brings what is recorded of a patch and its readings to what it should have been. */
record Amendment(PatchTable patches, ReadingTable readings) {
  /** Writes what differs; the triggers of the schema keep each old value. */
  void write(PatchEntry entry, String why) {
    Patch wanted = entry.patch();
    Patch recorded =
        patches
            .byId(wanted.id())
            .map(PatchEntry::patch)
            .orElseThrow(
                () ->
                    Refusal.usage(
                        "Only a recorded patch can be amended; %s is not in this log under that identity."
                            .formatted(wanted.code())));
    if (!recorded.code().equals(wanted.code())) {
      throw Refusal.usage(
          "The code on the masking tape cannot be amended: %s was given as %s. Void the patch and record it anew."
              .formatted(recorded.code(), wanted.code()));
    }
    patches.amend(entry);
    writeReadings(recorded, wanted, why);
  }

  private void writeReadings(Patch recorded, Patch wanted, String why) {
    Map<UUID, Reading> before = new HashMap<>();
    recorded.readings().forEach(r -> before.put(r.id(), r));
    List<Reading> raised = new ArrayList<>();
    List<Reading> others = new ArrayList<>();
    List<Reading> added = new ArrayList<>();
    for (Reading reading : wanted.readings()) {
      Reading earlier = before.remove(reading.id());
      if (earlier == null) {
        added.add(reading);
      } else if (reading.passes() > earlier.passes()) {
        raised.add(reading);
      } else if (!reading.equals(earlier)) {
        others.add(reading);
      }
    }
    if (!before.isEmpty() && why == null) {
      throw Refusal.usage("A reading is struck only for a reason, and none was given; say why.");
    }
    before.keySet().forEach(id -> readings.strike(id, why));
    // Passes differ on a patch at every moment: those that rise go first, the highest ahead.
    Collections.reverse(raised);
    raised.forEach(readings::amend);
    others.forEach(readings::amend);
    added.forEach(reading -> readings.add(wanted.id(), reading));
  }

  /** The same patch, void for a reason. */
  PatchEntry voided(PatchEntry entry, String why) {
    entry
        .voided()
        .ifPresent(
            earlier -> {
              throw Refusal.usage(
                  "%s is void already (%s); nothing was changed."
                      .formatted(entry.patch().code(), earlier));
            });
    return new PatchEntry(entry.patch(), entry.typed(), entry.by(), entry.note(), Optional.of(why));
  }

  /** Refuses a reading that cannot follow the last one, and any on a void patch. */
  void requireFollows(PatchEntry entry, Reading reading) {
    Patch patch = entry.patch();
    entry
        .voided()
        .ifPresent(
            why -> {
              throw Refusal.data(
                  "%s is void (%s), so it takes no more readings; record a new patch."
                      .formatted(patch.code(), why));
            });
    try {
      Patch.requireFollows(patch.code(), patch.lastReading(), reading);
    } catch (Refusal e) {
      throw Refusal.data(e.getMessage(), e);
    }
  }
}
