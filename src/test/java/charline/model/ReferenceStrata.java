package charline.model;

import charline.answer.PriorFile;
import charline.exposure.HandPass;
import charline.exposure.PowerSetting;
import charline.exposure.Pulses;
import charline.exposure.Settings;
import charline.exposure.Spot;
import charline.exposure.SpotDefinition;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Outcome;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.RigBuilder;
import charline.trial.WoodForm;
import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/** The six strata of reference/posterior-passes-to-event as patches, and their expected results. */
public final class ReferenceStrata {
  private static final String FOLDER = "/reference/posterior-passes-to-event/";
  private static final Rig RIG = RigBuilder.heron(id("rig-200")).named("rig-200").build();

  private ReferenceStrata() {}

  /** Expected results by stratum ("latex|pine"), then event, as in expected.json. */
  @SuppressWarnings("unchecked")
  public static Map<String, Map<String, Map<String, Object>>> expected() {
    try (InputStream in = ReferenceStrata.class.getResourceAsStream(FOLDER + "expected.json")) {
      return (Map<String, Map<String, Map<String, Object>>>) JSON.std.mapFrom(in).get("strata");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** With the priors that the other software drew from, whatever those of a later release are. */
  public static Fitter fitter() {
    try (InputStream in = ReferenceStrata.class.getResourceAsStream(FOLDER + "make.prior")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Fitter.withDefaults()
          .with(PriorFile.read(text.lines().toList(), Path.of("make.prior")).set());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The trials of one stratum. */
  public static Trials trials(String family, String wood) {
    List<Patch> patches = new ArrayList<>();
    for (List<Map<String, String>> lines : patchLines().values()) {
      Map<String, String> first = lines.get(0);
      if (first.get("family").equals(family) && first.get("wood").equals(wood)) {
        patches.add(patch(lines));
      }
    }
    return new Trials(charline.trial.Stratum.of(patches.get(0)), patches, false);
  }

  private static Map<String, List<Map<String, String>>> patchLines() {
    try (InputStream in = ReferenceStrata.class.getResourceAsStream(FOLDER + "trials.csv")) {
      List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      String[] columns = lines.get(0).split(",");
      Map<String, List<Map<String, String>>> byPatch = new LinkedHashMap<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",", -1);
        Map<String, String> row = new LinkedHashMap<>();
        for (int c = 0; c < columns.length; c++) {
          row.put(columns[c], cells[c]);
        }
        byPatch.computeIfAbsent(row.get("patch"), p -> new ArrayList<>()).add(row);
      }
      return byPatch;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Patch patch(List<Map<String, String>> lines) {
    Map<String, String> row = lines.get(0);
    return new Patch(
        id(row.get("patch")),
        row.get("patch"),
        OffsetDateTime.parse(row.get("burned_at")),
        RIG,
        new Board(
            id(row.get("board")),
            row.get("board"),
            row.get("wood"),
            WoodForm.SOLID,
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty()),
        new Finish(id(row.get("finish")), row.get("finish"), row.get("family"), List.of()),
        new Settings(
            PowerSetting.percent(number(row, "power_pct")),
            new HandPass(number(row, "width_mm"), number(row, "hand_mm_s")),
            new Spot(number(row, "spot_mm"), SpotDefinition.ONE_OVER_E_SQUARED),
            Optional.of(
                new Pulses(number(row, "rep_khz"), OptionalDouble.of(number(row, "pulse_ns"))))),
        OptionalDouble.empty(),
        lines.stream().map(ReferenceStrata::reading).toList());
  }

  private static Reading reading(Map<String, String> row) {
    return new Reading(
        id(row.get("patch") + row.get("passes")),
        Integer.parseInt(row.get("passes")),
        Outcome.parse(row.get("outcome")),
        Optional.empty(),
        OptionalDouble.empty(),
        OffsetDateTime.parse(row.get("burned_at")),
        Optional.of(row.get("by")),
        Optional.empty());
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static UUID id(String name) {
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }
}
