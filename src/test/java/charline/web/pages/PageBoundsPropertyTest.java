package charline.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import charline.answer.Dialled;
import charline.model.Fitter;
import charline.model.ReferenceStrata;
import charline.model.Trials;
import charline.trial.Patch;
import charline.web.live.LiveModels;
import charline.window.Box;
import charline.window.LiveForecast;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.Strokes;
import charline.wording.Printed;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Every bound on the page is true: upper ones rounded up, lower ones down, ranges inward. */
class PageBoundsPropertyTest {
  private static Trials trials;
  private static LiveForecast models;

  @BeforeAll
  static void fit() {
    trials = ReferenceStrata.trials("latex", "pine");
    models = LiveForecast.fitted(Fitter.withDefaults(), trials);
  }

  @Test
  void the_live_risk_of_every_setting_tried() {
    LiveModels.Known known = new LiveModels.Known(Optional.of(models), false);
    for (Patch patch : trials.patches()) {
      LiveForecast.Expected exact =
          models.at(
              patch.rig(),
              patch.settings(),
              patch.exposure(),
              2,
              Strokes.SINGLE,
              Requirements.USUAL.confidence());
      LiveForecast.Expected inStrokes =
          models.at(
              patch.rig(),
              patch.settings(),
              patch.exposure(),
              2,
              Strokes.USUAL,
              Requirements.USUAL.confidence());
      Map<String, Object> words =
          LiveRiskText.of(
              trials.stratum(),
              known,
              new Dialled(patch.rig(), patch.settings(), patch.burnedAt(), 2, Strokes.SINGLE),
              Requirements.USUAL);

      Printed.percentAtMost(
          patch.code(), bound(words, "char", "at most # %"), exact.charRiskUpper());
      Printed.percentAtLeast(
          patch.code(), bound(words, "clear", "at least # %"), exact.clearChanceLower());
      List<BigDecimal> spots =
          Printed.only(
              String.valueOf(words.get("spots")),
              "at most # in single strokes; [^,]*, at most # with strokes overlapping 10 %.",
              2);
      Printed.atMost(patch.code(), spots.get(0), models.charredSpots(exact).upper());
      Printed.atMost(patch.code(), spots.get(1), models.charredSpots(inStrokes).upper());
    }
  }

  private static BigDecimal bound(Map<String, Object> words, String event, String pattern) {
    Object bound = ((Map<?, ?>) words.get(event)).get("bound");
    return Printed.only(String.valueOf(bound), pattern, 1).get(0);
  }

  @Test
  void the_window() {
    RigSetup bench =
        RigSetup.of(
            RigSetup.mostUsedRig(trials.patches()),
            trials.patches(),
            OffsetDateTime.parse("2026-11-01T10:00:00+01:00"));
    Recommendation found = models.recommend(bench, Requirements.USUAL);
    Box box = found.chosen().orElseThrow();
    WindowView.Start start = WindowView.start(box, found);

    assertThat(start.lines()).hasSize(3);
    inside(start.lines().get(0).range(), box.powerPercent().low(), box.powerPercent().high());
    inside(
        start.lines().get(1).range(),
        box.speedMillimetresPerSecond().low(),
        box.speedMillimetresPerSecond().high());
    List<BigDecimal> bounds =
        Printed.only(
            WindowView.atStart(box.start(), found),
            "at most # % \\([^,]*, at most #\\); clears [^;]*, at least # %",
            3);
    Printed.percentAtMost("start", bounds.get(0), box.start().charRiskUpper());
    Printed.atMost("start", bounds.get(1), found.charredSpots(box.start()).upper());
    Printed.percentAtLeast("start", bounds.get(2), box.start().clearChanceLower());
  }

  private static void inside(String printed, double low, double high) {
    List<BigDecimal> ends = Printed.only(printed, "stay in # to #", 2);
    Printed.inside(printed, ends.get(0), ends.get(1), low, high);
  }
}
