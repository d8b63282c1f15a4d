package charline.log.sheet;

import charline.trial.PowerCheck;
import charline.trial.Rig;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Writes rigs and their power checks as the two files that {@link RigSheet} reads, every number so
 * that it reads back equal. Names and lenses that could run as a formula in a spreadsheet are
 * guarded with an apostrophe, which the import takes off.
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
            List.of("max_pulse_mj"),
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
    CsvFile.write(text(RigSheet.CHECK_HEADINGS, List.of("rep_khz", "pulse_ns"), lines), file);
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
    return List.of(
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
        rig.lens().map(FormulaGuard::guard).orElse(""));
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
