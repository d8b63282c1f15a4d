package charline.log.sheet;

import charline.trial.Knob;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Writes rigs, their power checks and their upkeep as the files that {@link RigSheet} reads, every
 * number so that it reads back equal. Names and lenses that could run as a formula in a spreadsheet
 * are guarded with an apostrophe, which the import takes off.
 */
public final class RigSheetExporter {
  private RigSheetExporter() {}

  /**
   * Writes rigs without their checks, at once: an existing file is replaced only by a whole one.
   *
   * @throws charline.refusal.Refusal if the file cannot be written
   */
  public static void writeRigs(List<Rig> rigs, Path file) {
    CsvFile.write(
        text(
            RigSheet.RIG_HEADINGS,
            RigSheet.RIG_RARE,
            rigs.stream().map(RigSheetExporter::line).toList()),
        file);
  }

  /**
   * Writes the power checks of rigs, likewise.
   *
   * @param rigs at least one of them with a check, as a sheet without a line is none
   * @throws charline.refusal.Refusal if the file cannot be written
   */
  public static void writeChecks(List<Rig> rigs, Path file) {
    List<List<String>> lines = new ArrayList<>();
    rigs.forEach(rig -> rig.checks().forEach(check -> lines.add(line(rig, check))));
    CsvFile.write(text(PowerCheckSheet.HEADINGS, List.of("rep_khz", "pulse_ns"), lines), file);
  }

  /**
   * Writes what was done to rigs, likewise.
   *
   * @param rigs at least one of them with upkeep
   * @throws charline.refusal.Refusal if the file cannot be written
   */
  public static void writeUpkeep(List<Rig> rigs, Path file) {
    List<List<String>> lines = new ArrayList<>();
    rigs.forEach(rig -> rig.upkeep().forEach(upkeep -> lines.add(line(rig, upkeep))));
    CsvFile.write(text(UpkeepSheet.HEADINGS, List.of("hours", "note"), lines), file);
  }

  private static String text(
      List<String> headings, List<String> leftOutWhereEmpty, List<List<String>> lines) {
    Map<String, List<String>> columns = new LinkedHashMap<>();
    for (int i = 0; i < headings.size(); i++) {
      int column = i;
      List<String> cells = lines.stream().map(line -> line.get(column)).toList();
      if (!leftOutWhereEmpty.contains(headings.get(i)) || !cells.stream().allMatch(""::equals)) {
        columns.put(headings.get(i), cells);
      }
    }
    return CsvFile.text(columns);
  }

  /** In the order of the headings. */
  private static List<String> line(Rig rig) {
    Map<Knob, Object> usual = rig.usual().values();
    List<String> cells =
        new ArrayList<>(
            List.of(
                FormulaGuard.guard(rig.name()),
                rig.emission().word(),
                SheetNumbers.text(rig.ratedWatts()),
                SheetNumbers.text(rig.wavelengthNanometres()),
                number(rig.spotMillimetres()),
                rig.spotDefinition().word(),
                number(rig.repetitionKilohertz()),
                number(rig.pulseNanoseconds()),
                number(rig.scanWidthMillimetres()),
                number(rig.largestPulseMillijoules()),
                rig.lens().map(FormulaGuard::guard).orElse("")));
    Knob.USUAL_OF_RIG.forEach(knob -> cells.add(cell(usual.get(knob))));
    cells.add(number(rig.optics().focusSpotMillimetres()));
    cells.add(number(rig.optics().beamQuality()));
    return cells;
  }

  private static String cell(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Boolean yes) {
      return yes ? "yes" : "no";
    }
    return value instanceof Double number
        ? SheetNumbers.text(number)
        : FormulaGuard.guard(value.toString());
  }

  private static List<String> line(Rig rig, Upkeep upkeep) {
    return List.of(
        FormulaGuard.guard(rig.name()),
        SheetTimes.text(upkeep.at()),
        FormulaGuard.guard(upkeep.work()),
        number(upkeep.hours()),
        upkeep.note().map(FormulaGuard::guard).orElse(""));
  }

  private static List<String> line(Rig rig, PowerCheck check) {
    return List.of(
        FormulaGuard.guard(rig.name()),
        SheetTimes.text(check.at()),
        SheetNumbers.text(check.percent()),
        SheetNumbers.text(check.meteredWatts()),
        number(check.repetitionKilohertz()),
        number(check.pulseNanoseconds()));
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? SheetNumbers.text(value.getAsDouble()) : "";
  }
}
