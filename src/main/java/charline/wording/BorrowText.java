package charline.wording;

import charline.model.BorrowedPrior;
import charline.model.Lender;
import charline.model.ModelFit;
import charline.quantity.Figures;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What an answer borrowed from other trials of the log, and how far these trials bear it out. */
public final class BorrowText {
  private static final int NAMED = 3;

  private BorrowText() {}

  /** One sentence, where lenders were found. */
  public static Optional<String> of(ModelFit fit) {
    return fit.borrowed()
        .map(
            used ->
                "Borrowed for %s: %s. These trials give that %s of the weight and the usual prior the rest."
                    .formatted(fit.event().word(), lenders(used), Figures.percent(used.weight())));
  }

  /** "latex on pine (24 patches), varnish on larch (18) and 4 strata more (66)". */
  private static String lenders(BorrowedPrior.Used used) {
    List<Lender> named = used.lenders().subList(0, Math.min(NAMED, used.lenders().size()));
    List<Lender> more = used.lenders().subList(named.size(), used.lenders().size());
    String names =
        named.stream()
            .map(
                lender ->
                    "%s on %s (%s)"
                        .formatted(
                            lender.stratum().family(),
                            lender.stratum().wood(),
                            Figures.count(lender.patches(), "patch", "patches")))
            .collect(Collectors.joining(", "));
    int patches = more.stream().mapToInt(Lender::patches).sum();
    return more.isEmpty()
        ? names
        : names
            + " and %s more (%s)"
                .formatted(
                    Figures.count(more.size(), "stratum", "strata"),
                    Figures.count(patches, "patch", "patches"));
  }

  /** Lenders and the weight left to them; null where nothing was borrowed. */
  static Optional<Json> json(ModelFit fit) {
    return fit.borrowed()
        .map(
            used ->
                new Json()
                    .put(
                        "from",
                        used.lenders().stream()
                            .map(
                                lender ->
                                    WindowJson.stratum(lender.stratum())
                                        .put("patches", lender.patches()))
                            .toList())
                    .put("weight", used.weight()));
  }
}
