package charline.paper;

import charline.exposure.Emission;
import charline.trial.Caution;
import charline.trial.Stratum;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The cautions that no sheet goes without. One that the caller brings on the same topic takes the
 * place of ours.
 */
final class StandingCautions {
  private static final String CONTINUOUS_WAVE_ON_WOOD =
      "CW on wood is not recommended: char comes first and then feeds on the beam, and any halt of"
          + " the hand is a burn. Use a pulsed rig or another method where you can.";

  private static final List<String> LOCAL_RULES = List.of("local rules", "local codes");
  private static final List<String> CONTINUOUS_WAVE = List.of("continuous wave", "cw");

  /** IEC 60825-1, ANSI Z136.1, 40 CFR 745 subpart E, NFPA 51B and their like. */
  private static final Pattern RULE =
      Pattern.compile(
          "\\b(?:(?:IEC TR|IEC|ISO|EN) \\d[\\d-]*\\d|ANSI Z[\\d.]*\\d|NFPA \\d+[A-Z]?"
              + "|\\d+ CFR [\\d.]*\\d(?: subpart [A-Z])?)");

  private static final String OURS = "common practice, no published source";

  /** A caution with the words by which another on the same topic is known. */
  private record Standing(Caution caution, List<String> topicWords) {}

  private StandingCautions() {}

  /**
   * The caller's cautions with those added that are missing, the beam and the fire first. What the
   * page says in other places, the deferral and the warning of a continuous beam, is left out.
   */
  static List<Caution> completing(List<Caution> given, Stratum stratum) {
    List<Caution> all = new ArrayList<>();
    for (Standing standing : standing(stratum)) {
      if (given.stream().noneMatch(c -> speaksOf(c, standing.topicWords()))) {
        all.add(standing.caution());
      }
    }
    given.stream()
        .filter(c -> !speaksOf(c, LOCAL_RULES) && !speaksOf(c, CONTINUOUS_WAVE))
        .forEach(all::add);
    return all;
  }

  /** What a continuous beam does to wood, the caller's words before ours; empty for pulsed. */
  static Optional<String> warning(List<Caution> given, Stratum stratum) {
    if (stratum.emission() != Emission.CONTINUOUS) {
      return Optional.empty();
    }
    return given.stream()
        .filter(c -> speaksOf(c, CONTINUOUS_WAVE))
        .map(Caution::onPaper)
        .findFirst()
        .or(() -> Optional.of(CONTINUOUS_WAVE_ON_WOOD));
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
                "Old coats and undercoats may hold lead. Have them tested before the first patch;"
                    + " if lead is there, certified people only.",
                "40 CFR 745 subpart E, 29 CFR 1926.62"),
            List.of("lead", "older coats")),
        new Standing(
            new Caution(
                "Fume",
                "Extraction at the head, HEPA and carbon. A competent person chooses the"
                    + " respirator.",
                OURS),
            List.of("fume", "extraction")));
  }

  /** Numbers of the standards and rules that cautions rest on, each once. */
  static String rulesOf(List<Caution> cautions) {
    Set<String> rules = new LinkedHashSet<>();
    cautions.forEach(c -> RULE.matcher(c.source()).results().forEach(r -> rules.add(r.group())));
    return String.join(", ", rules);
  }
}
