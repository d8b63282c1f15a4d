package charline.sample;

import charline.sample.SampleScenario.DepthLaw;
import charline.sample.SampleScenario.SampleBoard;
import charline.sample.SampleScenario.SampleRig;
import charline.shops.Law;
import charline.shops.Noise;
import java.time.LocalDate;
import java.util.List;

/**
 * The table of what the sample sheets are made of: change a number here, run {@link
 * BoathouseTrials} and commit what it writes. Everything is invented.
 */
final class BoathouseScenarios {
  /** Metered 231 W at 80 % and 144.4 W at 50 %: 0.963 of nominal. */
  static final SampleRig HERON = new SampleRig("heron", 300, 0.5, 60, 0.9625);

  /** Metered 441 W at 30 %: 0.98 of nominal. */
  static final SampleRig OTTER = new SampleRig("otter", 1500, 1.2, 80, 0.98);

  private static final double[] POWERS = {30, 40, 50, 60, 70, 80, 90, 100};
  private static final double[] HANDS = {8, 10, 12, 15, 18, 22, 27, 33, 40, 45};

  private BoathouseScenarios() {}

  /** The sheets, in the order in which they were burned. */
  static List<SampleScenario> all() {
    return List.of(
        latexOnPine(),
        varnishOnAsh(),
        alkydOnPlywood(),
        clearCoatOnLarch(),
        primerOnOak(),
        alkydOnPineContinuous(),
        shellacOnOak());
  }

  /** A narrow window that 24 patches on 4 boards should find. */
  private static SampleScenario latexOnPine() {
    double middle = 9;
    double gap = 1.05;
    return new SampleScenario(
        "latex-on-pine.csv",
        "LP",
        2601,
        HERON,
        List.of(
            new SampleBoard("wall panel offcut 1", 9.5),
            new SampleBoard("wall panel offcut 2", 10),
            new SampleBoard("wall panel offcut 3", 9),
            new SampleBoard("wall panel offcut 4", 11)),
        "pine",
        "solid",
        "wall panel latex",
        "latex:pale:50um",
        "latex",
        "pale",
        60,
        POWERS,
        HANDS,
        3.4,
        34,
        24,
        5,
        days(2026, 9, 3, 4, 8, 10),
        1.5,
        charring(middle, gap, 0.4, 0.55, 0.14, 0.09),
        clearing(middle, gap, 0.7, 0.8, 0.14, 0.08),
        0.25,
        new DepthLaw(5.2, 0.45, 60));
  }

  /** A window on a ring-porous wood, residue holding on in the pores. */
  private static SampleScenario varnishOnAsh() {
    double middle = 7.5;
    double gap = 1.2;
    return new SampleScenario(
        "varnish-on-ash.csv",
        "VA",
        2602,
        HERON,
        List.of(
            new SampleBoard("bench slat 1", 8.5),
            new SampleBoard("bench slat 2", 8),
            new SampleBoard("bench slat 3", 9),
            new SampleBoard("bench slat 4", 8.5)),
        "ash",
        "solid",
        "bench varnish",
        "varnish:mid:70um",
        "varnish",
        "mid",
        80,
        POWERS,
        HANDS,
        3.2,
        30,
        26,
        5,
        days(2026, 9, 17, 18, 22, 24),
        1.1,
        charring(middle, gap, 0.45, 0.6, 0.14, 0.09),
        clearing(middle, gap, 0.65, 0.75, 0.15, 0.08),
        0.3,
        null);
  }

  /** The easiest of the set: a dark enamel that takes up the beam well. */
  private static SampleScenario alkydOnPlywood() {
    double middle = 8;
    double gap = 1.6;
    return new SampleScenario(
        "alkyd-on-plywood.csv",
        "AP",
        2603,
        HERON,
        List.of(
            new SampleBoard("locker door 1", 8),
            new SampleBoard("locker door 2", 8.5),
            new SampleBoard("locker side", 8)),
        "plywood",
        "plywood",
        "locker enamel",
        "alkyd:dark:60um + primer:pale:35um",
        "alkyd",
        "dark",
        60,
        POWERS,
        HANDS,
        3.2,
        34,
        24,
        6,
        days(2026, 10, 1, 2, 6),
        1.5,
        charring(middle, gap, 0.4, 0.5, 0.13, 0.08),
        clearing(middle, gap, 0.7, 0.8, 0.14, 0.08),
        0.2,
        null);
  }

  /** No window: the light goes through the clear film into pale wood, which browns first. */
  private static SampleScenario clearCoatOnLarch() {
    double middle = 9;
    double gap = -1.1;
    return new SampleScenario(
        "clear-coat-on-larch.csv",
        "CL",
        2604,
        HERON,
        List.of(
            new SampleBoard("ceiling board 1", 10.5),
            new SampleBoard("ceiling board 2", 11),
            new SampleBoard("ceiling board 3", 10)),
        "larch",
        "solid",
        "ceiling clear coat",
        "clear coat:pale:55um",
        "clear coat",
        "pale",
        60,
        POWERS,
        HANDS,
        3.2,
        34,
        24,
        5,
        days(2026, 10, 8, 9, 13),
        1.5,
        charring(middle, gap, 0.4, 0.6, 0.15, 0.1),
        clearing(middle, gap, 0.7, 0.8, 0.15, 0.1),
        0.1,
        null);
  }

  /** Pigment that stays in the pores as a tint: cleared or not depends on whether tint will do. */
  private static SampleScenario primerOnOak() {
    double middle = 9.5;
    double gap = 0.5;
    return new SampleScenario(
        "primer-on-oak.csv",
        "PO",
        2605,
        HERON,
        List.of(
            new SampleBoard("sill end 1", 11.5),
            new SampleBoard("sill end 2", 12),
            new SampleBoard("sill end 3", 11)),
        "oak",
        "solid",
        "sill primer",
        "primer:pale:45um",
        "primer",
        "pale",
        60,
        POWERS,
        HANDS,
        3.4,
        32,
        20,
        6,
        days(2026, 10, 15, 16, 20),
        1.5,
        charring(middle, gap, 0.4, 0.55, 0.16, 0.1),
        clearing(middle, gap, 0.7, 0.9, 0.18, 0.1),
        0.8,
        null);
  }

  /** Continuous wave on resinous rafters: char comes first everywhere. */
  private static SampleScenario alkydOnPineContinuous() {
    double middle = 11;
    double gap = -1.4;
    return new SampleScenario(
        "alkyd-on-pine-cw.csv",
        "CW",
        2606,
        OTTER,
        List.of(
            new SampleBoard("rafter offcut 1", 10),
            new SampleBoard("rafter offcut 2", 10.5),
            new SampleBoard("rafter offcut 3", 9.5)),
        "pine",
        "solid",
        "rafter paint",
        "alkyd:mid:80um",
        "alkyd",
        "mid",
        0,
        new double[] {15, 20, 25, 30, 35, 40},
        new double[] {20, 25, 30, 35, 40, 45},
        6,
        36,
        18,
        5,
        days(2026, 10, 27, 28, 29),
        35000,
        charring(middle, gap, 0.3, 0.6, 0.16, 0.1),
        clearing(middle, gap, 0.5, 0.7, 0.16, 0.1),
        0.1,
        null);
  }

  /** Five patches on two boards: too few to say anything, and the log should say that. */
  private static SampleScenario shellacOnOak() {
    double middle = 8;
    double gap = 1.1;
    return new SampleScenario(
        "shellac-on-oak.csv",
        "SO",
        2607,
        HERON,
        List.of(new SampleBoard("door rail offcut", 8), new SampleBoard("door stile offcut", 8.5)),
        "oak",
        "solid",
        "door shellac",
        "shellac:mid:40um",
        "shellac",
        "mid",
        60,
        POWERS,
        HANDS,
        3.4,
        14,
        5,
        4,
        days(2026, 11, 5),
        1.5,
        charring(middle, gap, 0.4, 0.55, 0.15, 0.1),
        clearing(middle, gap, 0.7, 0.8, 0.15, 0.1),
        0.3,
        null);
  }

  /**
   * The char side of a window at two passes: 5 % of patches char at {@code middle e^(gap/2)}.
   *
   * @param middle middle of the window in dose per pass, J/cm2
   * @param gap log ratio of the dose that chars 5 % to the dose that clears 90 %; negative for none
   */
  private static Law charring(
      double middle, double gap, double phi, double psi, double sigma, double omega) {
    return side(StrictMath.log(middle) + gap / 2, 0.05, phi, psi, sigma, omega);
  }

  /** The clearing side: 90 % of patches are clear at {@code middle e^(-gap/2)}. */
  private static Law clearing(
      double middle, double gap, double phi, double psi, double sigma, double omega) {
    return side(StrictMath.log(middle) - gap / 2, 0.90, phi, psi, sigma, omega);
  }

  /** Intensity counts from 1, as a share of the scenario's F0. */
  private static Law side(
      double lnDose, double chance, double phi, double psi, double sigma, double omega) {
    return Law.pinned(lnDose, chance, phi, psi, sigma, omega, Noise.LOGISTIC, 0);
  }

  private static List<LocalDate> days(int year, int month, int... days) {
    return java.util.Arrays.stream(days).mapToObj(d -> LocalDate.of(year, month, d)).toList();
  }
}
