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
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

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
  private final TextTable rigs;
  private final Optional<PowerCheckSheet> checks;
  private final Optional<UpkeepSheet> upkeep;

  private RigSheet(
      SheetText rigs, Optional<SheetText> checks, Optional<SheetText> upkeep, DateOrder dates) {
    this.rigs = TextTable.read(rigs, RIG_HEADINGS, RIG_NEEDED);
    this.checks = checks.map(text -> PowerCheckSheet.of(text, dates));
    this.upkeep = upkeep.map(text -> UpkeepSheet.of(text, dates));
  }

  /** Reads rigs alone. */
  public static RigSheet read(Path rigs) {
    return read(rigs, Optional.empty(), Optional.empty(), DateOrder.UNKNOWN);
  }

  /**
   * Reads rigs and their power checks.
   *
   * @throws charline.refusal.Refusal in one sentence if a file is missing, empty, not text or has
   *     other columns
   */
  public static RigSheet read(Path rigs, Path checks) {
    return read(rigs, Optional.of(checks), Optional.empty(), DateOrder.UNKNOWN);
  }

  /**
   * As {@link #read(Path, Path)}, with what was done to the rigs where there is a file of it.
   *
   * @param dates how dates in figures begin
   */
  public static RigSheet read(
      Path rigs, Optional<Path> checks, Optional<Path> upkeep, DateOrder dates) {
    return new RigSheet(
        SheetText.read(rigs), checks.map(SheetText::read), upkeep.map(SheetText::read), dates);
  }

  /** Reads rigs and their power checks from readers, to their ends. */
  public static RigSheet read(Reader rigs, Reader checks) {
    return new RigSheet(
        SheetText.of("the rig sheet", TrialSheet.all(rigs)),
        Optional.of(SheetText.of("the power checks", TrialSheet.all(checks))),
        Optional.empty(),
        DateOrder.UNKNOWN);
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
              further += PowerCheckSheet.addNew(old, rig.checks(), log, by);
              upkept += UpkeepSheet.addNew(old, rig.upkeep(), log, by);
            }
          }
          return new Brought(added, further, upkept);
        });
  }

  private List<Rig> rigs(Logbook log, Clock clock, Optional<String> hint) {
    Faults faults = new Faults(rigs.name());
    Map<String, SheetRow> named = new LinkedHashMap<>();
    for (SheetRow row : rigs.rows()) {
      String name = RigCells.name(row);
      if (name.isEmpty()) {
        faults.add(row.line(), "rig", "", "A rig needs a name.");
      } else if (named.put(RigCells.key(name), row) != null) {
        faults.add(row.line(), "rig", name, "This rig is listed twice; keep one line.");
      }
    }
    faults.refuseIfAny();
    Map<String, List<PowerCheck>> checked =
        checks.map(sheet -> sheet.read(log, clock, rigs.name(), named)).orElse(Map.of());
    Map<String, List<Upkeep>> upkept =
        upkeep.map(sheet -> sheet.read(log, clock, rigs.name(), named, hint)).orElse(Map.of());
    List<Rig> made = new ArrayList<>();
    named.forEach(
        (key, row) -> {
          List<PowerCheck> own = checked.getOrDefault(key, List.of());
          try {
            List<Upkeep> done = upkept.getOrDefault(key, List.of());
            Rig rig = rig(log, row, RigCells.name(row), own, done, faults);
            List<Doubt> doubts = doubts(rig);
            doubts.addAll(Plausibility.aboutFigure(rig.usual(), log::figures));
            new CellDoubts(faults, hint).report(row.line(), doubts);
            made.add(rig);
          } catch (RigCells.BadCell e) {
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
    Emission emission = RigCells.need(row, "emission", Emission::ofWord, faults);
    double rated =
        RigCells.need(row, "rated_w", t -> Measure.parse(t, Quantity.POWER).value(), faults);
    double wavelength =
        RigCells.need(
            row, "wavelength_nm", t -> Measure.parse(t, Quantity.WAVELENGTH).value(), faults);
    SpotDefinition definition =
        RigCells.need(row, "spot_definition", SpotDefinition::ofWord, faults);
    String lens = FormulaGuard.undo(row.cells().getOrDefault("lens", ""));
    return new Rig(
        log.newId(),
        name,
        emission,
        rated,
        wavelength,
        definition,
        RigCells.number(row, "spot_mm", Quantity.LENGTH, faults),
        RigCells.number(row, "rep_khz", Quantity.RATE, faults),
        RigCells.number(row, "pulse_ns", Quantity.PULSE_DURATION, faults),
        RigCells.number(row, "width_mm", Quantity.LENGTH, faults),
        RigCells.number(row, "max_pulse_mj", Quantity.PULSE_ENERGY, faults),
        lens.isBlank() ? Optional.empty() : Optional.of(lens),
        usual(row, faults),
        new Optics(
            RigCells.number(row, Knob.FOCUS_SPOT.column(), Quantity.LENGTH, faults),
            RigCells.cell(row, Knob.BEAM_QUALITY.column()).isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                    RigCells.need(row, Knob.BEAM_QUALITY.column(), Measure::plainNumber, faults))),
        checks,
        upkeep);
  }

  private static Circumstances usual(SheetRow row, Faults faults) {
    KnobCells knobs = new KnobCells(faults, ';');
    Map<Knob, Object> values = new EnumMap<>(Knob.class);
    for (Knob knob : Knob.USUAL_OF_RIG) {
      if (!RigCells.cell(row, knob.column()).isEmpty()) {
        values.put(
            knob,
            RigCells.need(row, knob.column(), t -> knob.read(FormulaGuard.undo(t), knobs), faults));
      }
    }
    return Circumstances.of(values);
  }
}
