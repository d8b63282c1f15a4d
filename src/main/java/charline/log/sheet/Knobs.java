package charline.log.sheet;

import static charline.log.sheet.Column.*;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.TimedArea;
import charline.refusal.Refusal;
import charline.trial.Rig;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads the settings in a row; whatever is wrong goes to the faults. */
final class Knobs {
  private static final String FORMS =
      "scan_mm_s with spacing_mm, width_mm with hand_mm_s, or area_cm2 with seconds";

  private final Faults faults;
  private final boolean commaSeparates;

  Knobs(Faults faults, char separator) {
    this.faults = faults;
    this.commaSeparates = separator == ',';
  }

  /** The number in a cell; empty if it has none or a wrong one, which is a fault. */
  OptionalDouble number(Row row, Column column) {
    try {
      return Numbers.parse(column, row.text(column), commaSeparates);
    } catch (Refusal e) {
      faults.add(row, column, e.getMessage());
      return OptionalDouble.empty();
    }
  }

  /** The settings of a row on a rig; empty if there were faults. */
  Optional<Settings> settings(Row row, Rig rig) {
    int before = faults.count();
    Optional<PowerSetting> power = power(row);
    Optional<DoseForm> form = form(row, rig);
    Optional<Spot> spot = spot(row, rig);
    Optional<Pulses> pulses = pulses(row, rig);
    if (faults.count() > before) {
      return Optional.empty();
    }
    return Optional.of(
        new Settings(power.orElseThrow(), form.orElseThrow(), spot.orElseThrow(), pulses));
  }

  /** What was typed, by knob. */
  Map<String, String> typed(Row row) {
    Map<String, String> typed = new HashMap<>();
    for (Column column : KNOBS) {
      if (row.has(column)) {
        typed.put(column.knob(), Numbers.typed(column, row.text(column)));
      }
    }
    return typed;
  }

  private Optional<PowerSetting> power(Row row) {
    if (row.has(POWER_PCT) && row.has(POWER_W)) {
      faults.add(row, POWER_W, "Give power_pct or power_w, not both; empty one of them.");
      return Optional.empty();
    }
    if (!row.has(POWER_PCT) && !row.has(POWER_W)) {
      faults.add(row, POWER_PCT, "Give power_pct or power_w; neither is here.");
      return Optional.empty();
    }
    Column column = row.has(POWER_PCT) ? POWER_PCT : POWER_W;
    OptionalDouble value = number(row, column);
    if (value.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        column == POWER_PCT
            ? PowerSetting.percent(value.getAsDouble())
            : PowerSetting.watts(value.getAsDouble()));
  }

  private Optional<DoseForm> form(Row row, Rig rig) {
    boolean scan = row.has(SCAN_MM_S) || row.has(SPACING_MM);
    boolean hand = row.has(WIDTH_MM) || row.has(HAND_MM_S);
    boolean timed = row.has(AREA_CM2) || row.has(SECONDS);
    int forms = (scan ? 1 : 0) + (hand ? 1 : 0) + (timed ? 1 : 0);
    if (forms == 0) {
      faults.add(row, HAND_MM_S, "Give one dose form (%s); none is here.".formatted(FORMS));
      return Optional.empty();
    }
    if (forms > 1) {
      List<Column> given =
          Stream.of(SCAN_MM_S, SPACING_MM, WIDTH_MM, HAND_MM_S, AREA_CM2, SECONDS)
              .filter(row::has)
              .toList();
      faults.add(
          row,
          given.get(given.size() - 1),
          "Give one dose form only (%s); this line has %s."
              .formatted(
                  FORMS, given.stream().map(Column::heading).collect(Collectors.joining(", "))));
      return Optional.empty();
    }
    if (scan) {
      return pair(row, SCAN_MM_S, SPACING_MM, OptionalDouble.empty()).map(Pair::scan);
    }
    return hand
        ? pair(row, WIDTH_MM, HAND_MM_S, rig.scanWidthMillimetres()).map(Pair::hand)
        : pair(row, AREA_CM2, SECONDS, OptionalDouble.empty()).map(Pair::timed);
  }

  private record Pair(double first, double second) {
    DoseForm scan() {
      return new LineScan(first, second);
    }

    DoseForm hand() {
      return new HandPass(first, second);
    }

    DoseForm timed() {
      return new TimedArea(first, second);
    }
  }

  private Optional<Pair> pair(Row row, Column one, Column other, OptionalDouble usualOne) {
    OptionalDouble first = row.has(one) ? number(row, one) : usualOne;
    OptionalDouble second = number(row, other);
    if (!row.has(one) && usualOne.isEmpty()) {
      faults.add(row, one, "%s needs %s beside it.".formatted(other.heading(), one.heading()));
    }
    if (!row.has(other)) {
      faults.add(row, other, "%s needs %s beside it.".formatted(one.heading(), other.heading()));
    }
    return first.isPresent() && second.isPresent()
        ? Optional.of(new Pair(first.getAsDouble(), second.getAsDouble()))
        : Optional.empty();
  }

  private Optional<Spot> spot(Row row, Rig rig) {
    OptionalDouble spot = row.has(SPOT_MM) ? number(row, SPOT_MM) : rig.spotMillimetres();
    if (spot.isEmpty() && !row.has(SPOT_MM)) {
      faults.add(
          row, SPOT_MM, "Rig %s has no usual spot, so it must be given.".formatted(rig.name()));
    }
    return spot.isEmpty()
        ? Optional.empty()
        : Optional.of(new Spot(spot.getAsDouble(), rig.spotDefinition()));
  }

  private Optional<Pulses> pulses(Row row, Rig rig) {
    if (rig.emission() == Emission.CONTINUOUS) {
      for (Column column : List.of(REP_KHZ, PULSE_NS)) {
        if (row.has(column)) {
          faults.add(
              row, column, "Rig %s is cw and has no pulses; leave it empty.".formatted(rig.name()));
        }
      }
      return Optional.empty();
    }
    OptionalDouble rate = row.has(REP_KHZ) ? number(row, REP_KHZ) : rig.repetitionKilohertz();
    OptionalDouble pulse = row.has(PULSE_NS) ? number(row, PULSE_NS) : rig.pulseNanoseconds();
    if (rate.isEmpty() && !row.has(REP_KHZ)) {
      faults.add(
          row,
          REP_KHZ,
          "Rig %s has no usual repetition rate, so it must be given.".formatted(rig.name()));
    }
    return rate.isEmpty() ? Optional.empty() : Optional.of(new Pulses(rate.getAsDouble(), pulse));
  }
}
