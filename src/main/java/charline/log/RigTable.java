package charline.log;

import charline.exposure.Emission;
import charline.exposure.Optics;
import charline.exposure.SpotDefinition;
import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.RowValues;
import charline.trial.Knob;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Rigs with their power checks and their upkeep. */
public final class RigTable {
  private final Database database;

  RigTable(Database database) {
    this.database = database;
  }

  /** All rigs with their checks, void ones left out, by name. */
  List<Rig> all() {
    return read("joined_into IS NULL");
  }

  /** The same with those that were joined into others. */
  List<Rig> alsoJoined() {
    return read("1 = 1");
  }

  private List<Rig> read(String condition) {
    Map<UUID, List<PowerCheck>> checks = new HashMap<>();
    database.query(
        "SELECT * FROM power_check WHERE voided_why IS NULL",
        row -> checks.computeIfAbsent(row.id("rig_id"), id -> new ArrayList<>()).add(check(row)));
    Map<UUID, List<Upkeep>> upkeep = new HashMap<>();
    database.query(
        "SELECT * FROM upkeep WHERE voided_why IS NULL",
        row -> upkeep.computeIfAbsent(row.id("rig_id"), id -> new ArrayList<>()).add(upkeep(row)));
    return database.query(
        "SELECT * FROM rig WHERE %s ORDER BY name".formatted(condition),
        row ->
            rig(
                row,
                checks.getOrDefault(row.id("id"), List.of()),
                upkeep.getOrDefault(row.id("id"), List.of())));
  }

  /** Upkeep of a rig that is void, in the order of doing. */
  List<VoidUpkeep> voidUpkeep(UUID rig) {
    return database.query(
        """
        SELECT * FROM upkeep WHERE rig_id = ? AND voided_why IS NOT NULL ORDER BY done_at_utc, id
        """,
        row -> new VoidUpkeep(upkeep(row), row.text("voided_why")),
        rig);
  }

  void addUpkeep(UUID rig, Upkeep upkeep, String by) {
    database.insert(
        "upkeep", values(upkeep).put("id", upkeep.id()).put("rig_id", rig).put("recorded_by", by));
  }

  void amend(Upkeep upkeep) {
    database.amend("upkeep", upkeep.id(), values(upkeep));
  }

  /** Takes upkeep out for a reason, or lets it count again where there is none. */
  void setVoid(Upkeep upkeep, String why) {
    database.update("UPDATE upkeep SET voided_why = ? WHERE id = ?", why, upkeep.id());
  }

  private static RowValues values(Upkeep upkeep) {
    return new RowValues()
        .moment("done_at", upkeep.at())
        .put("work", upkeep.work())
        .put("hours", upkeep.hours())
        .put("note", upkeep.note());
  }

  private static Upkeep upkeep(ResultRow row) throws SQLException {
    return new Upkeep(
        row.id("id"),
        row.moment("done_at"),
        row.text("work"),
        row.optionalNumber("hours"),
        row.optionalText("note"));
  }

  List<VoidCheck> voidChecks(UUID rig) {
    return database.query(
        """
        SELECT * FROM power_check WHERE rig_id = ? AND voided_why IS NOT NULL
        ORDER BY metered_at_utc, id
        """,
        row -> new VoidCheck(check(row), row.text("voided_why")),
        rig);
  }

  /** Takes a check out for a reason, or lets it count again where there is none. */
  void setVoid(PowerCheck check, String why) {
    database.update("UPDATE power_check SET voided_why = ? WHERE id = ?", why, check.id());
  }

  private static PowerCheck check(ResultRow row) throws SQLException {
    return new PowerCheck(
        row.id("id"),
        row.moment("metered_at"),
        row.number("setting_pct"),
        row.number("metered_w"),
        row.optionalNumber("repetition_khz"),
        row.optionalNumber("pulse_ns"));
  }

  private static Rig rig(ResultRow row, List<PowerCheck> checks, List<Upkeep> upkeep)
      throws SQLException {
    return new Rig(
        row.id("id"),
        row.text("name"),
        Emission.ofWord(row.text("emission")),
        row.number("rated_w"),
        row.number("wavelength_nm"),
        SpotDefinition.ofWord(row.text("spot_definition")),
        row.optionalNumber("spot_mm"),
        row.optionalNumber("repetition_khz"),
        row.optionalNumber("pulse_ns"),
        row.optionalNumber("scan_width_mm"),
        row.optionalNumber("max_pulse_mj"),
        row.optionalText("lens"),
        CircumstanceColumns.read(row, Knob.USUAL_OF_RIG),
        new Optics(row.optionalNumber("focus_spot_mm"), row.optionalNumber("beam_quality")),
        checks,
        upkeep);
  }

  void add(Rig rig, OffsetDateTime now, String by) {
    database.insert(
        "rig", values(rig).put("id", rig.id()).moment("recorded_at", now).put("recorded_by", by));
    rig.checks().forEach(check -> addCheck(rig.id(), check, by));
    rig.upkeep().forEach(upkeep -> addUpkeep(rig.id(), upkeep, by));
  }

  void addCheck(UUID rig, PowerCheck check, String by) {
    database.insert(
        "power_check",
        values(check).put("id", check.id()).put("rig_id", rig).put("recorded_by", by));
  }

  /** Writes what a check says; gives how many checks that were. */
  int amend(PowerCheck check) {
    return database.amend("power_check", check.id(), values(check));
  }

  private static RowValues values(PowerCheck check) {
    return new RowValues()
        .moment("metered_at", check.at())
        .put("setting_pct", check.percent())
        .put("metered_w", check.meteredWatts())
        .put("repetition_khz", check.repetitionKilohertz())
        .put("pulse_ns", check.pulseNanoseconds());
  }

  /** Writes all but the checks; gives how many rigs that were. */
  int amend(Rig rig) {
    return database.amend("rig", rig.id(), values(rig));
  }

  private static RowValues values(Rig rig) {
    return CircumstanceColumns.put(new RowValues(), Knob.USUAL_OF_RIG, rig.usual())
        .put("focus_spot_mm", rig.optics().focusSpotMillimetres())
        .put("beam_quality", rig.optics().beamQuality())
        .put("name", rig.name())
        .put("emission", rig.emission().word())
        .put("rated_w", rig.ratedWatts())
        .put("wavelength_nm", rig.wavelengthNanometres())
        .put("spot_definition", rig.spotDefinition().word())
        .put("spot_mm", rig.spotMillimetres())
        .put("repetition_khz", rig.repetitionKilohertz())
        .put("pulse_ns", rig.pulseNanoseconds())
        .put("scan_width_mm", rig.scanWidthMillimetres())
        .put("max_pulse_mj", rig.largestPulseMillijoules())
        .put("lens", rig.lens());
  }
}
