package charline.plan;

import charline.window.RigSetup;
import charline.window.SpeedKnob;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The settings that a rig can be dialled to: power in steps of 5 %, and speeds a person can keep,
 * whole millimetres per second by hand (halves below 10), two digits on a scanner.
 */
final class Dial {
  private static final double POWER_STEP = 5;

  /** Rungs between which a person can still tell a difference: half of a step. */
  private static final double LN_SPACING = Ladder.LN_STEP / 2;

  /** What a hand can keep to, mm/s (common practice, no published source). */
  private static final double SLOWEST_HAND = 3;

  private static final double FASTEST_HAND = 100;

  /** Most that a hand likes while it climbs (common practice, no published source). */
  private static final double EASY_HAND = 60;

  /** Below this the hand is led in half millimetres per second, or a rung would be too high. */
  private static final double FINE_BELOW = 10;

  private static final double FINE_GRAIN = 0.5;
  private static final double EASY_SCAN = 10_000;
  private static final double SLOWEST_SCAN = 100;
  private static final double FASTEST_SCAN = 20_000;

  private final RigSetup bench;
  private final boolean hand;

  Dial(RigSetup bench) {
    this.bench = bench;
    hand = bench.speed().kind() == SpeedKnob.Kind.HAND;
  }

  /** Powers, rising: every five percent that the rig is run at, and those given. */
  Set<Double> powers(List<Double> others) {
    double highest = bench.highestPercent();
    Set<Double> powers = new TreeSet<>(others);
    for (double percent = POWER_STEP; percent <= 100; percent += POWER_STEP) {
      powers.add(percent);
    }
    powers.removeIf(percent -> percent > highest);
    return powers.isEmpty() ? Set.of(highest) : powers;
  }

  /** The speeds at one power whose doses lie between two, hottest first. */
  List<DialSetting> settings(double powerPercent, double lnLowDose, double lnHighDose) {
    Set<Double> speeds = new LinkedHashSet<>();
    for (double lnDose = lnHighDose; lnDose >= lnLowDose - 1e-9; lnDose -= LN_SPACING) {
      speeds.add(keepable(bench.speedForDose(powerPercent, Math.exp(lnDose))));
    }
    List<DialSetting> settings = new ArrayList<>();
    for (double speed : speeds) {
      if (speed >= (hand ? SLOWEST_HAND : SLOWEST_SCAN)
          && speed <= (hand ? FASTEST_HAND : FASTEST_SCAN)) {
        settings.add(DialSetting.on(bench, powerPercent, speed));
      }
    }
    return settings;
  }

  /**
   * The setting for the first patch of all: the most power whose speed for a dose is easy to keep.
   */
  DialSetting first(double lnDose) {
    double chosen = powers(List.of()).iterator().next();
    for (double percent : powers(List.of())) {
      double speed = bench.speedForDose(percent, Math.exp(lnDose));
      chosen = isEasy(speed) ? percent : chosen;
    }
    return DialSetting.on(bench, chosen, keepable(bench.speedForDose(chosen, Math.exp(lnDose))));
  }

  /** The setting of a power whose dose is that one or a little less. */
  DialSetting at(double powerPercent, double lnDose) {
    return DialSetting.on(
        bench, powerPercent, keepable(bench.speedForDose(powerPercent, Math.exp(lnDose))));
  }

  /** Whether a person leads the beam so fast with ease. */
  boolean isEasy(double speed) {
    return speed <= (hand ? EASY_HAND : EASY_SCAN);
  }

  /** Rounded up, so that the dose is never above the wanted one. */
  private double keepable(double speed) {
    double grain = speed < FINE_BELOW ? FINE_GRAIN : 1;
    return hand
        ? Math.ceil(speed / grain - 1e-6) * grain
        : new BigDecimal(speed).round(new MathContext(2, RoundingMode.CEILING)).doubleValue();
  }
}
