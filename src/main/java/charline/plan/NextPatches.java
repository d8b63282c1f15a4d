package charline.plan;

import charline.window.CharredSpots;
import charline.window.JobRisk;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The patches to burn next, in order.
 *
 * @param bench rig and fixed knobs
 * @param asked what the window has to keep
 * @param site where they are to be burned
 * @param window what the trials say so far; empty where there are none
 * @param standing where things are
 * @param advice how to go on
 * @param suggestions in the order of burning; empty where nothing should be burned
 */
public record NextPatches(
    RigSetup bench,
    Requirements asked,
    Site site,
    Optional<Recommendation> window,
    Progress standing,
    Advice advice,
    List<Suggestion> suggestions) {
  public NextPatches {
    suggestions = numbered(suggestions);
  }

  /** Charred spots per m² where all of it were done as one of these patches, in single strokes. */
  public CharredSpots charredSpots(Suggestion patch) {
    return CharredSpots.of(
        window
            .map(Recommendation::patchSquareCentimetres)
            .orElse(JobRisk.USUAL_PATCH_SQUARE_CENTIMETRES),
        patch.charRiskMean(),
        patch.charRiskUpper());
  }

  /** New boards are numbered as they come up in the list. */
  private static List<Suggestion> numbered(List<Suggestion> suggestions) {
    Map<Place, Place> fresh = new HashMap<>();
    return suggestions.stream()
        .map(
            s ->
                s.place().isFresh()
                    ? s.on(fresh.computeIfAbsent(s.place(), place -> Place.fresh(fresh.size() + 1)))
                    : s)
        .toList();
  }
}
