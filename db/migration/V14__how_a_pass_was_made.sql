-- How a pass was made, beside its settings: the figure that the head draws, its distance, the rest between
-- passes, the place on the board, and the strokes that were timed. A rig has usual values. All of it may be
-- left out. What is done to a rig to keep it running is written down too.

ALTER TABLE patch ADD COLUMN figure TEXT -- line, circle, ... or a person's own word
  CONSTRAINT figure_is_a_word CHECK (trim(figure) <> '');
ALTER TABLE patch ADD COLUMN lines_s REAL -- lines or turns per second
  CONSTRAINT lines_per_second_are_positive CHECK (lines_s > 0);
ALTER TABLE patch ADD COLUMN standoff_mm REAL -- from head to work
  CONSTRAINT stand_off_is_positive CHECK (standoff_mm > 0);
ALTER TABLE patch ADD COLUMN defocus_mm REAL; -- from focus to work, below 0 where the focus lies in the wood
ALTER TABLE patch ADD COLUMN rest_s REAL -- between two passes
  CONSTRAINT rest_is_0_or_more CHECK (rest_s >= 0);
ALTER TABLE patch ADD COLUMN place TEXT
  CONSTRAINT place_is_known CHECK (place IN ('face', 'arris', 'end grain', 'moulding', 'knot'));
ALTER TABLE patch ADD COLUMN wood_part TEXT
  CONSTRAINT wood_part_is_sap_or_heart CHECK (wood_part IN ('sap', 'heart'));
ALTER TABLE patch ADD COLUMN wetted INTEGER
  CONSTRAINT wetted_is_yes_or_no CHECK (wetted IN (0, 1));
ALTER TABLE patch ADD COLUMN air INTEGER -- air assist
  CONSTRAINT air_assist_is_yes_or_no CHECK (air IN (0, 1));
ALTER TABLE patch ADD COLUMN extraction INTEGER
  CONSTRAINT extraction_is_yes_or_no CHECK (extraction IN (0, 1));
ALTER TABLE patch ADD COLUMN temperature_c REAL -- of the wood
  CONSTRAINT temperature_is_one_of_wood CHECK (temperature_c BETWEEN -60 AND 150);
ALTER TABLE patch ADD COLUMN strokes_s TEXT -- times of single strokes, blanks between; the hand speed follows
  CONSTRAINT stroke_times_are_a_list CHECK (trim(strokes_s) <> '');
ALTER TABLE patch ADD COLUMN stroke_mm REAL -- length of each
  CONSTRAINT stroke_length_comes_with_times CHECK (
    (stroke_mm > 0) IS NOT 0 AND (stroke_mm IS NULL) = (strokes_s IS NULL)
    AND (stroke_mm IS NULL OR hand_speed_mm_s IS NOT NULL));

-- Usual values, and what turns a defocus into a spot diameter.
ALTER TABLE rig ADD COLUMN figure TEXT
  CONSTRAINT usual_figure_is_a_word CHECK (trim(figure) <> '');
ALTER TABLE rig ADD COLUMN lines_s REAL
  CONSTRAINT usual_lines_per_second_are_positive CHECK (lines_s > 0);
ALTER TABLE rig ADD COLUMN standoff_mm REAL
  CONSTRAINT usual_stand_off_is_positive CHECK (standoff_mm > 0);
ALTER TABLE rig ADD COLUMN defocus_mm REAL;
ALTER TABLE rig ADD COLUMN air INTEGER
  CONSTRAINT usual_air_assist_is_yes_or_no CHECK (air IN (0, 1));
ALTER TABLE rig ADD COLUMN extraction INTEGER
  CONSTRAINT usual_extraction_is_yes_or_no CHECK (extraction IN (0, 1));
ALTER TABLE rig ADD COLUMN focus_spot_mm REAL -- spot diameter at focus, as spot_definition means it
  CONSTRAINT spot_at_focus_is_positive CHECK (focus_spot_mm > 0);
ALTER TABLE rig ADD COLUMN beam_quality REAL -- M2
  CONSTRAINT beam_quality_is_1_or_more CHECK (beam_quality >= 1);

-- What was done to a rig, and when. Control patches start a new run there.
CREATE TABLE upkeep (
  id TEXT NOT NULL PRIMARY KEY,
  rig_id TEXT NOT NULL REFERENCES rig (id),
  done_at_utc TEXT NOT NULL,
  done_at_offset TEXT NOT NULL,
  work TEXT NOT NULL, -- window-cleaned, window-changed, lens, coolant, service, or a person's own word
  hours REAL, -- that the source had run by then
  note TEXT,
  recorded_by TEXT,
  voided_why TEXT,
  CONSTRAINT upkeep_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT upkeep_is_named CHECK (trim(work) <> ''),
  CONSTRAINT running_hours_are_0_or_more CHECK (hours >= 0),
  CONSTRAINT upkeep_is_void_for_a_reason CHECK (trim(voided_why) <> ''),
  CONSTRAINT upkeep_time_is_utc CHECK (done_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', done_at_utc))
) STRICT;

CREATE INDEX upkeep_by_rig ON upkeep (rig_id, done_at_utc);

CREATE TRIGGER upkeep_changes_are_kept AFTER UPDATE ON upkeep
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'upkeep.rig_id' AS what, OLD.rig_id AS before, NEW.rig_id AS after
    UNION ALL SELECT 'upkeep.done_at_utc', OLD.done_at_utc, NEW.done_at_utc
    UNION ALL SELECT 'upkeep.done_at_offset', OLD.done_at_offset, NEW.done_at_offset
    UNION ALL SELECT 'upkeep.work', OLD.work, NEW.work
    UNION ALL SELECT 'upkeep.hours', OLD.hours, NEW.hours
    UNION ALL SELECT 'upkeep.note', OLD.note, NEW.note
    UNION ALL SELECT 'upkeep.voided_why', OLD.voided_why, NEW.voided_why
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

CREATE TRIGGER upkeep_keeps_its_identity BEFORE UPDATE OF id, recorded_by ON upkeep
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'Upkeep keeps its identity and who recorded it; only the rest can be amended.');
END;

CREATE TRIGGER upkeep_is_never_deleted BEFORE DELETE ON upkeep
BEGIN
  SELECT RAISE(ABORT, 'Upkeep is never deleted; amend it, or void it.');
END;

DROP TRIGGER rig_changes_are_kept;
CREATE TRIGGER rig_changes_are_kept AFTER UPDATE ON rig
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'rig.name' AS what, OLD.name AS before, NEW.name AS after
    UNION ALL SELECT 'rig.emission', OLD.emission, NEW.emission
    UNION ALL SELECT 'rig.rated_w', OLD.rated_w, NEW.rated_w
    UNION ALL SELECT 'rig.wavelength_nm', OLD.wavelength_nm, NEW.wavelength_nm
    UNION ALL SELECT 'rig.spot_definition', OLD.spot_definition, NEW.spot_definition
    UNION ALL SELECT 'rig.spot_mm', OLD.spot_mm, NEW.spot_mm
    UNION ALL SELECT 'rig.repetition_khz', OLD.repetition_khz, NEW.repetition_khz
    UNION ALL SELECT 'rig.pulse_ns', OLD.pulse_ns, NEW.pulse_ns
    UNION ALL SELECT 'rig.scan_width_mm', OLD.scan_width_mm, NEW.scan_width_mm
    UNION ALL SELECT 'rig.max_pulse_mj', OLD.max_pulse_mj, NEW.max_pulse_mj
    UNION ALL SELECT 'rig.lens', OLD.lens, NEW.lens
    UNION ALL SELECT 'rig.figure', OLD.figure, NEW.figure
    UNION ALL SELECT 'rig.lines_s', OLD.lines_s, NEW.lines_s
    UNION ALL SELECT 'rig.standoff_mm', OLD.standoff_mm, NEW.standoff_mm
    UNION ALL SELECT 'rig.defocus_mm', OLD.defocus_mm, NEW.defocus_mm
    UNION ALL SELECT 'rig.air', OLD.air, NEW.air
    UNION ALL SELECT 'rig.extraction', OLD.extraction, NEW.extraction
    UNION ALL SELECT 'rig.focus_spot_mm', OLD.focus_spot_mm, NEW.focus_spot_mm
    UNION ALL SELECT 'rig.beam_quality', OLD.beam_quality, NEW.beam_quality
    UNION ALL SELECT 'rig.joined_into', OLD.joined_into, NEW.joined_into
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

DROP TRIGGER patch_changes_are_kept;
CREATE TRIGGER patch_changes_are_kept AFTER UPDATE ON patch
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'patch.burned_at_utc' AS what, OLD.burned_at_utc AS before, NEW.burned_at_utc AS after
    UNION ALL SELECT 'patch.burned_at_offset', OLD.burned_at_offset, NEW.burned_at_offset
    UNION ALL SELECT 'patch.rig_id', OLD.rig_id, NEW.rig_id
    UNION ALL SELECT 'patch.board_id', OLD.board_id, NEW.board_id
    UNION ALL SELECT 'patch.finish_id', OLD.finish_id, NEW.finish_id
    UNION ALL SELECT 'patch.power_pct', OLD.power_pct, NEW.power_pct
    UNION ALL SELECT 'patch.power_w', OLD.power_w, NEW.power_w
    UNION ALL SELECT 'patch.spot_speed_mm_s', OLD.spot_speed_mm_s, NEW.spot_speed_mm_s
    UNION ALL SELECT 'patch.line_spacing_mm', OLD.line_spacing_mm, NEW.line_spacing_mm
    UNION ALL SELECT 'patch.scan_width_mm', OLD.scan_width_mm, NEW.scan_width_mm
    UNION ALL SELECT 'patch.hand_speed_mm_s', OLD.hand_speed_mm_s, NEW.hand_speed_mm_s
    UNION ALL SELECT 'patch.timed_area_cm2', OLD.timed_area_cm2, NEW.timed_area_cm2
    UNION ALL SELECT 'patch.seconds_per_pass', OLD.seconds_per_pass, NEW.seconds_per_pass
    UNION ALL SELECT 'patch.spot_mm', OLD.spot_mm, NEW.spot_mm
    UNION ALL SELECT 'patch.spot_definition', OLD.spot_definition, NEW.spot_definition
    UNION ALL SELECT 'patch.repetition_khz', OLD.repetition_khz, NEW.repetition_khz
    UNION ALL SELECT 'patch.pulse_ns', OLD.pulse_ns, NEW.pulse_ns
    UNION ALL SELECT 'patch.patch_cm2', OLD.patch_cm2, NEW.patch_cm2
    UNION ALL SELECT 'patch.figure', OLD.figure, NEW.figure
    UNION ALL SELECT 'patch.lines_s', OLD.lines_s, NEW.lines_s
    UNION ALL SELECT 'patch.standoff_mm', OLD.standoff_mm, NEW.standoff_mm
    UNION ALL SELECT 'patch.defocus_mm', OLD.defocus_mm, NEW.defocus_mm
    UNION ALL SELECT 'patch.rest_s', OLD.rest_s, NEW.rest_s
    UNION ALL SELECT 'patch.place', OLD.place, NEW.place
    UNION ALL SELECT 'patch.wood_part', OLD.wood_part, NEW.wood_part
    UNION ALL SELECT 'patch.wetted', OLD.wetted, NEW.wetted
    UNION ALL SELECT 'patch.air', OLD.air, NEW.air
    UNION ALL SELECT 'patch.extraction', OLD.extraction, NEW.extraction
    UNION ALL SELECT 'patch.temperature_c', OLD.temperature_c, NEW.temperature_c
    UNION ALL SELECT 'patch.strokes_s', OLD.strokes_s, NEW.strokes_s
    UNION ALL SELECT 'patch.stroke_mm', OLD.stroke_mm, NEW.stroke_mm
    UNION ALL SELECT 'patch.typed_json', OLD.typed_json, NEW.typed_json
    UNION ALL SELECT 'patch.burned_by', OLD.burned_by, NEW.burned_by
    UNION ALL SELECT 'patch.note', OLD.note, NEW.note
    UNION ALL SELECT 'patch.voided_why', OLD.voided_why, NEW.voided_why
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;
