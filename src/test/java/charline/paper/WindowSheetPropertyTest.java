package charline.paper;

import static org.assertj.core.api.Assertions.assertThat;

import charline.exposure.Emission;
import charline.model.Event;
import charline.model.check.FitFinding;
import charline.model.check.Severity;
import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.JobRisk;
import charline.window.MapCell;
import charline.window.NextStep;
import charline.window.Reason;
import charline.window.Recommendation;
import charline.window.RigSetup;
import charline.window.Verdict;
import charline.window.WindowMap;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WindowSheetPropertyTest {
  private static final String HOSTILE = "</title><script>alert('x')</script>\" onload=\"alert(1)";

  private static final FitFinding HOSTILE_PATCH =
      new FitFinding.SurprisingPatch(
          Severity.FAILS, Event.CHAR, HOSTILE, FitFinding.Surprise.EARLY, 2, 9, 0.01);

  @ParameterizedTest
  @EnumSource(Verdict.class)
  void a_sheet_loads_nothing_and_runs_nothing(Verdict verdict) {
    assertThat(sheet(BoathousePapers.latexOnPine(verdict)))
        .doesNotContain("http:", "https:", "//", "@import", "<link", "<script", "src=", "<img");
  }

  @ParameterizedTest
  @EnumSource(Verdict.class)
  void text_from_the_log_is_never_read_as_markup(Verdict verdict) {
    String html =
        new WindowSheet(
                hostile(BoathousePapers.latexOnPine(verdict)),
                List.of(new Caution(HOSTILE, HOSTILE, HOSTILE)),
                new SheetStamp(HOSTILE, HOSTILE, BoathousePapers.BURNED, Optional.of(HOSTILE)))
            .html();

    assertThat(html)
        .doesNotContain("<script", "</title><script")
        .doesNotContainPattern("<[^>]*onload"); // in no tag; between tags it is only words
    assertThat(html.split("&lt;script&gt;", -1)).hasSizeGreaterThan(10);
  }

  @ParameterizedTest
  @EnumSource(Verdict.class)
  void every_paper_and_verdict_stays_light(Verdict verdict) {
    for (Paper paper : Paper.values()) {
      String html =
          new WindowSheet(
                  BoathousePapers.latexOnPine(verdict),
                  BoathousePapers.LATEX,
                  BoathousePapers.STAMP)
              .html(paper);
      assertThat(html.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(60_000);
      assertThat(html).contains(paper.style(), PaperStyle.SHEET.text(), PaperStyle.MAP.text());
    }
  }

  @ParameterizedTest
  @EnumSource(value = Verdict.class, names = "WINDOW", mode = EnumSource.Mode.EXCLUDE)
  void without_a_window_there_is_no_start_setting_even_if_a_box_is_passed(Verdict verdict) {
    Recommendation window = BoathousePapers.latexOnPine(Verdict.WINDOW);
    Recommendation muddled =
        with(BoathousePapers.latexOnPine(verdict), window.chosen(), window.map());

    assertThat(sheet(muddled))
        .doesNotContain("START", "stay inside", "stay in ", "start at", "At the start", "Or 1 pass")
        .contains(NoWindowWords.headline(verdict));
  }

  @Test
  void numbers_that_are_missing_are_named_and_never_printed_as_nan() {
    Recommendation window = BoathousePapers.latexOnPine(Verdict.WINDOW);
    double none = Double.NaN;
    Box box = window.chosen().orElseThrow();
    Forecast blank =
        new Forecast(
            box.start().powerPercent(),
            none,
            box.start().speedMillimetresPerSecond(),
            2,
            none,
            none,
            none,
            none,
            none,
            Double.POSITIVE_INFINITY,
            none);
    Box blanked =
        new Box(2, box.powerPercent(), box.speedMillimetresPerSecond(), blank, blank, blank);
    WindowMap map =
        new WindowMap(
            2,
            List.of(20.0, 40.0),
            List.of(10.0, 20.0),
            List.of(
                List.of(
                    new MapCell(20, 10, true, true, false, false),
                    new MapCell(20, 20, true, true, true, false)),
                List.of(
                    new MapCell(40, 10, true, true, false, true),
                    new MapCell(40, 20, false, true, false, false))));

    assertThat(sheet(with(window, Optional.of(blanked), Optional.of(map))))
        .doesNotContain("NaN", "Infinity")
        .contains("char not known, at most not known");
  }

  @ParameterizedTest
  @EnumSource(Verdict.class)
  void a_sheet_without_trials_or_map_still_says_why(Verdict verdict) {
    Recommendation full = BoathousePapers.latexOnPine(verdict);
    Recommendation bare =
        new Recommendation(
            full.stratum(),
            full.asked(),
            full.evidence(),
            full.bench(),
            verdict,
            List.of(new Reason.NothingTried()),
            List.of(new NextStep.BurnNextPatches()),
            Optional.empty(),
            full.tried(),
            Double.NaN,
            Optional.empty(),
            List.of(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            OptionalDouble.empty());

    assertThat(sheet(bare))
        .contains("No setting of this rig lies within", "No map: the models could not be fitted")
        .contains("per 25 cm² (size not logged)")
        .doesNotContain("NaN", "<figure");
  }

  @Test
  void the_map_alone_carries_its_style_legend_and_counts() {
    String map = WindowSheet.mapHtml(BoathousePapers.latexOnPine(Verdict.WINDOW)).orElseThrow();

    assertThat(map)
        .startsWith("<figure")
        .contains("<style>", "START", "both kept", "not tried", "clean 14", "residue 4")
        .contains(PaperStyle.MAP.text())
        .doesNotContain("<html", "http", " style=");
  }

  @Test
  void a_continuous_beam_is_warned_of_before_anything_else() {
    Recommendation pulsed = BoathousePapers.latexOnPine(Verdict.NOT_YET);
    RigSetup bench = BoathousePapers.bench(Emission.CONTINUOUS);
    Recommendation continuous =
        new Recommendation(
            new Stratum("latex", "pine", Emission.CONTINUOUS, 1064),
            pulsed.asked(),
            pulsed.evidence(),
            bench,
            pulsed.verdict(),
            pulsed.reasons(),
            pulsed.nextSteps(),
            pulsed.standing(),
            pulsed.tried(),
            pulsed.chanceAnyWindow(),
            Optional.empty(),
            List.of(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            OptionalDouble.empty());
    String html = sheet(continuous);

    assertThat(html).contains("CW on wood is not recommended");
    assertThat(html.indexOf("CW on wood")).isLessThan(html.indexOf("No start setting yet"));
  }

  private static String sheet(Recommendation recommendation) {
    return new WindowSheet(
            recommendation,
            BoathousePapers.LATEX,
            BoathousePapers.STAMP,
            recommendation
                .chosen()
                .filter(b -> Double.isFinite(b.start().charRiskMean()))
                .flatMap(b -> JobRisk.of(recommendation, 4.5)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty())
        .html();
  }

  private static Recommendation with(
      Recommendation r, Optional<Box> chosen, Optional<WindowMap> map) {
    return new Recommendation(
        r.stratum(),
        r.asked(),
        r.evidence(),
        r.bench(),
        r.verdict(),
        r.reasons(),
        r.nextSteps(),
        r.standing(),
        r.tried(),
        r.chanceAnyWindow(),
        chosen,
        r.alternatives(),
        map,
        r.medianPatchSquareCentimetres(),
        r.charFit(),
        r.clearingFit(),
        Optional.empty(),
        r.patches(),
        OptionalDouble.empty());
  }

  /** The same with every text that a person can type turned into an attack. */
  private static Recommendation hostile(Recommendation r) {
    return new Recommendation(
        new Stratum(HOSTILE, HOSTILE, r.stratum().emission(), 1064),
        r.asked(),
        r.evidence(),
        new RigSetup(
            hostile(r.bench().rig()),
            r.bench().at(),
            r.bench().spot(),
            r.bench().pulses(),
            r.bench().speed()),
        r.verdict(),
        List.of(new Reason.ModelFails(List.of(HOSTILE_PATCH), 0)),
        List.of(new NextStep.CheckPatch(HOSTILE_PATCH)),
        r.standing(),
        r.tried(),
        r.chanceAnyWindow(),
        r.chosen(),
        r.alternatives(),
        r.map(),
        r.medianPatchSquareCentimetres(),
        r.charFit(),
        r.clearingFit(),
        Optional.empty(),
        r.patches().stream().map(WindowSheetPropertyTest::hostile).toList(),
        OptionalDouble.empty());
  }

  private static Rig hostile(Rig rig) {
    return RigBuilder.like(rig).named(HOSTILE).lens(Optional.of(HOSTILE)).build();
  }

  private static Patch hostile(Patch p) {
    return new Patch(
        p.id(),
        p.code() + HOSTILE,
        p.burnedAt(),
        p.rig(),
        new Board(
            p.board().id(),
            HOSTILE,
            HOSTILE,
            p.board().form(),
            Optional.of(HOSTILE),
            OptionalDouble.empty(),
            Optional.of(HOSTILE)),
        new Finish(p.finish().id(), HOSTILE, HOSTILE, List.of()),
        p.settings(),
        p.areaSquareCentimetres(),
        p.readings());
  }
}
