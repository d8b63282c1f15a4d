package charline.sheet;

import charline.exposure.Emission;
import charline.trial.Caution;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The cautions that no sheet goes without. One that the caller brings on the same topic takes the
 * place of ours.
 */
final class StandingCautions {
  /** Printed under every set of cautions. */
  static final String DEFERRAL =
      "Local codes, the insurer and licensed trades come first. This sheet does not replace them.";

  private static final String OURS = "common practice, no published source";

  /** A caution with the words by which another on the same topic is known. */
  private record Standing(Caution caution, List<String> topicWords) {}

  private StandingCautions() {}

  /** The caller's cautions with those added that are missing, the beam and the fire first. */
  static List<Caution> completing(List<Caution> given, Stratum stratum) {
    List<Caution> all = new ArrayList<>();
    for (Standing standing : standing(stratum)) {
      if (given.stream().noneMatch(c -> speaksOf(c, standing.topicWords()))) {
        all.add(standing.caution());
      }
    }
    all.addAll(given);
    return all;
  }

  /** What a continuous beam does to wood; empty for pulsed. */
  static List<String> warnings(Stratum stratum) {
    return stratum.emission() == Emission.CONTINUOUS
        ? List.of(
            "CW on wood is not recommended: char comes first and then feeds on the beam. Any halt of"
                + " the hand is a burn. Use a pulsed rig or another method where you can.")
        : List.of();
  }

  private static boolean speaksOf(Caution caution, List<String> words) {
    String topic = caution.topic().toLowerCase(Locale.ROOT);
    return words.stream().anyMatch(topic::contains);
  }

  private static List<Standing> standing(Stratum stratum) {
    return List.of(
        new Standing(
            new Caution(
                "Class 4 beam",
                "Direct, mirrored and scattered light blinds and burns. Controlled area, barriers,"
                    + " a laser safety officer, eyewear marked for "
                    + stratum.wavelengthNanometres()
                    + " nm on everyone inside. Plain safety glasses do nothing.",
                "IEC 60825-1, ANSI Z136.1"),
            List.of("class 4", "beam", "laser")),
        new Standing(
            new Caution(
                "Fire",
                "This is hot work. Vacuum dust out of the gaps, solvent rags out, extinguisher or"
                    + " charged hose in reach. Fire watch for one hour after the last pass, then"
                    + " look again.",
                "NFPA 51B"),
            List.of("fire", "hot work")),
        new Standing(
            new Caution(
                "Lead",
                "Old coats and undercoats may hold lead. Have them tested before the first patch; if"
                    + " lead is there, certified people only.",
                "40 CFR 745 subpart E, 29 CFR 1926.62"),
            List.of("lead")),
        new Standing(
            new Caution(
                "Fume",
                "Extraction at the head, HEPA and carbon. A competent person chooses the respirator.",
                OURS),
            List.of("fume", "extraction")));
  }

  /** The standards and rules that cautions name, each once. */
  static String rulesOf(List<Caution> cautions) {
    return String.join(
        "; ",
        cautions.stream()
            .map(c -> c.source().strip())
            .filter(s -> !s.isEmpty() && !s.toLowerCase(Locale.ROOT).startsWith("common practice"))
            .distinct()
            .toList());
  }
}
