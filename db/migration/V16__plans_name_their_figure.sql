-- A patch that is planned for one scan figure must be burned with it: a plan keeps the figure, if any was
-- asked for.

ALTER TABLE planned_patch ADD COLUMN figure TEXT
  CONSTRAINT planned_figure_is_a_word CHECK (trim(figure) <> '');

DROP TRIGGER planned_patch_stays_as_it_was_planned;
CREATE TRIGGER planned_patch_stays_as_it_was_planned BEFORE UPDATE ON planned_patch
WHEN NEW.id IS NOT OLD.id OR NEW.code IS NOT OLD.code OR NEW.family IS NOT OLD.family
  OR NEW.wood IS NOT OLD.wood OR NEW.board_id IS NOT OLD.board_id
    AND NEW.board_id IS NOT (SELECT target FROM joined_board WHERE id = OLD.board_id)
  OR NEW.rig_id IS NOT OLD.rig_id
    AND NEW.rig_id IS NOT (SELECT target FROM joined_rig WHERE id = OLD.rig_id)
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
  OR NEW.figure IS NOT OLD.figure
BEGIN
  SELECT RAISE(ABORT, 'A planned patch stays as it was planned; it is fulfilled by the patch recorded under its code, or void.');
END;
