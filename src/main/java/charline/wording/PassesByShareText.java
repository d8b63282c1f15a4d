package charline.wording;

import static charline.quantity.Figures.three;

import charline.model.Event;
import charline.model.classical.PassesByShare;
import java.util.List;
import java.util.stream.Collectors;

/** Passes by which shares of patches char or clear, where a classical fit times passes. */
final class PassesByShareText {
  private PassesByShareText() {}

  static String sentence(List<PassesByShare> shares, Event event) {
    return "At F0 and %s J/cm2 per pass, the middle of the trials, %s (90 %% limits)."
        .formatted(
            three(shares.get(0).doseJoulesPerCm2()),
            shares.stream()
                .map(
                    s ->
                        "%s %% of patches %s by %s passes (%s to %s)"
                            .formatted(
                                three(100 * s.share()),
                                event == Event.CHAR ? "char" : "clear",
                                three(s.passes()),
                                three(s.limits().low().orElse(0)),
                                three(s.limits().high().orElse(Double.POSITIVE_INFINITY))))
                .collect(Collectors.joining(", ")));
  }

  static List<Json> json(List<PassesByShare> shares) {
    return shares.stream()
        .map(
            s ->
                new Json()
                    .put("share", s.share())
                    .put("dose_j_cm2", s.doseJoulesPerCm2())
                    .put("passes", s.passes())
                    .put("low", s.limits().low())
                    .put("high", s.limits().high()))
        .toList();
  }
}
