package charline.trial;

import charline.exposure.Figure;
import java.util.Optional;

/**
 * What makes two patches of the same settings two ways of working: passes of another figure, or on
 * another place, need not do the same.
 *
 * @param figure as noted, else the usual one of the rig; empty where neither is known
 * @param place as noted, else the face
 */
public record Manner(Optional<Figure> figure, Place place) {
  static Manner of(Patch patch) {
    return new Manner(
        patch.circumstances().head().figure().or(() -> patch.rig().usual().head().figure()),
        patch.circumstances().conditions().place().orElse(Place.FACE));
  }
}
