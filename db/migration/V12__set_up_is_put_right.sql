-- What was set up or metered can be put right, as patches can: power checks are amended and void,
-- boards are void, coats are struck, and two records of one rig, board or finish are joined. Nothing
-- is deleted, and every old value is kept.

-- Power depends on the pulses, too, and no source gives more than a certain energy in one pulse.
ALTER TABLE power_check ADD COLUMN repetition_khz REAL -- as it was metered; empty for the rig's usual one
  CONSTRAINT metered_repetition_rate_is_positive CHECK (repetition_khz > 0);
ALTER TABLE power_check ADD COLUMN pulse_ns REAL
  CONSTRAINT metered_pulse_duration_is_positive CHECK (pulse_ns > 0);
ALTER TABLE power_check ADD COLUMN voided_why TEXT
  CONSTRAINT power_check_is_void_for_a_reason CHECK (trim(voided_why) <> '');
ALTER TABLE rig ADD COLUMN max_pulse_mj REAL -- largest pulse energy of the source, where it is known
  CONSTRAINT largest_pulse_energy_is_positive CHECK (max_pulse_mj > 0);

-- A patch on a void board counts nowhere.
ALTER TABLE board ADD COLUMN voided_why TEXT
  CONSTRAINT board_is_void_for_a_reason CHECK (trim(voided_why) <> '');

ALTER TABLE coat ADD COLUMN voided_why TEXT
  CONSTRAINT coat_is_struck_for_a_reason CHECK (trim(voided_why) <> '');

-- One thing that was set up twice: this row is joined into another one, which has its patches now.
-- The name stays taken, and finds the other.
ALTER TABLE rig ADD COLUMN joined_into TEXT
  REFERENCES rig (id) DEFERRABLE INITIALLY DEFERRED
  CONSTRAINT rig_is_not_joined_into_itself CHECK (joined_into IS NOT id);
ALTER TABLE board ADD COLUMN joined_into TEXT
  REFERENCES board (id) DEFERRABLE INITIALLY DEFERRED
  CONSTRAINT board_is_not_joined_into_itself CHECK (joined_into IS NOT id);
ALTER TABLE finish ADD COLUMN joined_into TEXT
  REFERENCES finish (id) DEFERRABLE INITIALLY DEFERRED
  CONSTRAINT finish_is_not_joined_into_itself CHECK (joined_into IS NOT id);

-- Where a joined row has gone, through every step; and every name that finds a rig, board or finish: its
-- own (former 0), that of one joined into it (1), and those that it had before (2).
CREATE INDEX rig_joined ON rig (joined_into) WHERE joined_into IS NOT NULL;
CREATE VIEW joined_rig (id, target) AS
WITH RECURSIVE chain (id, target) AS (
  SELECT id, joined_into FROM rig
  WHERE joined_into IS NOT NULL AND joined_into IN (SELECT id FROM rig WHERE joined_into IS NULL)
  UNION SELECT rig.id, chain.target FROM rig JOIN chain ON rig.joined_into = chain.id)
SELECT id, target FROM chain;

CREATE INDEX former_name_of_a_rig ON change (before COLLATE NOCASE) WHERE what = 'rig.name';
CREATE VIEW rig_known_as (name, id, former) AS
SELECT n.name, coalesce(j.target, n.id), n.former
FROM (
  SELECT name, id, joined_into IS NOT NULL AS former FROM rig
  UNION ALL SELECT before, row_id, 2 FROM change WHERE what = 'rig.name' AND before IS NOT NULL
) n LEFT JOIN joined_rig j ON j.id = n.id;

CREATE INDEX board_joined ON board (joined_into) WHERE joined_into IS NOT NULL;
CREATE VIEW joined_board (id, target) AS
WITH RECURSIVE chain (id, target) AS (
  SELECT id, joined_into FROM board
  WHERE joined_into IS NOT NULL AND joined_into IN (SELECT id FROM board WHERE joined_into IS NULL)
  UNION SELECT board.id, chain.target FROM board JOIN chain ON board.joined_into = chain.id)
SELECT id, target FROM chain;

CREATE INDEX former_name_of_a_board ON change (before COLLATE NOCASE) WHERE what = 'board.name';
CREATE VIEW board_known_as (name, id, former) AS
SELECT n.name, coalesce(j.target, n.id), n.former
FROM (
  SELECT name, id, joined_into IS NOT NULL AS former FROM board
  UNION ALL SELECT before, row_id, 2 FROM change WHERE what = 'board.name' AND before IS NOT NULL
) n LEFT JOIN joined_board j ON j.id = n.id;

CREATE INDEX finish_joined ON finish (joined_into) WHERE joined_into IS NOT NULL;
CREATE VIEW joined_finish (id, target) AS
WITH RECURSIVE chain (id, target) AS (
  SELECT id, joined_into FROM finish
  WHERE joined_into IS NOT NULL AND joined_into IN (SELECT id FROM finish WHERE joined_into IS NULL)
  UNION SELECT finish.id, chain.target FROM finish JOIN chain ON finish.joined_into = chain.id)
SELECT id, target FROM chain;

CREATE INDEX former_name_of_a_finish ON change (before COLLATE NOCASE) WHERE what = 'finish.name';
CREATE VIEW finish_known_as (name, id, former) AS
SELECT n.name, coalesce(j.target, n.id), n.former
FROM (
  SELECT name, id, joined_into IS NOT NULL AS former FROM finish
  UNION ALL SELECT before, row_id, 2 FROM change WHERE what = 'finish.name' AND before IS NOT NULL
) n LEFT JOIN joined_finish j ON j.id = n.id;

-- Who recorded a patch, which need not be who burned it, and how it came into this log if nobody recorded
-- it here: the last patch of a person is one that they burned or recorded here.
ALTER TABLE patch ADD COLUMN recorded_by TEXT;
ALTER TABLE patch ADD COLUMN brought_in_by TEXT
  CONSTRAINT patch_was_brought_in_by_an_import_or_a_merge CHECK (brought_in_by IN ('import', 'merge'));

DROP TRIGGER patch_keeps_its_identity;
CREATE TRIGGER patch_keeps_its_identity BEFORE UPDATE OF recorded, id, code, recorded_at_utc, recorded_at_offset, recorded_by, brought_in_by ON patch
WHEN OLD.recorded IS NOT NEW.recorded OR OLD.id IS NOT NEW.id OR OLD.code IS NOT NEW.code OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by OR OLD.brought_in_by IS NOT NEW.brought_in_by
BEGIN
  SELECT RAISE(ABORT, 'A patch keeps its identity and code, and who recorded it and when; only the rest can be amended.');
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
    UNION ALL SELECT 'rig.joined_into', OLD.joined_into, NEW.joined_into
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

DROP TRIGGER power_check_changes_are_kept;
CREATE TRIGGER power_check_changes_are_kept AFTER UPDATE ON power_check
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'power_check.rig_id' AS what, OLD.rig_id AS before, NEW.rig_id AS after
    UNION ALL SELECT 'power_check.metered_at_utc', OLD.metered_at_utc, NEW.metered_at_utc
    UNION ALL SELECT 'power_check.metered_at_offset', OLD.metered_at_offset, NEW.metered_at_offset
    UNION ALL SELECT 'power_check.setting_pct', OLD.setting_pct, NEW.setting_pct
    UNION ALL SELECT 'power_check.metered_w', OLD.metered_w, NEW.metered_w
    UNION ALL SELECT 'power_check.repetition_khz', OLD.repetition_khz, NEW.repetition_khz
    UNION ALL SELECT 'power_check.pulse_ns', OLD.pulse_ns, NEW.pulse_ns
    UNION ALL SELECT 'power_check.voided_why', OLD.voided_why, NEW.voided_why
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

DROP TRIGGER board_changes_are_kept;
CREATE TRIGGER board_changes_are_kept AFTER UPDATE ON board
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'board.name' AS what, OLD.name AS before, NEW.name AS after
    UNION ALL SELECT 'board.wood', OLD.wood, NEW.wood
    UNION ALL SELECT 'board.form', OLD.form, NEW.form
    UNION ALL SELECT 'board.condition', OLD.condition, NEW.condition
    UNION ALL SELECT 'board.moisture_pct', OLD.moisture_pct, NEW.moisture_pct
    UNION ALL SELECT 'board.job', OLD.job, NEW.job
    UNION ALL SELECT 'board.voided_why', OLD.voided_why, NEW.voided_why
    UNION ALL SELECT 'board.joined_into', OLD.joined_into, NEW.joined_into
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

DROP TRIGGER finish_changes_are_kept;
CREATE TRIGGER finish_changes_are_kept AFTER UPDATE ON finish
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'finish.name' AS what, OLD.name AS before, NEW.name AS after
    UNION ALL SELECT 'finish.family', OLD.family, NEW.family
    UNION ALL SELECT 'finish.joined_into', OLD.joined_into, NEW.joined_into
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

-- A change to a coat names its place, 1 for the outermost.
DROP TRIGGER coat_changes_are_kept;
CREATE TRIGGER coat_changes_are_kept AFTER UPDATE ON coat
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.finish_id, c.before, c.after, a.reason
  FROM (
    SELECT 'coat ' || OLD.position || '.family' AS what, OLD.family AS before, NEW.family AS after
    UNION ALL SELECT 'coat ' || OLD.position || '.tone', OLD.tone, NEW.tone
    UNION ALL SELECT 'coat ' || OLD.position || '.thickness_um', OLD.thickness_um, NEW.thickness_um
    UNION ALL SELECT 'coat ' || OLD.position || '.called', OLD.called, NEW.called
    UNION ALL SELECT 'coat ' || OLD.position || '.voided_why', OLD.voided_why, NEW.voided_why
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

CREATE TRIGGER added_coats_are_kept AFTER INSERT ON coat
WHEN EXISTS (SELECT 1 FROM amending)
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT a.at_utc, a.at_offset, a.person, c.what, NEW.finish_id, NULL, c.after, a.reason
  FROM (
    SELECT 'coat ' || NEW.position || '.family' AS what, NEW.family AS after
    UNION ALL SELECT 'coat ' || NEW.position || '.tone', NEW.tone
    UNION ALL SELECT 'coat ' || NEW.position || '.thickness_um', NEW.thickness_um
    UNION ALL SELECT 'coat ' || NEW.position || '.called', NEW.called
  ) c JOIN amending a ON a.only = 1
  WHERE c.after IS NOT NULL;
END;

DROP TRIGGER power_check_is_never_deleted;
CREATE TRIGGER power_check_is_never_deleted BEFORE DELETE ON power_check
BEGIN
  SELECT RAISE(ABORT, 'A power check is never deleted; amend it, or void it.');
END;

-- An open plan follows the rig and the board that its own were joined into.
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
BEGIN
  SELECT RAISE(ABORT, 'A planned patch stays as it was planned; it is fulfilled by the patch recorded under its code, or void.');
END;
