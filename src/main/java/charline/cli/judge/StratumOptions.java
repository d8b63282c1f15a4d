package charline.cli.judge;

import charline.cli.desk.Desk;
import charline.cli.desk.Typed;
import charline.exposure.Emission;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.model.Coating;
import charline.model.Trials;
import charline.quantity.Figures;
import charline.quantity.Measure.Quantity;
import charline.refusal.Refusal;
import charline.trial.Patch;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.trial.Tone;
import charline.window.Bench;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which trials are judged, and on which rig the answer is to stand. */
final class StratumOptions {
  @Parameters(
      arity = "0..*",
      paramLabel = "FAMILY WOOD",
      description = "Coating family and wood, such as latex pine; any pools the woods.")
  private List<String> words = List.of();

  @Option(
      names = "--rig",
      paramLabel = "NAME",
      description = "Rig that the answer is for. Default: the one most patches were burned on.")
  private String rigName;

  @Option(
      names = "--at",
      paramLabel = "KNOBS",
      description =
          "Knobs that stay fixed, such as spot=0.6mm,rep=40kHz,width=60mm; also pulse (ns) and"
              + " spacing (mm). Default: as most of the patches had them.")
  private String at;

  @Option(
      names = "--tone",
      paramLabel = "TONE",
      description =
          "Tone of the outermost coat that the answer is for: pale, mid or dark. Matters where"
              + " trials mix tones. Default: that of most patches.")
  private String tone;

  @Option(
      names = "--thickness",
      paramLabel = "UM",
      description =
          "Thickness of all coats that the answer is for, in um. Matters where it was recorded"
              + " and differs. Default: the middle of what was tried.")
  private String thickness;

  @Option(names = "--accept-tint", description = "Count a tint that stays in the grain as cleared.")
  private boolean acceptTint;

  /** Whether a family and a wood were named. */
  boolean named() {
    return words.size() >= 2;
  }

  boolean nothingNamed() {
    return words.isEmpty();
  }

  boolean acceptTint() {
    return acceptTint;
  }

  /** The tone that was asked for. */
  Optional<Tone> tone() {
    return Optional.ofNullable(tone).map(Tone::ofWord);
  }

  /** The trials of one coating family on one wood, or on {@code any}, and the bench. */
  Case choose(Logbook log, Desk desk) {
    FamilyAndWood asked = FamilyAndWood.read(words, log);
    String family = asked.family();
    String wood = asked.wood();
    boolean anyWood = wood.equals(Stratum.ANY_WOOD);
    Optional<Rig> rig = Optional.ofNullable(rigName).map(log::rig);
    Predicate<Stratum> wanted =
        s -> s.family().equals(family) && (anyWood || s.wood().equals(wood));
    Map<Stratum, List<Patch>> strata = strata(log, wanted, anyWood);
    if (strata.isEmpty()) {
      throw Refusal.nothingFound(
          "No patch of %s over %s is in the log; it has %s."
              .formatted(family, anyWood ? "any wood" : wood, inventory(strata(log))));
    }
    List<Stratum> fitting =
        strata.keySet().stream().filter(s -> rig.isEmpty() || isLightOf(rig.get(), s)).toList();
    if (fitting.isEmpty()) {
      throw Refusal.nothingFound(
          "%s over %s was not tried with light like that of rig %s (%s, %d nm), and other light says nothing of it; the log has %s."
              .formatted(
                  family,
                  anyWood ? "any wood" : wood,
                  rig.get().name(),
                  rig.get().emission().word(),
                  Math.round(rig.get().wavelengthNanometres()),
                  inventory(strata)));
    }
    if (fitting.size() > 1) {
      throw Refusal.usage(
          "Trials with different light are never judged together, and the log has %s; say with --rig which it is."
              .formatted(inventory(strata)));
    }
    return of(log, desk, fitting.get(0), strata.get(fitting.get(0)), rig);
  }

  /** The same trials, or where there are none with this light, the bench to begin them on. */
  Beginning chooseOrBegin(Logbook log, Desk desk) {
    FamilyAndWood asked = FamilyAndWood.read(words, log);
    try {
      Case chosen = choose(log, desk);
      return new Beginning(chosen.trials().stratum(), Optional.of(chosen), chosen.bench());
    } catch (Refusal nothing) {
      if (nothing.kind() != Refusal.Kind.NOTHING_FOUND) {
        throw nothing;
      }
      Rig rig = rigToBeginWith(log);
      FixedKnobs fixed = FixedKnobs.parse(at);
      Stratum stratum =
          new Stratum(
              asked.family(),
              asked.wood(),
              rig.emission(),
              (int) Math.round(rig.wavelengthNanometres()));
      Bench bench = fixed.on(Bench.usual(fixed.asUsualOf(rig), desk.now()));
      return new Beginning(stratum, Optional.empty(), bench);
    }
  }

  private Rig rigToBeginWith(Logbook log) {
    List<Rig> rigs = log.rigs();
    if (rigName == null && rigs.size() != 1) {
      throw Refusal.usage(
          rigs.isEmpty()
              ? "A patch needs a rig, and the log has none; set one up with `charline rig add`."
              : "The rig is missing: give --rig, as the log has %d of them."
                  .formatted(rigs.size()));
    }
    return rigName == null ? rigs.get(0) : log.rig(rigName);
  }

  /** The trials of every stratum of the log, for the coat that most of each had. */
  List<Trials> everyStratum(Logbook log) {
    return strata(log).entrySet().stream()
        .map(e -> new Trials(e.getKey(), e.getValue(), acceptTint))
        .toList();
  }

  /** Every stratum of the log with its bench, the one with most patches first. */
  List<Case> all(Logbook log, Desk desk) {
    Map<Stratum, List<Patch>> strata = strata(log);
    if (strata.isEmpty()) {
      throw Refusal.nothingFound("The log holds no patch yet, so there is nothing to judge.");
    }
    Optional<Rig> rig = Optional.ofNullable(rigName).map(log::rig);
    return strata.entrySet().stream()
        .filter(e -> rig.isEmpty() || isLightOf(rig.get(), e.getKey()))
        .sorted((a, b) -> Integer.compare(b.getValue().size(), a.getValue().size()))
        .flatMap(e -> ifPossible(log, desk, e.getKey(), e.getValue(), rig).stream())
        .toList();
  }

  /** One stratum that cannot be judged is named and does not keep the others back. */
  private Optional<Case> ifPossible(
      Logbook log, Desk desk, Stratum stratum, List<Patch> patches, Optional<Rig> rig) {
    try {
      return Optional.of(of(log, desk, stratum, patches, rig));
    } catch (Refusal e) {
      desk.err().println(stratum.words() + " is left out: " + e.getMessage());
      return Optional.empty();
    }
  }

  private Case of(
      Logbook log, Desk desk, Stratum stratum, List<Patch> patches, Optional<Rig> wanted) {
    FixedKnobs fixed = FixedKnobs.parse(at);
    Rig rig = fixed.on(wanted.orElseGet(() -> log.rig(Bench.mostUsedRig(patches).name())));
    Bench bench = fixed.on(Bench.of(rig, patches, desk.now()));
    return new Case(
        new Trials(stratum, patches, acceptTint, coat()),
        bench,
        fixed.values().containsKey("spot"));
  }

  private Coating coat() {
    return new Coating(tone(), Typed.ifGiven("--thickness", thickness, Quantity.THICKNESS));
  }

  private static boolean isLightOf(Rig rig, Stratum stratum) {
    return rig.emission() == stratum.emission()
        && Math.round(rig.wavelengthNanometres()) == stratum.wavelengthNanometres();
  }

  private static Map<Stratum, List<Patch>> strata(Logbook log) {
    return strata(log, s -> true, false);
  }

  private static Map<Stratum, List<Patch>> strata(
      Logbook log, Predicate<Stratum> wanted, boolean pooled) {
    return log.patches(Filter.ALL).stream()
        .map(PatchEntry::patch)
        .filter(p -> wanted.test(Stratum.of(p)))
        .collect(
            Collectors.groupingBy(
                p -> pooled ? Stratum.of(p).overAllWoods() : Stratum.of(p),
                LinkedHashMap::new,
                Collectors.toList()));
  }

  private static String inventory(Map<Stratum, List<Patch>> strata) {
    if (strata.isEmpty()) {
      return "no patch at all yet";
    }
    return strata.entrySet().stream()
        .map(e -> e.getKey().words() + " (" + count(e.getValue()) + ")")
        .collect(Collectors.joining("; "));
  }

  private static String count(List<Patch> patches) {
    return Figures.count(patches.size(), "patch", "patches");
  }

  /**
   * What is judged.
   *
   * @param trials patches of one stratum
   * @param bench rig and fixed knobs of the answer
   * @param spotAsked whether the person said for which spot
   */
  record Case(Trials trials, Bench bench, boolean spotAsked) {
    boolean pulsed() {
      return bench.rig().emission() == Emission.PULSED;
    }
  }

  /**
   * Trials to go on with, or none yet.
   *
   * @param stratum what they are about
   * @param tried what was burned so far
   * @param bench rig and fixed knobs
   */
  record Beginning(Stratum stratum, Optional<Case> tried, Bench bench) {}
}
