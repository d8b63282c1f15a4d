package charline.log;

import charline.exposure.Emission;
import charline.exposure.SpotDefinition;
import charline.log.database.Database;
import charline.log.database.ResultRow;
import charline.log.database.Timestamps;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Rigs and their power checks. */
public final class RigTable {
  private final Database database;

  RigTable(Database database) {
    this.database = database;
  }

  /** All rigs with all their checks, by name. */
  List<Rig> all() {
    Map<UUID, List<PowerCheck>> checks = new HashMap<>();
    database.query(
        "SELECT * FROM power_check",
        row -> checks.computeIfAbsent(row.id("rig_id"), id -> new ArrayList<>()).add(check(row)));
    return database.query(
        "SELECT * FROM rig ORDER BY name",
        row -> rig(row, checks.getOrDefault(row.id("id"), List.of())));
  }

  private static PowerCheck check(ResultRow row) throws SQLException {
    return new PowerCheck(
        row.id("id"), row.moment("metered_at"), row.number("setting_pct"), row.number("metered_w"));
  }

  private static Rig rig(ResultRow row, List<PowerCheck> checks) throws SQLException {
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
        row.optionalText("lens"),
        checks);
  }

  void add(Rig rig, OffsetDateTime now, String by) {
    database.update(
        """
        INSERT INTO rig (id, name, emission, rated_w, wavelength_nm, spot_definition, spot_mm,
          repetition_khz, pulse_ns, scan_width_mm, lens, recorded_at_utc, recorded_at_offset,
          recorded_by)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """,
        rig.id(),
        rig.name(),
        rig.emission().word(),
        rig.ratedWatts(),
        rig.wavelengthNanometres(),
        rig.spotDefinition().word(),
        rig.spotMillimetres(),
        rig.repetitionKilohertz(),
        rig.pulseNanoseconds(),
        rig.scanWidthMillimetres(),
        rig.lens(),
        Timestamps.utc(now),
        Timestamps.offset(now),
        by);
    rig.checks().forEach(check -> addCheck(rig.id(), check, by));
  }

  void addCheck(UUID rig, PowerCheck check, String by) {
    database.update(
        """
        INSERT INTO power_check (id, rig_id, metered_at_utc, metered_at_offset, setting_pct,
          metered_w, recorded_by)
        VALUES (?, ?, ?, ?, ?, ?, ?)
        """,
        check.id(),
        rig,
        Timestamps.utc(check.at()),
        Timestamps.offset(check.at()),
        check.percent(),
        check.meteredWatts(),
        by);
  }

  /** Writes all but the checks; gives how many rigs that were. */
  int amend(Rig rig) {
    return database.update(
        """
        UPDATE rig SET name = ?, emission = ?, rated_w = ?, wavelength_nm = ?, spot_definition = ?,
          spot_mm = ?, repetition_khz = ?, pulse_ns = ?, scan_width_mm = ?, lens = ?
        WHERE id = ?
        """,
        rig.name(),
        rig.emission().word(),
        rig.ratedWatts(),
        rig.wavelengthNanometres(),
        rig.spotDefinition().word(),
        rig.spotMillimetres(),
        rig.repetitionKilohertz(),
        rig.pulseNanoseconds(),
        rig.scanWidthMillimetres(),
        rig.lens(),
        rig.id());
  }
}
