package charline.plan;

import charline.trial.Board;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;

/**
 * Spreads patches over boards: always one of those with the fewest, which one by lot, and one at
 * hand before one that is still to be found. A promise about a board not seen yet takes several
 * that were, so new boards are asked for until there are as many as it takes.
 */
final class BoardRota {
  private final Map<Place, Integer> burned = new LinkedHashMap<>();
  private final Random lots;

  /**
   * @param patches of the stratum
   * @param atHand boards that may be burned
   * @param atLeast new boards are asked for until there are so many
   */
  BoardRota(List<Patch> patches, List<Board> atHand, int atLeast, Random lots) {
    this.lots = lots;
    Map<Object, Long> counts =
        patches.stream().collect(Collectors.groupingBy(p -> p.board().id(), Collectors.counting()));
    atHand.forEach(b -> burned.put(Place.of(b), counts.getOrDefault(b.id(), 0L).intValue()));
    for (int number = 1; burned.size() < atLeast; number++) {
      burned.put(Place.fresh(number), 0);
    }
  }

  private BoardRota(Place only) {
    lots = new Random(0);
    burned.put(only, 0);
  }

  /** On the client's piece there is no choice but of the spot. */
  static BoardRota onPiece() {
    return new BoardRota(new Place("hidden spot of the piece", Optional.empty()));
  }

  /** The board for the next patch. */
  Place next() {
    int fewest = burned.values().stream().min(Integer::compare).orElseThrow();
    List<Place> least = new ArrayList<>();
    burned.forEach(
        (place, count) -> {
          if (count == fewest) {
            least.add(place);
          }
        });
    if (least.stream().anyMatch(place -> !place.isFresh())) {
      least.removeIf(Place::isFresh);
    }
    Place chosen = least.get(lots.nextInt(least.size()));
    burned.merge(chosen, 1, Integer::sum);
    return chosen;
  }
}
