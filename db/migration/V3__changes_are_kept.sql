-- Nothing recorded is ever lost: the database itself writes down every amendment, whoever makes it,
-- and refuses to delete.

-- Who is amending and why. A row stands only inside the transaction that amends, and is taken out
-- before its end; an amendment made without it is kept too, with the name and reason left empty.
CREATE TABLE amending (
  only INTEGER NOT NULL PRIMARY KEY,
  at_utc TEXT NOT NULL,
  at_offset TEXT NOT NULL,
  person TEXT,
  reason TEXT,
  CONSTRAINT one_person_amends_at_a_time CHECK (only = 1)
) STRICT;

CREATE TABLE change (
  number INTEGER NOT NULL PRIMARY KEY, -- order of the changes
  changed_at_utc TEXT NOT NULL,
  changed_at_offset TEXT NOT NULL,
  changed_by TEXT,
  what TEXT NOT NULL, -- table and column, such as reading.outcome
  row_id TEXT NOT NULL, -- identity of the changed row (of its finish, for a coat)
  before TEXT, -- empty where there was none
  after TEXT, -- empty where it was taken out
  why TEXT
) STRICT;

CREATE INDEX change_by_row ON change (row_id);

-- One line per changed column of a changed row.
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
    UNION ALL SELECT 'rig.lens', OLD.lens, NEW.lens
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

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
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

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
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

CREATE TRIGGER finish_changes_are_kept AFTER UPDATE ON finish
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'finish.name' AS what, OLD.name AS before, NEW.name AS after
    UNION ALL SELECT 'finish.family', OLD.family, NEW.family
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

CREATE TRIGGER coat_changes_are_kept AFTER UPDATE ON coat
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.finish_id, c.before, c.after, a.reason
  FROM (
    SELECT 'coat.family' AS what, OLD.family AS before, NEW.family AS after
    UNION ALL SELECT 'coat.tone', OLD.tone, NEW.tone
    UNION ALL SELECT 'coat.thickness_um', OLD.thickness_um, NEW.thickness_um
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

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
    UNION ALL SELECT 'patch.typed_json', OLD.typed_json, NEW.typed_json
    UNION ALL SELECT 'patch.burned_by', OLD.burned_by, NEW.burned_by
    UNION ALL SELECT 'patch.note', OLD.note, NEW.note
    UNION ALL SELECT 'patch.voided_why', OLD.voided_why, NEW.voided_why
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

CREATE TRIGGER reading_changes_are_kept AFTER UPDATE ON reading
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'reading.passes' AS what, OLD.passes AS before, NEW.passes AS after
    UNION ALL SELECT 'reading.outcome', OLD.outcome, NEW.outcome
    UNION ALL SELECT 'reading.soot', OLD.soot, NEW.soot
    UNION ALL SELECT 'reading.depth_um', OLD.depth_um, NEW.depth_um
    UNION ALL SELECT 'reading.judged_at_utc', OLD.judged_at_utc, NEW.judged_at_utc
    UNION ALL SELECT 'reading.judged_at_offset', OLD.judged_at_offset, NEW.judged_at_offset
    UNION ALL SELECT 'reading.judged_by', OLD.judged_by, NEW.judged_by
    UNION ALL SELECT 'reading.note', OLD.note, NEW.note
    UNION ALL SELECT 'reading.voided_why', OLD.voided_why, NEW.voided_why
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

CREATE TRIGGER photo_changes_are_kept AFTER UPDATE ON photo
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'photo.file_name' AS what, OLD.file_name AS before, NEW.file_name AS after
    UNION ALL SELECT 'photo.media_type', OLD.media_type, NEW.media_type
    UNION ALL SELECT 'photo.taken_at_utc', OLD.taken_at_utc, NEW.taken_at_utc
    UNION ALL SELECT 'photo.taken_at_offset', OLD.taken_at_offset, NEW.taken_at_offset
    UNION ALL SELECT 'photo.caption', OLD.caption, NEW.caption
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

-- Identity, and what the log itself noted down, stay as they are.

CREATE TRIGGER rig_keeps_its_identity BEFORE UPDATE OF id, recorded_at_utc, recorded_at_offset, recorded_by ON rig
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A rig keeps its identity, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER power_check_keeps_its_identity BEFORE UPDATE OF id, recorded_by ON power_check
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A power check keeps its identity, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER board_keeps_its_identity BEFORE UPDATE OF id, recorded_at_utc, recorded_at_offset, recorded_by ON board
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A board keeps its identity, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER finish_keeps_its_identity BEFORE UPDATE OF id, recorded_at_utc, recorded_at_offset, recorded_by ON finish
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A finish keeps its identity, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER coat_keeps_its_identity BEFORE UPDATE OF finish_id, position ON coat
WHEN OLD.finish_id IS NOT NEW.finish_id OR OLD.position IS NOT NEW.position
BEGIN
  SELECT RAISE(ABORT, 'A coat keeps its place, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER patch_keeps_its_identity BEFORE UPDATE OF recorded, id, code, recorded_at_utc, recorded_at_offset ON patch
WHEN OLD.recorded IS NOT NEW.recorded OR OLD.id IS NOT NEW.id OR OLD.code IS NOT NEW.code OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset
BEGIN
  SELECT RAISE(ABORT, 'A patch keeps its identity and code, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER reading_keeps_its_identity BEFORE UPDATE OF id, patch_id ON reading
WHEN OLD.id IS NOT NEW.id OR OLD.patch_id IS NOT NEW.patch_id
BEGIN
  SELECT RAISE(ABORT, 'A reading keeps its identity, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER photo_keeps_its_identity BEFORE UPDATE OF id, patch_id, content, recorded_by ON photo
WHEN OLD.id IS NOT NEW.id OR OLD.patch_id IS NOT NEW.patch_id OR OLD.content IS NOT NEW.content OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A photo keeps its identity, and who recorded it and when; only the rest can be amended.');
END;

-- Nothing is deleted.

CREATE TRIGGER rig_is_never_deleted BEFORE DELETE ON rig
BEGIN
  SELECT RAISE(ABORT, 'A rig is never deleted; it stays for the patches burned with it.');
END;

CREATE TRIGGER power_check_is_never_deleted BEFORE DELETE ON power_check
BEGIN
  SELECT RAISE(ABORT, 'A power check is never deleted; record a newer one.');
END;

CREATE TRIGGER board_is_never_deleted BEFORE DELETE ON board
BEGIN
  SELECT RAISE(ABORT, 'A board is never deleted; it stays for the patches burned on it.');
END;

CREATE TRIGGER finish_is_never_deleted BEFORE DELETE ON finish
BEGIN
  SELECT RAISE(ABORT, 'A finish is never deleted; it stays for the patches burned on it.');
END;

CREATE TRIGGER coat_is_never_deleted BEFORE DELETE ON coat
BEGIN
  SELECT RAISE(ABORT, 'A coat is never deleted; amend it instead.');
END;

CREATE TRIGGER patch_is_never_deleted BEFORE DELETE ON patch
BEGIN
  SELECT RAISE(ABORT, 'A patch is never deleted; void it instead.');
END;

CREATE TRIGGER reading_is_never_deleted BEFORE DELETE ON reading
BEGIN
  SELECT RAISE(ABORT, 'A reading is never deleted; amend it, or void the patch.');
END;

CREATE TRIGGER photo_is_never_deleted BEFORE DELETE ON photo
BEGIN
  SELECT RAISE(ABORT, 'A photo is never deleted; void the patch if it is wrong.');
END;

CREATE TRIGGER change_is_never_deleted BEFORE DELETE ON change
BEGIN
  SELECT RAISE(ABORT, 'The history of changes is never deleted.');
END;

CREATE TRIGGER change_is_never_amended BEFORE UPDATE ON change
BEGIN
  SELECT RAISE(ABORT, 'The history of changes is never amended.');
END;
