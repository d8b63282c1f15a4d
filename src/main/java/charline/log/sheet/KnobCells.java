package charline.log.sheet;

import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.refusal.Refusal;
import charline.trial.Knob;
import charline.trial.KnobDialect;
import charline.trial.KnobReader;
import charline.trial.KnobValues;
import charline.trial.Rig;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The settings in a row; whatever is wrong goes to the faults. */
final class KnobCells implements KnobDialect {
  private final Faults faults;
  private final boolean commaSeparates;
  private final CellMeanings<OptionalDouble> numbers = new CellMeanings<>();
  private final CellMeanings<String> typed = new CellMeanings<>();

  KnobCells(Faults faults, char separator) {
    this.faults = faults;
    this.commaSeparates = separator == ',';
  }

  @Override
  public String name(Knob knob) {
    return knob.column();
  }

  @Override
  public String powerName() {
    return "The power (power_pct or power_w)";
  }

  @Override
  public double number(Knob knob, String text) {
    return number(Column.of(knob), text).orElseThrow();
  }

  private OptionalDouble number(Column column, String text) {
    return numbers.of(column, text, t -> SheetNumbers.parse(column, t, commaSeparates));
  }

  /** Every column that says something of a pass. */
  private static Stream<Column> pass() {
    return Stream.concat(Column.KNOBS.stream(), Column.CIRCUMSTANCES.stream());
  }

  /** The number in a cell; empty if it has none or a wrong one, which is a fault. */
  OptionalDouble number(SheetRow row, Column column) {
    try {
      return number(column, row.text(column));
    } catch (Refusal e) {
      faults.add(row, column, e.getMessage());
      return OptionalDouble.empty();
    }
  }

  /** What a row says of a pass on a rig; it has no settings if there were faults. */
  KnobReader.Result read(SheetRow row, Rig rig) {
    Map<Knob, String> given = new EnumMap<>(Knob.class);
    pass()
        .filter(column -> column != Column.PATCH_CM2 && row.has(column))
        .forEach(column -> given.put(column.knob(), row.text(column)));
    // What a sheet leaves out is not known; what its rig usually does now may not have been so
    // then.
    Knob.USUAL_OF_RIG.forEach(knob -> given.putIfAbsent(knob, KnobReader.NONE));
    KnobReader.Result read = KnobReader.read(this, given, rig, Optional.empty());
    read.problems().forEach(p -> faults.add(row, Column.of(p.knob()), p.sentence()));
    return read;
  }

  /** Typed text, by knob. */
  Map<String, String> typed(SheetRow row) {
    Map<String, String> byKey = new HashMap<>();
    pass()
        .filter(row::has)
        .forEach(
            column ->
                byKey.put(
                    column.key(),
                    typed.of(column, row.text(column), text -> SheetNumbers.typed(column, text))));
    return byKey;
  }

  /**
   * The number in each column of settings; columns that do not apply are absent.
   *
   * @param spots what the sheet's spot diameters mean: the rig's definition
   * @param patchSquareCentimetres size of the patch, if known
   */
  static Map<Column, Double> values(
      Settings settings, SpotDefinition spots, OptionalDouble patchSquareCentimetres) {
    Map<Column, Double> values = new EnumMap<>(Column.class);
    KnobValues.of(settings).forEach((knob, value) -> values.put(Column.of(knob), value));
    Spot spot = settings.spot();
    if (spot.definition() != spots) {
      values.put(Column.SPOT_MM, spot.as(spots).diameterMillimetres());
    }
    patchSquareCentimetres.ifPresent(a -> values.put(Column.PATCH_CM2, a));
    return values;
  }

  /** True if both have the same columns with the same numbers, but for rounding. */
  static boolean same(Map<Column, Double> a, Map<Column, Double> b) {
    return a.keySet().equals(b.keySet())
        && a.keySet().stream().allMatch(c -> SheetNumbers.same(a.get(c), b.get(c)));
  }
}
