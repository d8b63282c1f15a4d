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

    /** Shops that were given a window which breaks a promise. */
    Share eitherBroken() {
      Share broken =
          broken(
              k ->
                  k.charRisk() > Judge.ASKED.charRisk()
                      || k.clearing() < Judge.ASKED.clearChance());
      return new Share(broken.count(), shops);
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

  Windows unwary() {
    return windows(Judged::unwary);
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

  /** Probes whose true chance is within the models' one-sided 90 % bound on its unsafe side. */
  Share withinBound(boolean charring) {
    List<Judged.Probe> probes =
        shops.stream()
            .flatMap(s -> s.probes().stream())
            .filter(p -> p.charring() == charring)
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
