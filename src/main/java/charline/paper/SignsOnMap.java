package charline.paper;

import charline.paper.MapPicture.Point;
import charline.paper.MapPicture.Rect;
import charline.paper.MapPicture.Sign;
import charline.trial.Patch;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The signs of the trials. Trials at one place stand side by side, and those of one outcome are one
 * sign with a count.
 *
 * @param drawn signs in drawing order
 * @param patches trials drawn by sign
 * @param offTheMap trials that fall outside the axes
 */
record SignsOnMap(List<Sign> drawn, Map<PatchSign, Integer> patches, int offTheMap) {
  private static final int PITCH = 56;

  /** Trials nearer than this would hide each other. */
  private static final int SAME_PLACE = 16;

  private static final int HALF_SIGN = 30;

  private record Spot(Point at, List<PatchPlaces.Place> places) {}

  static SignsOnMap of(List<PatchPlaces.Place> places, LogAxis across, LogAxis up) {
    List<Spot> spots = new ArrayList<>();
    Map<PatchSign, Integer> patches = new TreeMap<>();
    int off = 0;
    for (PatchPlaces.Place place : places) {
      if (!across.contains(place.speedMillimetresPerSecond())
          || !up.contains(place.powerPercent())) {
        off++;
        continue;
      }
      spotNear(
              spots,
              new Point(
                  Math.round(across.place(place.speedMillimetresPerSecond())),
                  Math.round(up.place(place.powerPercent()))))
          .places()
          .add(place);
      patches.merge(PatchSign.of(place.reading().outcome()), 1, Integer::sum);
    }
    return new SignsOnMap(
        spots.stream().flatMap(spot -> signs(spot).stream()).toList(), patches, off);
  }

  private static Spot spotNear(List<Spot> spots, Point at) {
    for (Spot spot : spots) {
      if (Math.hypot(spot.at().x() - at.x(), spot.at().y() - at.y()) < SAME_PLACE) {
        return spot;
      }
    }
    Spot spot = new Spot(at, new ArrayList<>());
    spots.add(spot);
    return spot;
  }

  private static List<Sign> signs(Spot spot) {
    Map<PatchSign, List<PatchPlaces.Place>> bySign =
        spot.places().stream()
            .collect(
                Collectors.groupingBy(
                    p -> PatchSign.of(p.reading().outcome()), TreeMap::new, Collectors.toList()));
    List<Sign> signs = new ArrayList<>();
    long x = spot.at().x() - PITCH * (bySign.size() - 1) / 2;
    for (Map.Entry<PatchSign, List<PatchPlaces.Place>> entry : bySign.entrySet()) {
      signs.add(sign(new Point(x, spot.at().y()), entry.getKey(), entry.getValue()));
      x += PITCH;
    }
    return signs;
  }

  private static Sign sign(Point at, PatchSign sign, List<PatchPlaces.Place> places) {
    boolean more = places.stream().anyMatch(p -> p.reading().outcome().marks().size() > 1);
    String count = places.size() > 1 ? "×" + places.size() : "";
    String title = places.stream().map(p -> title(p.patch(), p)).collect(Collectors.joining("; "));
    return new Sign(at, sign, count + (more ? "+" : ""), title);
  }

  private static String title(Patch patch, PatchPlaces.Place place) {
    return patch.code() + " " + place.reading().outcome().text();
  }

  int count(PatchSign sign) {
    return patches.getOrDefault(sign, 0);
  }

  /** How many signs a rectangle would cover. */
  int touching(Rect rect) {
    return (int)
        drawn.stream()
            .filter(
                s ->
                    rect.touches(
                        new Rect(
                            s.at().x() - HALF_SIGN,
                            s.at().y() - HALF_SIGN,
                            2 * HALF_SIGN,
                            2 * HALF_SIGN)))
            .count();
  }
}
