package charline.shops;

import charline.window.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Predicate;

/** What became of all shops of one scenario. */
record Tally(Scenario scenario, List<Judged> shops) {

  /** One kind of window over all shops. */
  record Windows(List<Judged.Kept> found, int shops) {
    Share share() {
      return new Share(found.size(), shops);
    }

    /** Windows whose hottest corner chars more than was promised. */
    Share charBroken() {
      return broken(k -> k.charRisk() > Judge.ASKED.charRisk());
    }

    /** Windows whose coldest corner clears less than was promised. */
    Share clearingBroken() {
      return broken(k -> k.clearing() < Judge.ASKED.clearChance());
    }

    /** Of all shops, those whose window chars more than was promised. */
    Share charBrokenShops() {
      return new Share(charBroken().count(), shops);
    }

    /** Of all shops, those whose window clears less than was promised. */
    Share clearingBrokenShops() {
      return new Share(clearingBroken().count(), shops);
    }

    private Share broken(Predicate<Judged.Kept> how) {
      return new Share((int) found.stream().filter(how).count(), found.size());
    }

    OptionalDouble meanCharRisk() {
      return found.stream().mapToDouble(Judged.Kept::charRisk).average();
    }

    OptionalDouble meanClearing() {
      return found.stream().mapToDouble(Judged.Kept::clearing).average();
    }
  }

  Windows windows() {
    return windows(Judged::window);
  }

  /** Those of a log without other strata. */
  Windows alone() {
    return windows(Judged::alone);
  }

  /** Those for a piece; none where no piece was looked at. */
  Windows ofPiece(Function<Judged.Piece, Optional<Judged.Kept>> which) {
    return windows(shop -> shop.piece().flatMap(which));
  }

  /** Shops of which a piece was looked at. */
  List<Judged.Piece> pieces() {
    return shops.stream().flatMap(shop -> shop.piece().stream()).toList();
  }

  /** Shops with the one window and not the other, and the other way round. */
  int[] pairs(
      Function<Judged, Optional<Judged.Kept>> one, Function<Judged, Optional<Judged.Kept>> other) {
    int[] counts = new int[2];
    for (Judged shop : shops) {
      boolean first = one.apply(shop).isPresent();
      boolean second = other.apply(shop).isPresent();
      counts[0] += first && !second ? 1 : 0;
      counts[1] += second && !first ? 1 : 0;
    }
    return counts;
  }

  Windows classical() {
    return windows(Judged::classical);
  }

  private Windows windows(Function<Judged, Optional<Judged.Kept>> which) {
    return new Windows(shops.stream().map(which).flatMap(Optional::stream).toList(), shops.size());
  }

  long count(Verdict verdict) {
    return shops.stream().filter(s -> s.verdict() == verdict).count();
  }

  /**
   * Shops whose first probe's true chance is within the models' one-sided 90 % bound on its unsafe
   * side: one probe a shop, as those of one shop share its posterior.
   */
  Share withinBound(boolean charring) {
    List<Judged.Probe> probes =
        shops.stream()
            .flatMap(s -> s.probes().stream().filter(p -> p.charring() == charring).limit(1))
            .toList();
    double confidence = Judge.ASKED.confidence();
    int within =
        (int)
            probes.stream()
                .filter(p -> charring ? p.rank() <= confidence : p.rank() >= 1 - confidence)
                .count();
    return new Share(within, probes.size());
  }
}
