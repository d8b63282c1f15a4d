package charline.model.way;

import charline.quantity.Figures;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Stratum;
import charline.trial.Tone;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Refuses to answer for a way of working that was not tried. */
public final class WaysTried {
  /** A gauge reading is not kept to more than this. */
  private static final double SLACK = 0.005;

  private WaysTried() {}

  /**
   * @throws Refusal naming what was tried: of kind "usage" where the coat was not, of kind "nothing
   *     found" where the rig, the figure or the like was not
   */
  public static void require(Way asked, Stratum stratum, List<Patch> patches) {
    asked.coat().tone().ifPresent(tone -> requireTone(tone, stratum, patches));
    asked.coat().thicknessMicrometres().ifPresent(um -> requireThickness(um, stratum, patches));
    if (!among(patches, asked)) {
      throw Refusal.nothingFound(
          "%s was not tried with %s, and other ways of working need not do the same; the log has %s."
              .formatted(stratum.words(), words(asked), inventory(asked, patches)));
    }
  }

  /** Whether any of the patches was burned in a way, as far as that goes by name. */
  public static boolean among(List<Patch> patches, Way asked) {
    return patches.stream().map(Way::of).anyMatch(way -> like(asked, way));
  }

  /** Whether a patch was burned in the way that is asked about, as far as that goes by name. */
  private static boolean like(Way asked, Way way) {
    return agrees(asked.coat().tone(), way.coat().tone())
        && agrees(asked.rig(), way.rig())
        && agrees(asked.figure(), way.figure())
        && asked.placeOrFace() == way.placeOrFace()
        && agrees(asked.warmth(), way.warmth())
        && (asked.wetted().isEmpty() || asked.wetted().get().equals(way.wetted().orElse(false)));
  }

  private static <T> boolean agrees(Optional<T> asked, Optional<T> had) {
    return asked.isEmpty() || asked.equals(had);
  }

  /** The way that was asked about, as far as it goes by name. */
  public static String words(Way way) {
    StringBuilder words = new StringBuilder();
    way.rig().ifPresent(rig -> words.append(", rig ").append(rig));
    way.figure().ifPresent(figure -> words.append(", figure ").append(figure.word()));
    way.place()
        .filter(place -> place != Place.FACE)
        .ifPresent(place -> words.append(", place ").append(place.word()));
    way.warmth()
        .ifPresent(
            warmth ->
                words.append(
                    warmth == Warmth.HOT
                        ? ", passes that follow while the wood is hot"
                        : ", a rest of 10 s or more between passes"));
    way.wetted().ifPresent(wet -> words.append(wet ? ", the finish wetted" : ", the finish dry"));
    return words.isEmpty() ? "" : words.substring(2);
  }

  private static String inventory(Way asked, List<Patch> patches) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Patch patch : patches) {
      Way way = Way.of(patch);
      Way named =
          Way.UNSAID.onRig(way.rig().orElseThrow()).with(way.figure()).with(way.placeOrFace());
      Way shown =
          asked.warmth().isPresent() && way.warmth().isPresent()
              ? named.with(way.warmth().get())
              : named;
      counts.merge(
          words(asked.wetted().isPresent() ? shown.wetted(way.wetted().orElse(false)) : shown),
          1,
          Integer::sum);
    }
    return counts.entrySet().stream()
        .map(e -> Figures.count(e.getValue(), "patch", "patches") + " with " + e.getKey())
        .collect(Collectors.joining("; "));
  }

  private static void requireTone(Tone tone, Stratum stratum, List<Patch> patches) {
    if (patches.stream().noneMatch(p -> p.finish().tone().equals(Optional.of(tone)))) {
      String tried =
          Arrays.stream(Tone.values())
              .filter(t -> patches.stream().anyMatch(p -> p.finish().tone().equals(Optional.of(t))))
              .map(Tone::word)
              .collect(Collectors.joining(" and "));
      throw Refusal.usage(
          "The tone must be one that was tried, not %s: patches of %s have %s."
              .formatted(
                  tone.word(),
                  stratum.words(),
                  tried.isEmpty() ? "no tone recorded" : tried + " coats only"));
    }
  }

  private static void requireThickness(double um, Stratum stratum, List<Patch> patches) {
    double[] known = WayDesign.thicknesses(patches);
    if (known.length == 0) {
      throw Refusal.usage(
          "The thickness must be one that was tried, not %s um: no patch of %s has one recorded."
              .formatted(Figures.plain(um), stratum.words()));
    }
    double thickest = known[known.length - 1];
    if (um < known[0] * (1 - SLACK) || um > thickest * (1 + SLACK)) {
      throw Refusal.usage(
          "The thickness must be within what was tried, not %s um: coats of %s have %s to %s um."
              .formatted(
                  Figures.plain(um),
                  stratum.words(),
                  Figures.plain(known[0]),
                  Figures.plain(thickest)));
    }
  }
}
