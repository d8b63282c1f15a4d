package charline.paper;

import charline.answer.Precautions;
import charline.exposure.HandPass;
import charline.exposure.LineScan;
import charline.exposure.Settings;
import charline.plan.NextPatches;
import charline.plan.Suggestion;
import charline.quantity.Figures;
import charline.trial.Caution;
import charline.trial.Stratum;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import charline.wording.CautionText;
import charline.wording.PlanText;
import charline.wording.PrecautionText;
import charline.wording.SettingsText;
import charline.wording.SpotsText;
import charline.wording.WayText;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.TemplateOutput;
import gg.jte.output.StringOutput;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

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
   * @param spots charred spots per m² with their bound, blank where none are promised
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

  private static final TemplateEngine PAGES =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "charline.paper.templates");

  /** Cautions of every patch that the list does not say in other words. */
  private static final Set<String> ROOM = Set.of("Room", "Dust collector");

  static BenchListPage of(BenchList list) {
    List<Suggestion> patches = list.next().suggestions();
    int most = patches.stream().mapToInt(Suggestion::passes).max().orElse(1);
    List<Line> rows =
        patches.stream().map(patch -> line(list.next(), patch, list.codes(), most)).toList();
    RigSetup bench = list.next().bench();
    return new BenchListPage(
        "%s on %s: to burn next".formatted(list.stratum().family(), list.stratum().wood()),
        "Rig %s, %s, on %s"
            .formatted(
                bench.rig().name(), light(list.stratum()), PlanText.site(list.next().site())),
        poison(list.precautions()),
        PlanText.standing(list.next().standing()),
        PlanText.advice(list.next().advice()),
        StandingCautions.warning(List.of(), list.stratum()).orElse(""),
        before(String.valueOf(list.stratum().wavelengthNanometres())),
        cautions(list.precautions()),
        fixed(bench) + WayText.fixed(list.next().window().flatMap(found -> found.charFit())),
        heads(most),
        rows,
        list.stamp().inShort());
  }

  static String light(Stratum stratum) {
    return "%s %d nm".formatted(stratum.emission().word(), stratum.wavelengthNanometres());
  }

  static String poison(Precautions precautions) {
    return PrecautionText.inShort(precautions)
        .map(words -> "Before the beam: " + words + ".")
        .orElse("");
  }

  static String before(String nanometres) {
    return "Eyewear marked for %s nm, extraction at the head and a fire watch of an hour come before any patch."
        .formatted(nanometres);
  }

  static List<Caution> cautions(Precautions precautions) {
    return precautions.cautions().stream()
        .filter(caution -> !caution.always() || ROOM.contains(caution.topic()))
        .toList();
  }

  /** "1", "2", ... up to the most passes. */
  static List<String> heads(int most) {
    return IntStream.rangeClosed(1, most).mapToObj(String::valueOf).toList();
  }

  /** Whether each pass up to the most is to be read. */
  static List<Boolean> boxes(int passes, int most) {
    return IntStream.rangeClosed(1, most).mapToObj(pass -> pass <= passes).toList();
  }

  static String risk(double mean, double upper) {
    return "%s, at most %s"
        .formatted(Figures.percent(mean), Figures.atMost(upper))
        .replace(" %", "\u00a0%");
  }

  private static Line line(NextPatches next, Suggestion s, List<String> codes, int most) {
    return new Line(
        codes.get(s.number() - 1),
        s.place().name(),
        s.place().isFresh(),
        SettingsText.power(s.settings().power()),
        speed(s.settings()),
        Figures.significant(s.setting().doseJoulesPerCm2(), 3) + " J/cm²",
        PlanText.motive(s.motive()),
        s.onlyAfter().isPresent()
            ? "only if %s did not char".formatted(codes.get(s.onlyAfter().getAsInt() - 1))
            : "",
        risk(s.charRiskMean(), s.charRiskUpper()),
        SpotsText.of(next.charredSpots(s)),
        boxes(s.passes(), most));
  }

  static String speed(Settings settings) {
    if (settings.form() instanceof HandPass hand) {
      return "hand " + Figures.significant(hand.handSpeedMillimetresPerSecond(), 3) + " mm/s";
    }
    if (settings.form() instanceof LineScan scan) {
      return "scan " + Figures.significant(scan.spotSpeedMillimetresPerSecond(), 3) + " mm/s";
    }
    return "timed as before";
  }

  static String fixed(RigSetup bench) {
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

  /** The page: the same in, the same bytes out. */
  String html() {
    TemplateOutput output = new StringOutput();
    PAGES.render("benchlist.jte", Map.of("page", this), output);
    return output.toString();
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
