package charline.log.sheet;

import charline.exposure.Emission;
import charline.exposure.Optics;
import charline.exposure.SpotDefinition;
import charline.log.Logbook;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Circumstances;
import charline.trial.Knob;
import charline.trial.MeteredPlausibility;
import charline.trial.Plausibility;
import charline.trial.Plausibility.Doubt;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import java.io.Reader;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Rigs, their power checks and their upkeep from CSV files, to set up a log in one go.
 *
 * <p>Rigs: {@code rig,emission,rated_w,wavelength_nm,spot_mm,spot_definition,rep_khz,pulse_ns,
 * width_mm,max_pulse_mj,lens,figure,lines_s,standoff_mm,defocus_mm,air,extraction,focus_spot_mm,
 * beam_quality}. Power checks: {@code rig,checked_at,power_pct,metered_w,rep_khz,pulse_ns}. Upkeep:
 * {@code rig,done_at,what,hours,note}. {@link RigSheetExporter} writes them.
 */
public final class RigSheet {
  static final List<String> RIG_HEADINGS =
      List.of(
          "rig",
          "emission",
          "rated_w",
          "wavelength_nm",
          "spot_mm",
          "spot_definition",
          "rep_khz",
          "pulse_ns",
          "width_mm",
          "max_pulse_mj",
          "lens",
          "figure",
          "lines_s",
          "standoff_mm",
          "defocus_mm",
          "air",
          "extraction",
          "focus_spot_mm",
          "beam_quality");

  /** Headings from here on are left out where no rig has a value. */
  static final List<String> RIG_RARE =
      List.of(
          "max_pulse_mj",
          "figure",
          "lines_s",
          "standoff_mm",
          "defocus_mm",
          "air",
          "extraction",
          "focus_spot_mm",
          "beam_quality");

  private static final List<String> RIG_NEEDED =
      List.of("rig", "emission", "rated_w", "wavelength_nm", "spot_definition");
  static final List<String> CHECK_HEADINGS =
      List.of("rig", "checked_at", "power_pct", "metered_w", "rep_khz", "pulse_ns");
  private static final List<String> CHECK_NEEDED =
      List.of("rig", "checked_at", "power_pct", "metered_w");

  static final List<String> UPKEEP_HEADINGS = List.of("rig", "done_at", "what", "hours", "note");
  private static final List<String> UPKEEP_NEEDED = List.of("rig", "done_at", "what");

  private final TextTable rigs;
  private final Optional<TextTable> checks;
  private final Optional<TextTable> upkeep;

  private RigSheet(SheetText rigs, Optional<SheetText> checks, Optional<SheetText> upkeep) {
    this.rigs = TextTable.read(rigs, RIG_HEADINGS, RIG_NEEDED);
    this.checks = checks.map(c -> TextTable.read(c, CHECK_HEADINGS, CHECK_NEEDED));
    this.upkeep = upkeep.map(u -> TextTable.read(u, UPKEEP_HEADINGS, UPKEEP_NEEDED));
  }

  /** Reads rigs alone. */
  public static RigSheet read(Path rigs) {
    return read(rigs, Optional.empty(), Optional.empty());
  }

  /**
   * Reads rigs and their power checks.
   *
   * @throws charline.refusal.Refusal in one sentence if a file is missing, empty, not text or has
   *     other columns
   */
  public static RigSheet read(Path rigs, Path checks) {
    return read(rigs, Optional.of(checks), Optional.empty());
  }

  /** As {@link #read(Path, Path)}, with what was done to the rigs where there is a file of it. */
  public static RigSheet read(Path rigs, Optional<Path> checks, Optional<Path> upkeep) {
    return new RigSheet(
        SheetText.read(rigs), checks.map(SheetText::read), upkeep.map(SheetText::read));
  }

  /** Reads rigs and their power checks from readers, to their ends. */
  public static RigSheet read(Reader rigs, Reader checks) {
    return new RigSheet(
        SheetText.of("the rig sheet", TrialSheet.all(rigs)),
        Optional.of(SheetText.of("the power checks", TrialSheet.all(checks))),
        Optional.empty());
  }

  /**
   * What a rig sheet brought.
   *
   * @param rigs rigs that the log did not know
   * @param furtherChecks power checks of rigs that it knew
   * @param furtherUpkeep upkeep of rigs that it knew
   */
  public record Brought(int rigs, int furtherChecks, int furtherUpkeep) {}

  /**
   * Adds the rigs that the log does not know yet, with their power checks, in one transaction. A
   * rig that it knows stays as it is and gets those checks and that upkeep that are new.
   *
   * @param clock gives the zone of times without one
   * @param by who sets them up
   * @throws charline.refusal.Refusal naming line, column and value of every fault, or the check of
   *     a known rig that has another power
   */
  public Brought addTo(Logbook log, Clock clock, String by) {
    return addTo(log, clock, by, Optional.empty());
  }

  /**
   * As {@link #addTo(Logbook, Clock, String)}, but values that look like slips are faults.
   *
   * @param hint how a person says that they are sure of such a value; empty if they are
   */
  public Brought addTo(Logbook log, Clock clock, String by, Optional<String> hint) {
    return log.inTransaction(
        () -> {
          Map<String, Rig> known = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
          log.rigs().forEach(rig -> known.put(rig.name(), rig));
          int added = 0;
          int further = 0;
          int upkept = 0;
          for (Rig rig : rigs(log, clock, hint)) {
            Rig old = known.get(rig.name());
            if (old == null) {
              log.add(rig, by);
              added++;
            } else {
              further += addNewChecks(old, rig.checks(), log, by);
              upkept += addNewUpkeep(old, rig.upkeep(), log, by);
            }
          }
          return new Brought(added, further, upkept);
        });
  }

  private static int addNewChecks(Rig rig, List<PowerCheck> checks, Logbook log, String by) {
    int added = 0;
    for (PowerCheck check : checks) {
      Optional<PowerCheck> old =
          rig.checks().stream().filter(c -> isSameReading(c, check)).findFirst();
      if (old.isEmpty()) {
        log.rigEntries().addCheck(rig.name(), check, by);
        added++;
      } else if (old.get().meteredWatts() != check.meteredWatts()) {
        throw Refusal.data(
            "Rig %s already has a power check at that time, %s W at %s %% on %s, not %s W; correct the sheet."
                .formatted(
                    rig.name(),
                    SheetNumbers.text(old.get().meteredWatts()),
                    SheetNumbers.text(check.percent()),
                    check.at().toLocalDate(),
                    SheetNumbers.text(check.meteredWatts())));
      }
    }
    return added;
  }

  private static int addNewUpkeep(Rig rig, List<Upkeep> all, Logbook log, String by) {
    List<Upkeep> fresh =
        all.stream()
            .filter(
                upkeep ->
                    rig.upkeep().stream()
                        .noneMatch(
                            u -> u.at().isEqual(upkeep.at()) && u.work().equals(upkeep.work())))
            .toList();
    fresh.forEach(upkeep -> log.rigEntries().addUpkeep(rig.name(), upkeep, by));
    return fresh.size();
  }

  private static boolean isSameReading(PowerCheck a, PowerCheck b) {
    return a.at().isEqual(b.at())
        && a.percent() == b.percent()
        && a.repetitionKilohertz().equals(b.repetitionKilohertz())
        && a.pulseNanoseconds().equals(b.pulseNanoseconds());
  }

  private List<Rig> rigs(Logbook log, Clock clock, Optional<String> hint) {
    Faults faults = new Faults(rigs.name());
    Map<String, SheetRow> named = new LinkedHashMap<>();
    for (SheetRow row : rigs.rows()) {
      String name = name(row);
      if (name.isEmpty()) {
        faults.add(row.line(), "rig", "", "A rig needs a name.");
      } else if (named.put(key(name), row) != null) {
        faults.add(row.line(), "rig", name, "This rig is listed twice; keep one line.");
      }
    }
    faults.refuseIfAny();
    Map<String, List<PowerCheck>> checked = checks(log, clock, named);
    Map<String, List<Upkeep>> upkept = upkeep(log, clock, named, hint);
    List<Rig> made = new ArrayList<>();
    named.forEach(
        (key, row) -> {
          List<PowerCheck> own = checked.getOrDefault(key, List.of());
          try {
            List<Upkeep> done = upkept.getOrDefault(key, List.of());
            Rig rig = rig(log, row, name(row), own, done, faults);
            List<Doubt> doubts = doubts(rig);
            doubts.addAll(Plausibility.aboutFigure(rig.usual(), log::figures));
            new CellDoubts(faults, hint).report(row.line(), doubts);
            made.add(rig);
          } catch (BadCell e) {
            // reported to the faults where it was found
          } catch (Refusal e) {
            faults.add(row.line(), e.getMessage());
          }
        });
    faults.refuseIfAny();
    return made;
  }

  private static List<Doubt> doubts(Rig rig) {
    List<Doubt> doubts = new ArrayList<>(Plausibility.about(rig));
    rig.checks().forEach(check -> doubts.addAll(MeteredPlausibility.about(check, rig)));
    return doubts;
  }

  private static Rig rig(
      Logbook log,
      SheetRow row,
      String name,
      List<PowerCheck> checks,
      List<Upkeep> upkeep,
      Faults faults) {
    Emission emission = need(row, "emission", Emission::ofWord, faults);
    double rated = need(row, "rated_w", t -> Measure.parse(t, Quantity.POWER).value(), faults);
    double wavelength =
        need(row, "wavelength_nm", t -> Measure.parse(t, Quantity.WAVELENGTH).value(), faults);
    SpotDefinition definition = need(row, "spot_definition", SpotDefinition::ofWord, faults);
    String lens = FormulaGuard.undo(row.cells().getOrDefault("lens", ""));
    return new Rig(
        log.newId(),
        name,
        emission,
        rated,
        wavelength,
        definition,
        number(row, "spot_mm", Quantity.LENGTH, faults),
        number(row, "rep_khz", Quantity.RATE, faults),
        number(row, "pulse_ns", Quantity.PULSE_DURATION, faults),
        number(row, "width_mm", Quantity.LENGTH, faults),
        number(row, "max_pulse_mj", Quantity.PULSE_ENERGY, faults),
        lens.isBlank() ? Optional.empty() : Optional.of(lens),
        usual(row, faults),
        new Optics(
            number(row, Knob.FOCUS_SPOT.column(), Quantity.LENGTH, faults),
            cell(row, Knob.BEAM_QUALITY.column()).isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                    need(row, Knob.BEAM_QUALITY.column(), Measure::plainNumber, faults))),
        checks,
        upkeep);
  }

  private static Circumstances usual(SheetRow row, Faults faults) {
    KnobCells knobs = new KnobCells(faults, ';');
    Map<Knob, Object> values = new EnumMap<>(Knob.class);
    for (Knob knob : Knob.USUAL_OF_RIG) {
      if (!cell(row, knob.column()).isEmpty()) {
        values.put(
            knob, need(row, knob.column(), t -> knob.read(FormulaGuard.undo(t), knobs), faults));
      }
    }
    return Circumstances.of(values);
  }

  private Map<String, List<Upkeep>> upkeep(
      Logbook log, Clock clock, Map<String, SheetRow> named, Optional<String> hint) {
    Map<String, List<Upkeep>> all = new HashMap<>();
    if (upkeep.isEmpty()) {
      return all;
    }
    Faults faults = new Faults(upkeep.get().name());
    for (SheetRow row : upkeep.get().rows()) {
      if (isOfNoRig(row, named, faults)) {
        continue;
      }
      try {
        String note = FormulaGuard.undo(row.cells().getOrDefault("note", ""));
        Upkeep done =
            new Upkeep(
                log.newId(),
                need(row, "done_at", t -> SheetTimes.parse(t, clock.getZone()), faults),
                FormulaGuard.undo(cell(row, "what")),
                cell(row, "hours").isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(need(row, "hours", Measure::plainNumber, faults)),
                Optional.of(note));
        new CellDoubts(faults, hint).report(row.line(), done.doubts());
        all.computeIfAbsent(key(name(row)), k -> new ArrayList<>()).add(done);
      } catch (BadCell e) {
        // reported to the faults where it was found
      } catch (Refusal e) {
        faults.add(row.line(), e.getMessage());
      }
    }
    faults.refuseIfAny();
    return all;
  }

  private boolean isOfNoRig(SheetRow row, Map<String, SheetRow> named, Faults faults) {
    String rig = name(row);
    if (named.containsKey(key(rig))) {
      return false;
    }
    faults.add(
        row.line(),
        "rig",
        rig,
        "There is no such rig in %s; it has %s."
            .formatted(
                rigs.name(),
                named.values().stream().map(RigSheet::name).collect(Collectors.joining(", "))));
    return true;
  }

  private Map<String, List<PowerCheck>> checks(
      Logbook log, Clock clock, Map<String, SheetRow> named) {
    if (checks.isEmpty()) {
      return Map.of();
    }
    Faults faults = new Faults(checks.get().name());
    record Check(String rig, PowerCheck check) {}
    List<Check> read = new ArrayList<>();
    for (SheetRow row : checks.get().rows()) {
      String rig = name(row);
      if (isOfNoRig(row, named, faults)) {
        continue;
      }
      try {
        OffsetDateTime at =
            need(row, "checked_at", t -> SheetTimes.parse(t, clock.getZone()), faults);
        double percent =
            need(row, "power_pct", t -> Measure.parse(t, Quantity.SHARE).value(), faults);
        double watts =
            need(row, "metered_w", t -> Measure.parse(t, Quantity.POWER).value(), faults);
        read.add(
            new Check(
                key(rig),
                new PowerCheck(
                    log.newId(),
                    at,
                    percent,
                    watts,
                    number(row, "rep_khz", Quantity.RATE, faults),
                    number(row, "pulse_ns", Quantity.PULSE_DURATION, faults))));
      } catch (BadCell e) {
        // reported to the faults where it was found
      } catch (Refusal e) {
        faults.add(row.line(), e.getMessage());
      }
    }
    faults.refuseIfAny();
    return read.stream()
        .collect(
            Collectors.groupingBy(
                Check::rig, Collectors.mapping(Check::check, Collectors.toList())));
  }

  /** A cell was told to the faults; the rest of its row is passed over. */
  private static final class BadCell extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  private static <T> T need(
      SheetRow row, String heading, Function<String, T> reader, Faults faults) {
    String cell = cell(row, heading);
    try {
      return reader.apply(cell);
    } catch (Refusal e) {
      faults.add(row.line(), heading, cell, e.getMessage());
      throw new BadCell();
    }
  }

  private static OptionalDouble number(
      SheetRow row, String heading, Quantity quantity, Faults faults) {
    return cell(row, heading).isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(need(row, heading, t -> Measure.parse(t, quantity).value(), faults));
  }

  /** Rigs whose names differ in capitals alone are one. */
  private static String key(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  private static String name(SheetRow row) {
    return FormulaGuard.undo(cell(row, "rig")).strip();
  }

  private static String cell(SheetRow row, String heading) {
    return row.cells().getOrDefault(heading, "").strip();
  }
}
