-- A planned patch that is not to be burned after all is void, with the reason. Its code stays taken:
-- it may stand on a printed list or on tape already.

ALTER TABLE planned_patch ADD COLUMN voided_why TEXT
  CONSTRAINT planned_patch_is_void_for_a_reason CHECK (trim(voided_why) <> '');

DROP TRIGGER planned_patch_is_fulfilled_once_and_else_stays;

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
BEGIN
  SELECT RAISE(ABORT, 'A planned patch stays as it was planned; it is fulfilled by the patch recorded under its code, or void.');
END;

CREATE TRIGGER planned_patch_is_fulfilled_once BEFORE UPDATE ON planned_patch
WHEN OLD.patch_id IS NOT NULL
BEGIN
  SELECT RAISE(ABORT, 'A planned patch is fulfilled once, and then stays so.');
END;

CREATE TRIGGER planned_patch_changes_are_kept AFTER UPDATE ON planned_patch
WHEN OLD.voided_why IS NOT NEW.voided_why
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    'planned_patch.voided_why', OLD.id, OLD.voided_why, NEW.voided_why, a.reason
  FROM (SELECT 1) LEFT JOIN amending a ON a.only = 1;
END;

DROP TRIGGER planned_patch_is_never_deleted;

CREATE TRIGGER planned_patch_is_never_deleted BEFORE DELETE ON planned_patch
BEGIN
  SELECT RAISE(ABORT, 'A planned patch is never deleted; void it if it is not to be burned.');
END;
