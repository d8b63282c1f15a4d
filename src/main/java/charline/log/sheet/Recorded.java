package charline.log.sheet;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Patch;
import charline.trial.Reading;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Patches already in the log, to distinguish a repeated patch from a clashing one. */
final class Recorded {
  private final Logbook log;
  private final List<PatchEntry> unclaimed;

  /** Whether there was any patch before the sheet. */
  private final boolean any;

  /**
   * @param uncoded whether patches without a code come, which may be any of those recorded
   */
  Recorded(Logbook log, boolean uncoded) {
    this.log = log;
    any = log.hasPatches();
    this.unclaimed = uncoded ? new ArrayList<>(log.patches(Filter.ALL)) : List.of();
  }

  /** The entries that the log has of some codes, void or not, by {@link PatchLines#key}. */
  Map<String, PatchEntry> ofCodes(List<String> codes) {
    return any
        ? log.known(codes).stream()
            .collect(Collectors.toMap(PatchLines::key, code -> log.patch(code)))
        : Map.of();
  }

  /**
   * True if the log has an entry that differs in nothing but its code. Each entry answers for one
   * patch of the sheet only: two equal lines are two patches.
   */
  boolean claim(PatchEntry entry) {
    for (PatchEntry old : unclaimed) {
      if (difference(old, entry).isEmpty()) {
        unclaimed.remove(old);
        return true;
      }
    }
    return false;
  }

  /** The first thing in which two entries differ, codes and identities aside. */
  static Optional<String> difference(PatchEntry a, PatchEntry b) {
    Patch p = a.patch();
    Patch q = b.patch();
    if (!same(p.burnedAt(), q.burnedAt())) {
      return Optional.of("time");
    }
    if (!p.rig().name().equals(q.rig().name())) {
      return Optional.of("rig");
    }
    if (!p.board().name().equals(q.board().name())) {
      return Optional.of("board");
    }
    if (!p.finish().name().equals(q.finish().name())) {
      return Optional.of("finish");
    }
    if (!KnobCells.same(
        KnobCells.values(p.settings(), p.rig().spotDefinition(), p.areaSquareCentimetres()),
        KnobCells.values(q.settings(), q.rig().spotDefinition(), q.areaSquareCentimetres()))) {
      return Optional.of("settings");
    }
    if (!p.circumstances().equals(q.circumstances())) {
      return Optional.of("circumstances");
    }
    if (!same(p.readings(), q.readings())) {
      return Optional.of("readings");
    }
    return a.by().equals(b.by()) && a.note().equals(b.note())
        ? Optional.empty()
        : Optional.of("person or note");
  }

  private static boolean same(List<Reading> a, List<Reading> b) {
    if (a.size() != b.size()) {
      return false;
    }
    for (int i = 0; i < a.size(); i++) {
      Reading r = a.get(i);
      Reading s = b.get(i);
      if (r.passes() != s.passes()
          || !r.outcome().equals(s.outcome())
          || !r.soot().equals(s.soot())
          || !SheetNumbers.same(r.depthMicrometres(), s.depthMicrometres())
          || !same(r.at(), s.at())
          || !r.by().equals(s.by())
          || !r.note().equals(s.note())) {
        return false;
      }
    }
    return true;
  }

  private static boolean same(OffsetDateTime a, OffsetDateTime b) {
    return a.toInstant()
        .truncatedTo(ChronoUnit.MILLIS)
        .equals(b.toInstant().truncatedTo(ChronoUnit.MILLIS));
  }
}
