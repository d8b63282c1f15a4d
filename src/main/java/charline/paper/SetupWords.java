package charline.paper;

import charline.exposure.Emission;
import charline.paper.SheetPage.Knob;
import charline.paper.SheetPage.Line;
import charline.paper.SheetPage.StartPanel;
import charline.quantity.Figures;
import charline.trial.PowerCheck;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import charline.wording.MeteredText;
import charline.wording.RigSetupText;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Settings in the words of the bench: its knobs, what stays fixed, its power check. */
final class SetupWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);

  /** A stretch that is easy to mark and to time (common practice, no published source). */
  private static final int PACE_MILLIMETRES = 300;

  private final RigSetup bench;
  private final String figure;

  /**
   * @param figure what is drawn, to go with the fixed knobs; blank where none is noted
   */
  SetupWords(RigSetup bench, String figure) {
    this.bench = bench;
    this.figure = figure;
  }

  StartPanel startPanel(Box box) {
    Forecast start = box.start();
    KnobFigures power = KnobFigures.whole(box.powerPercent(), start.powerPercent());
    KnobFigures speed =
        KnobFigures.significant(box.speedMillimetresPerSecond(), start.speedMillimetresPerSecond());
    return new StartPanel(
        List.of(
            new Knob(
                "Power, start at",
                power.start(),
                "%",
                "stay in " + power.low() + " to " + power.high() + " %",
                Figures.significant(start.powerWatts(), 3) + " W on the work"),
            new Knob(
                RigSetupText.speedLabel(bench) + ", start at",
                speed.start(),
                "mm/s",
                "stay in " + speed.low() + " to " + speed.high() + " mm/s",
                pace(start.speedMillimetresPerSecond())),
            new Knob(
                "Passes",
                String.valueOf(box.passes()),
                "",
                box.passes() == 1 ? "once, then look" : "cool in between",
                Figures.significant(start.netAreaRateSquareCentimetresPerMinute(), 2)
                    + " cm²/min in all")),
        fixed(),
        "One pass %s J/cm², %s."
            .formatted(
                Figures.decimals(start.doseJoulesPerCm2(), 1), intensity(start.intensity())));
  }

  /** A window for another number of passes, in one line. */
  Line otherPasses(Box box) {
    KnobFigures power = KnobFigures.whole(box.powerPercent(), box.start().powerPercent());
    KnobFigures speed =
        KnobFigures.significant(
            box.speedMillimetresPerSecond(), box.start().speedMillimetresPerSecond());
    return new Line(
        "Or " + Figures.count(box.passes(), "pass", "passes"),
        "%s %% (%s to %s), %s mm/s (%s to %s)."
            .formatted(
                power.start(),
                power.low(),
                power.high(),
                speed.start(),
                speed.low(),
                speed.high()));
  }

  private String pace(double speed) {
    return bench.speed().kind() == SpeedKnob.Kind.HAND
        ? PACE_MILLIMETRES + " mm in " + Figures.significant(PACE_MILLIMETRES / speed, 2) + " s"
        : "on the scanner";
  }

  /** "spot 0.6 mm (1/e2), 40 kHz, 120 ns, scan width 60 mm". */
  String fixed() {
    return RigSetupText.fixed(bench, "scan width") + figure;
  }

  private String intensity(double intensity) {
    Emission emission = bench.rig().emission();
    return emission == Emission.PULSED
        ? "one pulse " + Figures.significant(intensity, 3) + " J/cm²"
        : "spot " + Figures.significant(intensity, 3) + " W/cm²";
  }

  /** Kind of light, as people write it. */
  String light() {
    return bench.rig().emission() == Emission.CONTINUOUS ? "CW" : "pulsed";
  }

  /** The rig as it stands: name, rating, lens. */
  String rig() {
    return "rig "
        + bench.rig().name()
        + ", "
        + Figures.shortest(bench.rig().ratedWatts())
        + " W"
        + bench.rig().lens().map(l -> ", lens " + l).orElse("");
  }

  String powerCheck() {
    return bench.rig().checksFor(bench.pulses(), bench.at()).stream()
        .max(Comparator.comparing(PowerCheck::percent))
        .map(
            c ->
                "a new power check (now %s W at %s\u00a0%%, %s%s)"
                    .formatted(
                        Figures.significant(c.meteredWatts(), 3),
                        Figures.shortest(c.percent()),
                        DAY.format(c.at()),
                        MeteredText.otherPulses(bench.rig(), c, bench.pulses())))
        .orElse("the first power check (none logged yet)");
  }
}
