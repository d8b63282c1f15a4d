package charline.cli.judge;

import charline.cli.render.Table;
import charline.cli.render.Wording;
import charline.plan.NextPatches;
import charline.plan.Site;
import charline.plan.Suggestion;
import charline.quantity.Figures;
import charline.trial.Stratum;
import charline.wording.CautionText;
import charline.wording.PlanText;
import java.util.List;

/** The patches to burn next, for a person at the bench. */
record NextText(Stratum stratum, NextPatches next, List<String> codes) {
  String text() {
    StringBuilder text = new StringBuilder();
    line(
        text,
        "%s, rig %s, on %s: %s."
            .formatted(
                stratum.words(),
                next.bench().rig().name(),
                next.site() == Site.OFFCUT ? "an offcut" : "the piece",
                next.suggestions().isEmpty()
                    ? "nothing to burn"
                    : Figures.count(next.suggestions().size(), "patch", "patches")
                        + " to burn next"));
    line(text, "Why: " + PlanText.standing(next.standing()));
    line(text, "How: " + PlanText.advice(next.advice()));
    if (!next.suggestions().isEmpty()) {
      line(
          text,
          "Fixed: " + BenchText.fixed(next.bench()) + "; " + BenchText.metered(next.bench()) + ".");
      text.append('\n');
      next.suggestions().forEach(s -> suggestion(text, s));
    }
    line(
        text,
        "Eyewear, extraction and a fire watch come before any patch. " + CautionText.DEFERRAL);
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
                Wording.settings(s.settings()),
                s.place().name(),
                Wording.plannedPasses(s.passes(), s.purpose()),
                Figures.three(s.setting().doseJoulesPerCm2())));
    indented(
        text,
        "     ",
        PlanText.motive(s.motive())
            + (s.onlyAfter().isPresent()
                ? "; only if %d stayed without char".formatted(s.onlyAfter().getAsInt())
                : ""));
    indented(
        text,
        "     ",
        "char risk %s, at most %s; clears %s; %s"
            .formatted(
                Figures.percent(s.charRiskMean()),
                Figures.atMost(s.charRiskUpper()),
                Figures.percent(s.clearChanceMean()),
                PlanText.gain(s.gain())));
  }

  private static void indented(StringBuilder text, String head, String words) {
    String blanks = " ".repeat(head.length());
    text.append(head)
        .append(String.join("\n" + blanks, Table.fold(words, Table.WIDTH - head.length())))
        .append('\n');
  }

  private static void line(StringBuilder text, String sentence) {
    text.append(Table.paragraph(sentence)).append('\n');
  }
}
