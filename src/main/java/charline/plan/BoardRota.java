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
 * Spreads patches over boards: always one of those with the fewest, which one by lot, one at hand
 * before one that is still to be found, and never the same twice in a row. So a list puts at most
 * half of its patches on one board, however few that one has. A promise about a board not seen yet
 * takes several that were, so new boards are asked for until there are as many as it takes.
 */
final class BoardRota {
  private final Map<Place, Integer> burned = new LinkedHashMap<>();
  private final Random lots;
  private Place last;

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

  /** All on one board. */
  static BoardRota on(Place only) {
    return new BoardRota(only);
  }

  /** The board for the next patch. */
  Place next() {
    List<Place> others = new ArrayList<>(burned.keySet());
    if (others.size() > 1) {
      others.remove(last);
    }
    int fewest = others.stream().mapToInt(burned::get).min().orElseThrow();
    List<Place> least = new ArrayList<>(others);
    least.removeIf(place -> burned.get(place) > fewest);
    if (least.stream().anyMatch(place -> !place.isFresh())) {
      least.removeIf(Place::isFresh);
    }
    Place chosen = least.get(lots.nextInt(least.size()));
    take(chosen);
    last = chosen;
    return chosen;
  }

  /** Counts a patch on a board that was not chosen here. */
  void take(Place place) {
    burned.computeIfPresent(place, (board, count) -> count + 1);
  }
}
