package charline.log.sheet;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.database.Database;
import charline.log.database.Timestamps;
import charline.log.database.Where;
import charline.trial.Patch;
import charline.trial.Reading;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** Patches already in the log, to distinguish a repeated patch from a clashing one. */
final class Recorded {
  private final Logbook log;

  /** Whether there was any patch before the sheet. */
  private final boolean any;

  /** Each entry answers for one patch of the sheet only: two equal lines are two patches. */
  private final Set<UUID> claimed = new HashSet<>();

  Recorded(Logbook log) {
    this.log = log;
    any = log.hasPatches();
  }

  /** The entries that the log has of some codes, void or not, by {@link PatchLines#key}. */
  Map<String, PatchEntry> ofCodes(List<String> codes) {
    return any
        ? log.known(codes).stream()
            .collect(Collectors.toMap(PatchLines::key, code -> log.patch(code)))
        : Map.of();
  }

  /** The entries of patches that were burned when some of the sheet were, which have no code. */
  List<PatchEntry> burnedWith(List<PatchEntry> uncoded) {
    if (!any || uncoded.isEmpty()) {
      return List.of();
    }
    Object[] times =
        uncoded.stream()
            .map(entry -> Timestamps.utc(entry.patch().burnedAt()))
            .distinct()
            .toArray();
    return log.patches(
        new Where(
            Filter.COUNTING + " AND p.burned_at_utc IN " + Database.places(times.length), times));
  }

  /** True if one of some entries differs from an entry of the sheet in nothing but its code. */
  boolean claim(PatchEntry entry, List<PatchEntry> some) {
    return some.stream()
        .filter(old -> !claimed.contains(old.patch().id()) && difference(old, entry).isEmpty())
        .findFirst()
        .map(old -> claimed.add(old.patch().id()))
        .orElse(false);
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
