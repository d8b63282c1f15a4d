package charline.trial;

import java.util.List;

/**
 * A substance that samples are tested for.
 *
 * @param name the log's word for it, lower case
 * @param aliases other words for the same
 * @param foundMeans what to know and do where it was found, in full sentences
 * @param barsBeam true if the beam stays off where it was found
 * @param source where that stands
 */
public record SubstanceFacts(
    String name, List<String> aliases, String foundMeans, boolean barsBeam, String source) {
  public SubstanceFacts {
    aliases = List.copyOf(aliases);
  }
}
