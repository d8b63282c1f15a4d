package charline.wording;

import static charline.quantity.Figures.percent;

import charline.model.Event;
import charline.model.check.CalibrationBin;
import charline.model.check.CountCheck;
import charline.model.check.FitChecks;
import charline.model.check.FitFinding;
import charline.model.check.Severity;
import charline.quantity.Figures;
import java.util.List;
import java.util.stream.Stream;

/** How well a model fits, for a person: a heading, what was found, and the counts behind it. */
record CheckText(FitChecks checks) {
  String text() {
    StringBuilder text = new StringBuilder("How well the model fits: ");
    text.append(
        switch (checks.worst()) {
          case FINE -> "no sign of misfit.\n";
          case LOOK -> "check the points below.\n";
          case FAILS -> "IT FAILS; do not trust its numbers.\n";
        });
    for (FitFinding finding : checks.findings()) {
      text.append(item(finding)).append('\n');
    }
    return text.append('\n').append(counts()).append('\n').append(calibration()).toString();
  }

  private static String item(FitFinding finding) {
    String word = finding.severity() == Severity.FAILS ? "FAILS" : finding.severity().word();
    List<String> lines = Table.fold(FindingText.of(finding), Table.WIDTH - 9);
    return "  %-5s  %s".formatted(word, String.join("\n         ", lines));
  }

  private String done() {
    return checks.event() == Event.CHAR ? "charred" : "cleared";
  }

  private String counts() {
    Table table = new Table(">readings", ">" + done(), ">expected", ">90 % range", "at");
    for (CountCheck c :
        Stream.of(checks.doses(), checks.boards(), checks.ways()).flatMap(List::stream).toList()) {
      table.row(
          String.valueOf(c.readings()),
          String.valueOf(c.seen()),
          Figures.tenths(c.expected()),
          c.low() + " to " + c.high(),
          c.group());
    }
    return table.text();
  }

  private String calibration() {
    Table table =
        new Table(
            "chance given", ">on average", ">readings", ">" + done(), ">true share, 90 % sure");
    for (CalibrationBin b : checks.calibration()) {
      table.row(
          "%s to %s".formatted(whole(b.from()), Figures.share(b.to())),
          percent(b.predicted()),
          String.valueOf(b.readings()),
          String.valueOf(b.seen()),
          Figures.percentBounds(b.low(), b.high()));
    }
    return table.text();
  }

  private static String whole(double share) {
    return String.valueOf(Math.round(100 * share));
  }
}
