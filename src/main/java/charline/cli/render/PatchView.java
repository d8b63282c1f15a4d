package charline.cli.render;

import static charline.quantity.Figures.plain;

import charline.exposure.DoseForm;
import charline.exposure.Emission;
import charline.exposure.Exposure;
import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.log.KeptPhoto;
import charline.log.PatchEntry;
import charline.quantity.Figures;
import charline.trial.Knob;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Tone;
import charline.wording.BeamText;
import charline.wording.CircumstancesJson;
import charline.wording.CircumstancesText;
import charline.wording.Facts;
import charline.wording.Json;
import charline.wording.MeteredText;
import charline.wording.SettingsJson;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** A patch as JSON, with the keys of a trial sheet and the doses that follow. */
public final class PatchView {
  private PatchView() {}

  /** With a list of readings, passes rising. */
  public static Json json(PatchEntry entry) {
    Json json = head(entry);
    new BeamText(entry.patch()).putInto(json);
    CircumstancesJson.putSpread(json, entry.patch().circumstances());
    json.put("by", entry.by())
        .put("note", entry.note())
        .put("job", entry.patch().board().job())
        .put("void", entry.voided());
    json.put("typed", new Json().putAll(new TreeMap<>(entry.typed())));
    List<Json> readings = entry.patch().readings().stream().map(PatchView::reading).toList();
    return json.put("readings", readings);
  }

  /** Flat, one for each reading. Of how the passes were made, only what is known of some patch. */
  public static List<Json> lines(List<PatchEntry> entries) {
    Set<String> unknown =
        Knob.CIRCUMSTANCES.stream()
            .filter(
                knob ->
                    entries.stream()
                        .noneMatch(e -> e.patch().circumstances().values().containsKey(knob)))
            .map(Knob::column)
            .collect(Collectors.toSet());
    List<Json> lines = entries.stream().flatMap(entry -> lines(entry).stream()).toList();
    lines.forEach(line -> line.parts().keySet().removeAll(unknown));
    return lines;
  }

  private static List<Json> lines(PatchEntry entry) {
    return entry.patch().readings().stream()
        .map(
            reading ->
                head(entry)
                    .putAll(reading(reading).parts())
                    .put("by", entry.by())
                    .put("note", entry.note())
                    .put("job", entry.patch().board().job()))
        .toList();
  }

  private static Json head(PatchEntry entry) {
    Patch patch = entry.patch();
    Json json =
        new Json()
            .put("patch", patch.code())
            .put("burned_at", patch.burnedAt().toString())
            .put("rig", patch.rig().name())
            .put("board", patch.board().name())
            .put("wood", patch.board().wood())
            .put("finish", patch.finish().name())
            .put("family", patch.finish().family())
            .put("tone", patch.finish().tone().map(Tone::word));
    SettingsJson.put(json, patch.settings());
    CircumstancesJson.put(json, Knob.CIRCUMSTANCES, patch.circumstances());
    Exposure exposure = patch.exposure();
    boolean pulsed = patch.rig().emission() == Emission.PULSED;
    return json.put("patch_cm2", patch.areaSquareCentimetres())
        .put("delivered_w", exposure.deliveredWatts())
        .put("dose_j_cm2", exposure.doseJoulesPerCm2())
        .put("fluence_j_cm2", pulsed ? exposure.intensity() : null)
        .put("irradiance_w_cm2", pulsed ? null : exposure.intensity());
  }

  public static Json photo(KeptPhoto photo) {
    return new Json()
        .put("file_name", photo.fileName())
        .put("media_type", photo.mediaType())
        .put("taken_at", photo.takenAt().toString())
        .put("caption", photo.caption())
        .put("sha256", photo.sha256());
  }

  private static Json reading(Reading reading) {
    return new Json()
        .put("passes", reading.passes())
        .put("outcome", reading.outcome().text())
        .put("soot", reading.soot())
        .put("depth_um", reading.depthMicrometres())
        .put("read_at", reading.at().toString())
        .put("read_by", reading.by())
        .put("reading_note", reading.note());
  }

  /** Everything that is known of a patch, for a person. */
  public static String text(PatchEntry entry, List<KeptPhoto> photos) {
    Patch patch = entry.patch();
    Settings settings = patch.settings();
    Facts facts =
        new Facts("Patch " + patch.code() + entry.voided().map(why -> " (void)").orElse(""))
            .add("void because", entry.voided())
            .add("burned", SettingsText.minute(patch.burnedAt()) + by(entry.by()))
            .add("board", patch.board().name() + ", " + patch.board().wood())
            .add("finish", patch.finish().name() + ", " + patch.finish().family())
            .add("rig", patch.rig().name() + ", " + patch.rig().emission().word())
            .add("power", power(patch))
            .add("speed", form(settings.form()))
            .add("spot", spot(settings))
            .add("pulses", settings.pulses().map(PatchView::pulses));
    CircumstancesText.facts(patch).forEach(facts::add);
    facts.add("typed as", typed(entry)).add("dose", SettingsText.dose(patch));
    new BeamText(patch)
        .addTo(facts)
        .add("patch size", plain(patch.areaSquareCentimetres(), "cm2"))
        .add("judged", judged(entry))
        .add("note", entry.note());
    photos.forEach(
        photo ->
            facts.add(
                "photo",
                SettingsText.minute(photo.takenAt())
                    + ", "
                    + photo.fileName()
                    + photo.caption().map(caption -> ", " + caption).orElse("")));
    return facts.text() + readings(patch);
  }

  private static String power(Patch patch) {
    String dialled = SettingsText.power(patch.settings().power());
    String delivered = Figures.three(patch.exposure().deliveredWatts()) + " W on the work";
    Optional<String> metered =
        MeteredText.on(patch.rig(), patch.settings().pulses(), patch.burnedAt());
    return dialled
        + ", "
        + delivered
        + metered
            .filter(m -> patch.settings().power().unit() == PowerSetting.Unit.PERCENT)
            .map(", "::concat)
            .orElse("");
  }

  private static String form(DoseForm form) {
    return form instanceof HandPass hand
        ? SettingsText.form(form) + ", width " + plain(hand.scanWidthMillimetres()) + " mm"
        : SettingsText.form(form);
  }

  private static String spot(Settings settings) {
    return "%s mm (%s)"
        .formatted(
            plain(settings.spot().diameterMillimetres()), settings.spot().definition().word());
  }

  private static String pulses(Pulses pulses) {
    return plain(pulses.repetitionKilohertz())
        + " kHz"
        + plain(pulses.durationNanoseconds(), "ns").map(ns -> ", " + ns).orElse("");
  }

  private static Optional<String> typed(PatchEntry entry) {
    return entry.typed().isEmpty()
        ? Optional.empty()
        : Optional.of(
            String.join(
                ", ",
                new TreeMap<>(entry.typed())
                    .entrySet().stream().map(e -> e.getKey() + " " + e.getValue()).toList()));
  }

  private static String by(Optional<String> who) {
    return who.map(name -> " by " + name).orElse("");
  }

  /** Who judged and when, where that was not all whoever burned it, on the same day. */
  private static Optional<String> judged(PatchEntry entry) {
    record Sitting(LocalDate day, Optional<String> by) {}
    Map<Sitting, List<Integer>> sittings = new LinkedHashMap<>();
    for (Reading reading : entry.patch().readings()) {
      sittings
          .computeIfAbsent(
              new Sitting(reading.at().toLocalDate(), reading.by()), s -> new ArrayList<>())
          .add(reading.passes());
    }
    Sitting burning = new Sitting(entry.patch().burnedAt().toLocalDate(), entry.by());
    return sittings.keySet().equals(Set.of(burning))
        ? Optional.empty()
        : Optional.of(
            sittings.entrySet().stream()
                .map(
                    e ->
                        "%s%s after %s"
                            .formatted(e.getKey().day(), by(e.getKey().by()), passes(e.getValue())))
                .collect(Collectors.joining("; ")));
  }

  /** "1 pass", "2, 3 passes". */
  private static String passes(List<Integer> counts) {
    return counts.size() == 1
        ? SettingsText.passes(counts.get(0))
        : counts.stream().map(String::valueOf).collect(Collectors.joining(", ")) + " passes";
  }

  private static String readings(Patch patch) {
    Table table = new Table(">passes", "outcome", ">J/cm2 so far", "soot", ">depth um", "note");
    for (Reading reading : patch.readings()) {
      table.row(
          String.valueOf(reading.passes()),
          reading.outcome().text(),
          Figures.three(reading.passes() * patch.exposure().doseJoulesPerCm2()),
          reading.soot().map(soot -> soot ? "yes" : "no").orElse("-"),
          reading.depthMicrometres().isEmpty()
              ? "-"
              : plain(reading.depthMicrometres().getAsDouble()),
          reading.note().orElse(""));
    }
    return table.text();
  }
}
