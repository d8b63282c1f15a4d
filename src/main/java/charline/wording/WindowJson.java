package charline.wording;

import charline.answer.AllWindows;
import charline.answer.BoardPriors;
import charline.answer.WindowAnswer;
import charline.exposure.Emission;
import charline.exposure.Figure;
import charline.exposure.Pulses;
import charline.model.Estimate;
import charline.model.Evidence;
import charline.model.ModelFit;
import charline.trial.Stratum;
import charline.window.Box;
import charline.window.Forecast;
import charline.window.JobRisk;
import charline.window.Range;
import charline.window.Recommendation;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.SpeedKnob;
import charline.window.Standing;
import java.util.List;
import java.util.Optional;

/** A recommendation as JSON. */
public final class WindowJson {
  private WindowJson() {}

  /** The answer, and whether it applies to the rig as it is now. */
  public static Json of(WindowAnswer answer) {
    return PrecautionText.put(
        ApplicabilityText.of(answer.applicability()).json(found(answer)), answer.precautions());
  }

  /** A stratum that the beam stays off. */
  public static Json of(AllWindows.Barred barred, String record) {
    return NoBeamText.json(
        new Json().put("stratum", stratum(barred.stratum())), barred.known(), record);
  }

  private static Json found(WindowAnswer answer) {
    Recommendation found = answer.found();
    RigSetup bench = found.bench();
    Optional<Box> box = found.chosen();
    return new Json()
        .put("stratum", stratum(found.stratum()))
        .put("rig", bench.rig().name())
        .put("figure", answer.subject().trials().way().figure().map(Figure::word))
        .put("place", answer.subject().trials().way().placeOrFace().word())
        .put("overlap", bench.strokes().overlap())
        .put("asked", asked(found.asked()))
        .put("provisos", ProvisoText.of(found))
        .put("evidence", evidence(found.evidence()))
        .put("not_counted", PlaceText.json(answer.subject()))
        .put("pooled_woods", pooled(found.stratum()))
        .put("near_woods", NearWoodText.json(answer.nearWoods()))
        .put("verdict", found.verdict().word())
        .put("standing", found.standing().map(Standing::word))
        .put("piece", answer.piece().map(piece -> PieceText.json(piece, found)))
        .put("reason", ReasonText.of(found))
        .put("next_step", PlanText.advice(answer.next().advice()))
        .put("next_patches", NextJson.patches(answer.next(), List.of()))
        .put("tried", UntriedText.json(found.tried()))
        .put("untried", answer.applicability().untried().stream().map(UntriedText::json).toList())
        .put("chance_any_window", found.chanceAnyWindow())
        .put("start", box.map(b -> forecast(b.start(), found)))
        .put("ranges", box.map(b -> ranges(b, bench)))
        .put("hot_corner", box.map(b -> forecast(b.hotCorner(), found)))
        .put("cold_corner", box.map(b -> forecast(b.coldCorner(), found)))
        .put("coat", found.clearingFit().map(WayText::coatJson))
        .put(
            "borrowed",
            new Json()
                .put("char", found.charFit().flatMap(BorrowText::json))
                .put("clearing", found.clearingFit().flatMap(BorrowText::json)))
        .put(
            "models",
            new Json()
                .put("char", found.charFit().map(fit -> model(fit, bench, answer.boards())))
                .put(
                    "clearing", found.clearingFit().map(fit -> model(fit, bench, answer.boards()))))
        .put("job", answer.job().map(WindowJson::job));
  }

  /** The woods that were pooled; null where it is one. */
  private static Optional<List<String>> pooled(Stratum stratum) {
    return stratum.woods().size() > 1 ? Optional.of(stratum.woods()) : Optional.empty();
  }

  static Json stratum(Stratum stratum) {
    return new Json()
        .put("family", stratum.family())
        .put("wood", stratum.wood())
        .put("source", stratum.emission().word())
        .put("wavelength_nm", stratum.wavelengthNanometres());
  }

  static Json asked(Requirements asked) {
    return new Json()
        .put("char_risk", asked.charRisk())
        .put("confidence", asked.confidence())
        .put("clear_chance", asked.clearChance())
        .put("accept_tint", asked.acceptTint());
  }

  static Json evidence(Evidence evidence) {
    return new Json()
        .put("patches", evidence.patches())
        .put("boards", evidence.boards())
        .put("readings", evidence.readings())
        .put("charred_patches", evidence.charredPatches())
        .put("cleared_patches", evidence.clearedPatches());
  }

  static Json forecast(Forecast forecast, Recommendation found) {
    RigSetup bench = found.bench();
    boolean hand = bench.speed().kind() == SpeedKnob.Kind.HAND;
    boolean pulsed = bench.rig().emission() == Emission.PULSED;
    double speed = forecast.speedMillimetresPerSecond();
    double across = bench.speed().acrossMillimetres();
    Json json =
        new Json()
            .put("power_pct", forecast.powerPercent())
            .put("power_w", forecast.powerWatts())
            .put("rep_khz", bench.pulses().map(Pulses::repetitionKilohertz))
            .put("pulse_ns", bench.pulses().map(Pulses::durationNanoseconds))
            .put("spot_mm", bench.spot().diameterMillimetres())
            .put("width_mm", hand ? across : null)
            .put("hand_mm_s", hand ? speed : null)
            .put("scan_mm_s", hand ? null : speed)
            .put("spacing_mm", hand ? null : across)
            .put("passes", forecast.passes())
            .put("dose_j_cm2", forecast.doseJoulesPerCm2())
            .put("fluence_j_cm2", pulsed ? forecast.intensity() : null);
    if (!pulsed) {
      json.put("irradiance_w_cm2", forecast.intensity());
    }
    return json.put("char_risk_mean", forecast.charRiskMean())
        .atMost("char_risk_upper", forecast.charRiskUpper())
        .put("charred_spots_per_m2", SpotsText.json(found.charredSpots(forecast)))
        .put("clear_chance_mean", forecast.clearChanceMean())
        .atLeast("clear_chance_lower", forecast.clearChanceLower())
        .put("area_rate_cm2_min", forecast.netAreaRateSquareCentimetresPerMinute());
  }

  static Json ranges(Box box, RigSetup bench) {
    String speed = bench.speed().kind() == SpeedKnob.Kind.HAND ? "hand_mm_s" : "scan_mm_s";
    return new Json()
        .put("power_pct", range(box.powerPercent()))
        .put(speed, range(box.speedMillimetresPerSecond()))
        .put("passes", List.of(box.passes(), box.passes()));
  }

  private static List<Object> range(Range range) {
    return Json.inward(range.low(), range.high());
  }

  /**
   * One fitted model with its parameters.
   *
   * @param boards what was likely of omega before its trials
   */
  static Json model(ModelFit fit, RigSetup bench, BoardPriors boards) {
    Json json =
        new Json()
            .put("tau", estimate(fit.tau()))
            .put("phi", estimate(fit.phi()))
            .put("psi", estimate(fit.psi()))
            .put("sigma", estimate(fit.sigma()))
            .put("omega", estimate(fit.omega()))
            .put("omega_prior", BoardPriorText.json(boards, fit.event()))
            .put("dose_even_j_cm2", estimate(fit.evenDoseJoulesPerCm2()));
    boolean pulsed = bench.rig().emission() == Emission.PULSED;
    json.put("f0_j_cm2", pulsed ? fit.referenceIntensity() : null);
    if (!pulsed) {
      json.put("f0_w_cm2", fit.referenceIntensity());
    }
    return json.put("shifts", WayText.shiftsJson(fit))
        .put("left_out", WayText.leftOutJson(fit))
        .put("pareto_k", fit.paretoK())
        .put("draws", fit.draws());
  }

  static Json estimate(Estimate estimate) {
    return new Json()
        .put("median", estimate.median())
        .atLeast("low", estimate.low())
        .atMost("high", estimate.high());
  }

  static Json job(JobRisk job) {
    return new Json()
        .put("area_m2", job.areaSquareMetres())
        .put("any_char_asked", job.asked())
        .put("patch_cm2", job.patchSquareCentimetres())
        .put("patch_areas", job.areas())
        .put("any_char_mean", job.mean())
        .atMost("any_char_upper", job.upper())
        .put("char_areas_mean", job.marksMean())
        .atMost("char_areas_upper", job.marksUpper());
  }
}
