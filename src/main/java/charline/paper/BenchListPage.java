package charline.paper;

import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.plan.NextPatches;
import charline.plan.Suggestion;
import charline.quantity.Figures;
import charline.trial.Caution;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import charline.wording.CautionText;
import charline.wording.PlanText;
import charline.wording.PrecautionText;
import charline.wording.SettingsText;
import charline.wording.SpotsText;
import charline.wording.WayText;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The words of a bench list.
 *
 * @param title coating and wood
 * @param subtitle rig, light and place
 * @param poison poison and fire in short, blank where the coat brings none
 * @param why where things stand
 * @param how how to burn the list
 * @param warning what a continuous beam does to wood, blank for a pulsed one
 * @param before what comes before any patch
 * @param cautions what the coat and the wood bring, for paper
 * @param fixed knobs that stay as they are
 * @param passHeads "1", "2", ... up to the most passes of the list
 * @param rows one a patch
 * @param origin log, version, date, person
 */
public record BenchListPage(
    String title,
    String subtitle,
    String poison,
    String why,
    String how,
    String warning,
    String before,
    List<Caution> cautions,
    String fixed,
    List<String> passHeads,
    List<Line> rows,
    String origin) {
  /**
   * One patch.
   *
   * @param code as on the tape
   * @param place on what
   * @param fresh true if that is a board still to be found, whose name is written in
   * @param power with its unit
   * @param speed with its unit
   * @param dose of one pass, with its unit
   * @param why the reason
   * @param only what must have been seen before, blank where nothing must
   * @param risk char risk with its bound
   * @param spots charred spots per m² with their bound
   * @param boxes true for every pass that is to be read
   */
  public record Line(
      String code,
      String place,
      boolean fresh,
      String power,
      String speed,
      String dose,
      String why,
      String only,
      String risk,
      String spots,
      List<Boolean> boxes) {}

  /** Cautions of every patch that the list does not say in other words. */
  private static final Set<String> ROOM = Set.of("Room", "Dust collector");

  static BenchListPage of(BenchList list) {
    List<Suggestion> patches = list.next().suggestions();
    int most = patches.stream().mapToInt(Suggestion::passes).max().orElse(1);
    List<String> heads = new ArrayList<>();
    for (int pass = 1; pass <= most; pass++) {
      heads.add(String.valueOf(pass));
    }
    List<Line> rows = new ArrayList<>();
    for (int k = 0; k < patches.size(); k++) {
      rows.add(line(list.next(), patches.get(k), list.codes(), most));
    }
    RigSetup bench = list.next().bench();
    return new BenchListPage(
        "%s on %s: to burn next".formatted(list.stratum().family(), list.stratum().wood()),
        "Rig %s, %s %d nm, on %s"
            .formatted(
                bench.rig().name(),
                list.stratum().emission().word(),
                list.stratum().wavelengthNanometres(),
                PlanText.site(list.next().site())),
        PrecautionText.inShort(list.precautions())
            .map(words -> "Before the beam: " + words + ".")
            .orElse(""),
        PlanText.standing(list.next().standing()),
        PlanText.advice(list.next().advice()),
        StandingCautions.warning(List.of(), list.stratum()).orElse(""),
        "Eyewear marked for %d nm, extraction at the head and a fire watch of an hour come before any patch."
            .formatted(list.stratum().wavelengthNanometres()),
        list.precautions().cautions().stream()
            .filter(caution -> !caution.always() || ROOM.contains(caution.topic()))
            .toList(),
        fixed(bench) + WayText.fixed(list.next().window().flatMap(found -> found.charFit())),
        heads,
        rows,
        "%s, charline %s, %s%s"
            .formatted(
                list.stamp().logName(),
                list.stamp().programVersion(),
                list.stamp().printedAt().toLocalDate(),
                list.stamp().by().map(who -> ", " + who).orElse("")));
  }

  private static Line line(NextPatches next, Suggestion s, List<String> codes, int most) {
    List<Boolean> boxes = new ArrayList<>();
    for (int pass = 1; pass <= most; pass++) {
      boxes.add(pass <= s.passes());
    }
    return new Line(
        codes.get(s.number() - 1),
        s.place().name(),
        s.place().isFresh(),
        SettingsText.power(s.settings().power()),
        speed(s),
        Figures.significant(s.setting().doseJoulesPerCm2(), 3) + " J/cm²",
        PlanText.motive(s.motive()),
        s.onlyAfter().isPresent()
            ? "only if %s did not char".formatted(codes.get(s.onlyAfter().getAsInt() - 1))
            : "",
        "%s, at most %s"
            .formatted(Figures.percent(s.charRiskMean()), Figures.atMost(s.charRiskUpper()))
            .replace(" %", "\u00a0%"),
        SpotsText.of(next.charredSpots(s)),
        boxes);
  }

  private static String speed(Suggestion s) {
    if (s.settings().form() instanceof HandPass hand) {
      return "hand " + Figures.significant(hand.handSpeedMillimetresPerSecond(), 3) + " mm/s";
    }
    if (s.settings().form() instanceof LineScan scan) {
      return "scan " + Figures.significant(scan.spotSpeedMillimetresPerSecond(), 3) + " mm/s";
    }
    return "timed as before";
  }

  private static String fixed(RigSetup bench) {
    String pulses =
        bench
            .pulses()
            .map(p -> ", " + Figures.shortest(p.repetitionKilohertz()) + " kHz")
            .orElse("");
    return "Spot %s mm (%s)%s, %s %s mm; each patch is one stroke"
        .formatted(
            Figures.shortest(bench.spot().diameterMillimetres()),
            bench.spot().definition().word(),
            pulses,
            bench.speed().kind() == SpeedKnob.Kind.HAND ? "width" : "line spacing",
            Figures.shortest(bench.speed().acrossMillimetres()));
  }

  /** True if some board is still to be found. */
  public boolean fresh() {
    return rows.stream().anyMatch(Line::fresh);
  }

  /** Whose word comes before the list's. */
  public String deferral() {
    return CautionText.DEFERRAL;
  }
}
