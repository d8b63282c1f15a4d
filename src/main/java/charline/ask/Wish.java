package charline.ask;

import charline.ask.Question.Purpose;
import java.util.Optional;
import java.util.OptionalInt;

/** What else than patches is wanted. */
final class Wish {
  Purpose purpose = Purpose.LIST;
  Optional<Ranking> ranking = Optional.empty();

  OptionalInt count = OptionalInt.empty();

  /** So many of something without an order are the newest. */
  Optional<Ranking> ranking() {
    return ranking.isEmpty() && count.isPresent()
        ? Optional.of(Ranking.byTime(true, count.getAsInt()))
        : ranking.map(r -> count.isPresent() ? r.limitedTo(count.getAsInt()) : r);
  }
}
