package charline.wording;

import static charline.quantity.Figures.plain;

import charline.answer.PriorSensitivity;
import charline.quantity.Figures;
import charline.window.Forecast;
import charline.window.Recommendation;
import charline.window.Verdict;
import java.nio.file.Path;
import java.util.Optional;

/**
 * How much an answer owes to the priors: the same question with all their spreads doubled.
 *
 * @param file where the priors came from; empty for the usual ones
 * @param found the answer
 * @param halfAsSure the answer with every spread doubled
 */
public record PriorText(
    Optional<Path> file, Recommendation found, PriorSensitivity.HalfAsSure halfAsSure) {
  /** The words for an answer. */
  public static PriorText of(PriorSensitivity answer) {
    return new PriorText(answer.priors().file(), answer.found(), answer.halfAsSure());
  }

  public String sentence() {
    return "Priors: %s. With their spreads doubled %s."
        .formatted(file.map(f -> "from " + f.getFileName()).orElse("the usual"), moves());
  }

  private String moves() {
    Verdict now = found.verdict();
    Verdict then = halfAsSure.verdict();
    if (now != then) {
      return "the verdict would be \"%s\" in place of \"%s\": these trials alone do not settle it"
          .formatted(then.word(), now.word());
    }
    return halfAsSure
        .start()
        .map(start -> "the verdict stays, and the start would be " + start(start))
        .orElse("the verdict stays");
  }

  private String start(Forecast start) {
    double was = found.chosen().orElseThrow().start().doseJoulesPerCm2();
    long percent = Math.round(100 * (start.doseJoulesPerCm2() / was - 1));
    return "%s %%, %s %s mm/s, %s (dose per pass %s)"
        .formatted(
            plain(start.powerPercent()),
            found.bench().speed().kind().words(),
            Figures.three(start.speedMillimetresPerSecond()),
            Figures.count(start.passes(), "pass", "passes"),
            percent == 0
                ? "the same"
                : Math.abs(percent) + " % " + (percent < 0 ? "lower" : "higher"));
  }

  public Json json() {
    Optional<Forecast> start = halfAsSure.start();
    return new Json()
        .put("file", file.map(Path::toString))
        .put(
            "spreads_doubled",
            new Json()
                .put("verdict", halfAsSure.verdict().word())
                .put("power_pct", start.map(Forecast::powerPercent))
                .put("speed_mm_s", start.map(Forecast::speedMillimetresPerSecond))
                .put("passes", start.map(Forecast::passes))
                .put("dose_j_cm2", start.map(Forecast::doseJoulesPerCm2)));
  }
}
