package charline.wording;

import charline.answer.LogPriors;
import charline.answer.PriorLine;
import charline.exposure.Emission;
import charline.model.Event;
import charline.model.borrow.Prediction.Backing;
import charline.quantity.Figures;

/**
 * What each line of the priors means, why the usual one is as it is, and where that comes from.
 *
 * @param why the reason
 * @param source where it stands
 */
record PriorReasons(String why, String source) {
  private static final String PRACTICE = "common practice, no published source";
  private static final String OWN = "own reasoning, no published source";

  /** What a parameter is. */
  static String meaning(PriorLine parameter) {
    return switch (parameter) {
      case DOSE -> "J/cm2 of one pass with an even chance, times or divided by a factor";
      case PHI ->
          "weight of ln fluence (cw: irradiance) beside ln dose; below 0 more fluence at equal dose"
              + " chars less, and -1 is the least, as more power at the same speed never chars"
              + " less";
      case PSI -> "weight of ln passes beside ln dose, not below 0";
      case SIGMA ->
          "spread from patch to patch in ln dose, times or divided by a factor; at 0.25 it takes"
              + " 4.4 times the dose to go from 5 to 95 % of patches";
      case OMEGA ->
          "spread from board to board in ln dose: 0 +/- is the upper half of a normal, a median"
              + " with x/ is times or divided by a factor, and both together are a level that"
              + " strata have in common with the factor by which each differs from it";
    };
  }

  /** Which trials of one kind of light taught priors. */
  static String ground(Emission emission, LogPriors.Ground ground) {
    String unit = emission.intensityUnit();
    return "%s: learned at %d nm; the middle of the trials lay %s%s."
        .formatted(
            emission.word(),
            ground.wavelengthNanometres(),
            between(ground.leastIntensity(), ground.mostIntensity(), unit),
            ground.otherPatches() == 0
                ? ""
                : "; %s with another wavelength left out"
                    .formatted(Figures.count(ground.otherPatches(), "patch", "patches")));
  }

  private static String between(double low, double high, String unit) {
    String first = Figures.three(low);
    String last = Figures.three(high);
    return first.equals(last)
        ? "at %s %s".formatted(first, unit)
        : "between %s and %s %s".formatted(first, last, unit);
  }

  /** Why a prior is as it is that may rest on the trials of a log. */
  static PriorReasons of(PriorLine parameter, Event event, Emission emission, Backing backing) {
    if (backing.strata() == 0) {
      PriorReasons usual = of(parameter, event, emission);
      return new PriorReasons("no stratum says more than the usual: " + usual.why, usual.source);
    }
    return new PriorReasons(
        "the usual prior, moved by %s with %s; as wide as one more stratum may differ from them"
            .formatted(
                Figures.count(backing.strata(), "stratum", "strata"),
                Figures.count(backing.patches(), "patch", "patches")),
        "one log's trials");
  }

  /** Why a usual prior is as it is. */
  static PriorReasons of(PriorLine parameter, Event event, Emission emission) {
    boolean charring = event == Event.CHAR;
    return switch (parameter) {
      case DOSE ->
          charring ? charDose(emission == Emission.PULSED) : clearDose(emission == Emission.PULSED);
      case PHI -> charring ? charIntensity() : clearIntensity();
      case PSI ->
          charring
              ? new PriorReasons(
                  "1 would mean that two passes do as much as one of twice the dose; the wood cools"
                      + " between passes, so it is less",
                  PRACTICE)
              : new PriorReasons(
                  "each pass lifts about its share of the film, a little less as fume and residue"
                      + " shade the rest",
                  PRACTICE);
      case SIGMA -> new PriorReasons("grain and hand rarely allow less", PRACTICE);
      case OMEGA ->
          new PriorReasons(
              "the start of an empty log, boards of one wood mostly within a fifth of each other;"
                  + " the other strata of a log show the level, and a file pins it",
              PRACTICE);
    };
  }

  private static PriorReasons charDose(boolean pulsed) {
    return pulsed
        ? new PriorReasons(
            "wood browns at tens of J/cm2, soot and residue bring that down several times and clean"
                + " pale wood goes higher, so one in three lies outside a factor of 4.5",
            PRACTICE + "; the doses of the study named for cw lie inside one spread of it")
        : new PriorReasons(
            "beech under a continuous 10.6 um laser ran from apparently unaffected at 7.8 J/cm2 to"
                + " totally dark at 75; the middle of that, and as much either way, as wood takes"
                + " up less of the light near 1 um and residue more",
            "Vidholdova, Reinprecht and Igaz 2017, BioResources 12(2):4177-4186");
  }

  private static PriorReasons clearDose(boolean pulsed) {
    String thickness =
        "; a coat twice as thick takes 1.8 times as much, where its thickness is known";
    return pulsed
        ? new PriorReasons(
            "published figures for paint run from 0.64 to 3.3 kJ for each cm3 lifted; their middle"
                + " makes 10 J/cm2 for 70 um"
                + thickness,
            "Brygo and others 2006, Appl. Surf. Sci. 252:2131-2138 (0.3 mm3/J); Paint removal using"
                + " lasers, 1995, Appl. Opt. 34:4409; the weight of thickness: "
                + OWN)
        : new PriorReasons(
            "twice that of pulses: the film chars before it leaves, and the fume of a longer dwell"
                + " takes up part of the beam"
                + thickness,
            "the fume: Madhukar and others 2013, Appl. Surf. Sci. 264:892-901; the factor: " + OWN);
  }

  private static PriorReasons charIntensity() {
    return new PriorReasons(
        "dose alone ordered the colour of beech in published trials, which is 0; soot and residue"
            + " that more fluence lights speak for more, the trade's rule that pulses burn less"
            + " than continuous light of the same dose for less",
        "Kudela, Kubovsky and Andrejko 2024, Forests 15:2211 (10.6 um); the rule: " + PRACTICE);
  }

  private static PriorReasons clearIntensity() {
    return new PriorReasons("lifting a film needs fluence above a threshold", PRACTICE);
  }
}
