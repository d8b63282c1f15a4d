package charline.cli.rig;

import charline.exposure.Emission;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.VoidCheck;
import charline.log.VoidUpkeep;
import charline.quantity.Figures;
import charline.trial.Knob;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import charline.wording.CircumstancesJson;
import charline.wording.CircumstancesText;
import charline.wording.Facts;
import charline.wording.Json;
import charline.wording.UpkeepText;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/** A rig as text and as JSON. */
final class RigView {
  private RigView() {}

  /** "pulsed, 200 W, 1064 nm". */
  static String inShort(Rig rig) {
    return "%s, %s W, %s nm"
        .formatted(
            rig.emission().word(),
            Figures.plain(rig.ratedWatts()),
            Figures.plain(rig.wavelengthNanometres()));
  }

  /** The same with its usual settings. */
  static String inFull(Rig rig) {
    return inShort(rig)
        + Figures.plain(rig.spotMillimetres(), "mm").map(", spot "::concat).orElse("")
        + Figures.plain(rig.repetitionKilohertz(), "kHz").map(", "::concat).orElse("")
        + Figures.plain(rig.pulseNanoseconds(), "ns").map(", "::concat).orElse("")
        + Figures.plain(rig.scanWidthMillimetres(), "mm").map(", width "::concat).orElse("")
        + Figures.plain(rig.largestPulseMillijoules(), "mJ")
            .map(", largest pulse "::concat)
            .orElse("")
        + rig.lens().map(", lens "::concat).orElse("")
        + Optional.of(String.join(", ", CircumstancesText.facts(rig).values()))
            .filter(words -> !words.isEmpty())
            .map(", "::concat)
            .orElse("");
  }

  /** "1 patch is", "24 patches are". */
  static String patches(Logbook log, Rig rig) {
    return Figures.count(log.patches(Filter.ofRig(rig.name())).size(), "patch is", "patches are");
  }

  static String spot(Rig rig) {
    return rig.spotMillimetres().isEmpty()
        ? "-"
        : Figures.plain(rig.spotMillimetres().getAsDouble());
  }

  /** The latest power check as "187 W at 100 % on 2026-06-01". */
  static Optional<String> lastCheck(Rig rig, OffsetDateTime now) {
    return rig.checkAt(now).map(check -> check(rig, check));
  }

  static String check(Rig rig, PowerCheck check) {
    return "%s W at %s %%%s%s on %s (%s of the nominal power)"
        .formatted(
            Figures.plain(check.meteredWatts()),
            Figures.plain(check.percent()),
            Figures.plain(check.repetitionKilohertz(), "kHz").map(" and "::concat).orElse(""),
            Figures.plain(check.pulseNanoseconds(), "ns").map(", "::concat).orElse(""),
            check.at().toLocalDate(),
            Figures.ratio(check.factor(rig.ratedWatts())));
  }

  static String text(Rig rig, List<VoidCheck> voided, List<VoidUpkeep> voidUpkeep) {
    Facts facts =
        new Facts("Rig " + rig.name())
            .add("kind", rig.emission().word())
            .add("rated power", Figures.plain(rig.ratedWatts()) + " W")
            .add("wavelength", Figures.plain(rig.wavelengthNanometres()) + " nm")
            .add(
                "usual spot",
                Figures.plain(rig.spotMillimetres(), "mm")
                    .map(d -> d + " (" + rig.spotDefinition().word() + ")"));
    if (rig.emission() == Emission.PULSED) {
      facts
          .add("usual rate", Figures.plain(rig.repetitionKilohertz(), "kHz"))
          .add("usual pulse", Figures.plain(rig.pulseNanoseconds(), "ns"))
          .add("largest pulse", Figures.plain(rig.largestPulseMillijoules(), "mJ"));
    }
    facts
        .add("usual width", Figures.plain(rig.scanWidthMillimetres(), "mm"))
        .add("lens", rig.lens());
    CircumstancesText.facts(rig).forEach(facts::add);
    rig.checks().forEach(check -> facts.add("power check", check(rig, check)));
    voided.forEach(
        v -> facts.add("void check", check(rig, v.check()) + ", void because: " + v.why()));
    rig.upkeep().forEach(upkeep -> facts.add("upkeep", UpkeepText.words(upkeep)));
    voidUpkeep.forEach(
        v -> facts.add("void upkeep", UpkeepText.words(v.upkeep()) + ", void because: " + v.why()));
    return facts.text();
  }

  /** Flat, for lists. */
  static Json json(Rig rig) {
    Json json =
        new Json()
            .put("rig", rig.name())
            .put("source", rig.emission().word())
            .put("rated_w", rig.ratedWatts())
            .put("wavelength_nm", rig.wavelengthNanometres())
            .put("spot_mm", rig.spotMillimetres())
            .put("spot_definition", rig.spotDefinition().word())
            .put("rep_khz", rig.repetitionKilohertz())
            .put("pulse_ns", rig.pulseNanoseconds())
            .put("width_mm", rig.scanWidthMillimetres())
            .put("max_pulse_mj", rig.largestPulseMillijoules())
            .put("lens", rig.lens());
    return CircumstancesJson.put(json, Knob.USUAL_OF_RIG, rig.usual())
        .put("focus_spot_mm", rig.optics().focusSpotMillimetres())
        .put("beam_quality", rig.optics().beamQuality());
  }

  /** With power checks and upkeep, oldest first. */
  static Json jsonWithChecks(Rig rig, List<VoidCheck> voided, List<VoidUpkeep> voidUpkeep) {
    return json(rig)
        .put("power_checks", rig.checks().stream().map(c -> json(rig, c)).toList())
        .put(
            "void_checks",
            voided.stream().map(v -> json(rig, v.check()).put("void", v.why())).toList())
        .put("upkeep", rig.upkeep().stream().map(UpkeepText::json).toList())
        .put(
            "void_upkeep",
            voidUpkeep.stream()
                .map(v -> UpkeepText.json(v.upkeep()).put("void", v.why()))
                .toList());
  }

  /** A power check by itself, under the name of its rig. */
  static Json jsonOfCheck(Rig rig, PowerCheck check) {
    return new Json().put("rig", rig.name()).putAll(json(rig, check).parts());
  }

  /** Upkeep by itself, likewise. */
  static Json jsonOfUpkeep(Rig rig, Upkeep upkeep) {
    return new Json().put("rig", rig.name()).putAll(UpkeepText.json(upkeep).parts());
  }

  private static Json json(Rig rig, PowerCheck check) {
    return new Json()
        .put("at", check.at().toString())
        .put("power_pct", check.percent())
        .put("metered_w", check.meteredWatts())
        .put("rep_khz", check.repetitionKilohertz())
        .put("pulse_ns", check.pulseNanoseconds())
        .put("factor", check.factor(rig.ratedWatts()));
  }
}
