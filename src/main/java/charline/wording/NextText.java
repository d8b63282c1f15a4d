package charline.wording;

import static charline.wording.Table.line;

import charline.answer.NextAnswer;
import charline.plan.NextPatches;
import charline.plan.Suggestion;
import charline.quantity.Figures;
import charline.trial.Stratum;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The patches to burn next, for a person at the bench. */
public record NextText(NextAnswer answer, List<String> codes) {
  public String text() {
    Stratum stratum = answer.stratum();
    NextPatches next = answer.next();
    StringBuilder text = new StringBuilder();
    line(
        text,
        "%s, rig %s, on %s: %s."
            .formatted(
                stratum.words(),
                next.bench().rig().name(),
                PlanText.site(next.site()),
                next.suggestions().isEmpty()
                    ? "nothing to burn"
                    : Figures.count(next.suggestions().size(), "patch", "patches")
                        + " to burn next"));
    PrecautionText.headline(answer.precautions()).ifPresent(words -> line(text, words));
    line(text, "Why: " + PlanText.standing(next.standing()));
    answer
        .next()
        .window()
        .map(ProvisoText::of)
        .orElse(List.of())
        .forEach(proviso -> line(text, "MIND: " + proviso));
    line(text, "How: " + PlanText.advice(next.advice()));
    next.window()
        .flatMap(found -> WayText.of(found.charFit(), found.clearingFit(), found.patches()))
        .ifPresent(way -> line(text, way));
    next.window().stream()
        .flatMap(found -> Stream.of(found.charFit(), found.clearingFit()))
        .flatMap(Optional::stream)
        .flatMap(fit -> BorrowText.of(fit).stream())
        .forEach(borrowed -> line(text, borrowed));
    BasisText.of(answer.question()).ifPresent(priors -> line(text, priors));
    if (!next.suggestions().isEmpty()) {
      line(
          text,
          "Fixed: "
              + RigSetupText.fixedForPatches(next.bench())
              + WayText.fixed(next.window().flatMap(found -> found.charFit()))
              + "; "
              + RigSetupText.metered(next.bench())
              + ".");
      text.append('\n');
      next.suggestions().forEach(s -> suggestion(text, s));
    }
    PrecautionText.inBrief(answer.precautions()).forEach(caution -> line(text, caution));
    line(text, CautionText.before("patch"));
    return text.toString();
  }

  private void suggestion(StringBuilder text, Suggestion s) {
    String number = "%3d  ".formatted(s.number());
    indented(
        text,
        number,
        "%s%s on %s, %s, %s J/cm2 per pass"
            .formatted(
                codes.isEmpty() ? "" : codes.get(s.number() - 1) + "  ",
                SettingsText.settings(s.settings()),
                s.place().name(),
                SettingsText.plannedPasses(s.passes(), s.purpose()),
                Figures.three(s.setting().doseJoulesPerCm2())));
    indented(
        text,
        "     ",
        PlanText.motive(s.motive())
            + (s.onlyAfter().isPresent()
                ? "; only if %d did not char".formatted(s.onlyAfter().getAsInt())
                : ""));
    indented(
        text,
        "     ",
        "char risk %s, at most %s (%s); clears %s; %s"
            .formatted(
                Figures.percent(s.charRiskMean()),
                Figures.atMost(s.charRiskUpper()),
                SpotsText.of(answer.next().charredSpots(s)),
                Figures.percent(s.clearChanceMean()),
                PlanText.gain(s.gain())));
  }

  private static void indented(StringBuilder text, String head, String words) {
    text.append(Table.hanging(head, words));
  }
}
