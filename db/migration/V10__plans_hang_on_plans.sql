-- A plan may hang on another one: the next rung is burned only if the one below did not char. Which
-- one that is was written into the reason, by its code, and codes change when two logs are joined.

ALTER TABLE planned_patch ADD COLUMN depends_on TEXT
  REFERENCES planned_patch (id) DEFERRABLE INITIALLY DEFERRED; -- brought in before or after it
ALTER TABLE planned_patch ADD COLUMN condition TEXT
  CONSTRAINT planned_condition_is_known CHECK (condition IN ('no char'))
  CONSTRAINT planned_condition_is_about_another_plan CHECK (
    (condition IS NULL) = (depends_on IS NULL) AND depends_on IS NOT id);

DROP TRIGGER planned_patch_stays_as_it_was_planned;
DROP TRIGGER planned_patch_is_fulfilled_once;

UPDATE planned_patch SET
  depends_on = p.id,
  condition = 'no char',
  reason = substr(planned_patch.reason, 1,
    length(planned_patch.reason) - length('; only if ' || p.code || ' did not char'))
FROM planned_patch p
WHERE p.id <> planned_patch.id AND length(planned_patch.reason) > length('; only if ' || p.code || ' did not char')
  AND substr(planned_patch.reason, -length('; only if ' || p.code || ' did not char'))
    = '; only if ' || p.code || ' did not char';

CREATE TRIGGER planned_patch_stays_as_it_was_planned BEFORE UPDATE ON planned_patch
WHEN NEW.id IS NOT OLD.id OR NEW.code IS NOT OLD.code OR NEW.family IS NOT OLD.family
  OR NEW.wood IS NOT OLD.wood OR NEW.rig_id IS NOT OLD.rig_id OR NEW.board_id IS NOT OLD.board_id
  OR NEW.place IS NOT OLD.place OR NEW.power_pct IS NOT OLD.power_pct OR NEW.power_w IS NOT OLD.power_w
  OR NEW.spot_speed_mm_s IS NOT OLD.spot_speed_mm_s OR NEW.line_spacing_mm IS NOT OLD.line_spacing_mm
  OR NEW.scan_width_mm IS NOT OLD.scan_width_mm OR NEW.hand_speed_mm_s IS NOT OLD.hand_speed_mm_s
  OR NEW.timed_area_cm2 IS NOT OLD.timed_area_cm2 OR NEW.seconds_per_pass IS NOT OLD.seconds_per_pass
  OR NEW.spot_mm IS NOT OLD.spot_mm OR NEW.spot_definition IS NOT OLD.spot_definition
  OR NEW.repetition_khz IS NOT OLD.repetition_khz OR NEW.pulse_ns IS NOT OLD.pulse_ns
  OR NEW.passes IS NOT OLD.passes OR NEW.purpose IS NOT OLD.purpose OR NEW.reason IS NOT OLD.reason
  OR NEW.planned_at_utc IS NOT OLD.planned_at_utc OR NEW.planned_at_offset IS NOT OLD.planned_at_offset
  OR NEW.planned_by IS NOT OLD.planned_by
  OR NEW.depends_on IS NOT OLD.depends_on OR NEW.condition IS NOT OLD.condition
BEGIN
  SELECT RAISE(ABORT, 'A planned patch stays as it was planned; it is fulfilled by the patch recorded under its code, or void.');
END;

CREATE TRIGGER planned_patch_is_fulfilled_once BEFORE UPDATE ON planned_patch
WHEN OLD.patch_id IS NOT NULL
BEGIN
  SELECT RAISE(ABORT, 'A planned patch is fulfilled once, and then stays so.');
END;
