package charline.ask;

import charline.log.PatchEntry;
import charline.log.search.Amount;
import charline.trial.Mark;
import charline.trial.Patch;
import charline.trial.Reading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * In which order patches are wanted, and how many of them.
 *
 * @param by an amount; empty where by the time of burning
 * @param falling highest or newest first
 * @param limit how many, 0 for all
 */
public record Ranking(Optional<Amount> by, boolean falling, int limit) {
  /** As the log has them. */
  public static final Ranking OLDEST_FIRST = new Ranking(Optional.empty(), false, 0);

  public static Ranking byTime(boolean newestFirst, int limit) {
    return new Ranking(Optional.empty(), newestFirst, limit);
  }

  public static Ranking by(Amount amount, boolean highestFirst, int limit) {
    return new Ranking(Optional.of(amount), highestFirst, limit);
  }

  public Ranking limitedTo(int number) {
    return new Ranking(by, falling, number);
  }

  /**
   * The patches in that order; those of which the amount is not known are left out. As many as were
   * wanted, and more where the last of them are equal.
   */
  public List<PatchEntry> of(List<PatchEntry> found) {
    List<PatchEntry> ranked = new ArrayList<>(found);
    if (by.isPresent()) {
      ranked.removeIf(e -> value(e.patch()).isEmpty());
      Comparator<PatchEntry> order =
          Comparator.comparingDouble(e -> value(e.patch()).getAsDouble());
      ranked.sort(falling ? order.reversed() : order);
    } else {
      Comparator<PatchEntry> order = Comparator.comparing(e -> e.patch().burnedAt().toInstant());
      ranked.sort(falling ? order.reversed() : order);
    }
    return limit == 0 || ranked.size() <= limit ? ranked : ranked.subList(0, end(ranked));
  }

  private int end(List<PatchEntry> ranked) {
    int end = limit;
    while (by.isPresent() && end < ranked.size() && same(ranked.get(limit - 1), ranked.get(end))) {
      end++;
    }
    return end;
  }

  private boolean same(PatchEntry a, PatchEntry b) {
    double x = value(a.patch()).getAsDouble();
    double y = value(b.patch()).getAsDouble();
    return Math.abs(x - y) <= 1e-9 * Math.abs(x);
  }

  /** The fewest passes are those after which it was clean, where it was. */
  private OptionalDouble value(Patch patch) {
    Amount amount = by.orElseThrow();
    if (amount == Amount.PASSES
        && !falling
        && patch.lastReading().outcome().marks().contains(Mark.CLEAN)) {
      return patch.readings().stream()
          .filter(r -> r.outcome().marks().contains(Mark.CLEAN))
          .mapToDouble(Reading::passes)
          .findFirst();
    }
    return amount.of(patch);
  }
}
