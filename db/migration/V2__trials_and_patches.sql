-- What a workshop records.
--
-- Units stand at the end of column names: w watt, pct percent, nm, mm, um, cm2, mm_s millimetres per
-- second, khz, ns, s. A time has two columns: the instant in UTC to the millisecond (_utc) and the
-- zone offset where it was entered (_offset). Identities are UUIDs of version 7 (RFC 9562), so that
-- two logs can be joined. Quantities that follow from others (dose, fluence) are never stored.

CREATE TABLE rig (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL COLLATE NOCASE UNIQUE,
  emission TEXT NOT NULL,
  rated_w REAL NOT NULL, -- mean power at 100 %
  wavelength_nm REAL NOT NULL,
  spot_definition TEXT NOT NULL, -- what this rig's spot diameters mean
  spot_mm REAL, -- usual settings, where there are any
  repetition_khz REAL,
  pulse_ns REAL,
  scan_width_mm REAL,
  lens TEXT,
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  recorded_by TEXT,
  CONSTRAINT rig_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT rig_has_a_name CHECK (trim(name) <> ''),
  CONSTRAINT rig_is_pulsed_or_cw CHECK (emission IN ('pulsed', 'cw')),
  CONSTRAINT rated_power_is_positive CHECK (rated_w > 0),
  CONSTRAINT wavelength_is_positive CHECK (wavelength_nm > 0),
  CONSTRAINT rig_spot_definition_is_known CHECK (spot_definition IN ('1/e2', 'D4sigma', '1/e', 'FWHM')),
  CONSTRAINT usual_spot_diameter_is_positive CHECK (spot_mm > 0),
  CONSTRAINT usual_repetition_rate_is_positive CHECK (repetition_khz > 0),
  CONSTRAINT usual_pulse_duration_is_positive CHECK (pulse_ns > 0),
  CONSTRAINT usual_scan_width_is_positive CHECK (scan_width_mm > 0),
  CONSTRAINT rig_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT;

-- A metered power.
CREATE TABLE power_check (
  id TEXT NOT NULL PRIMARY KEY,
  rig_id TEXT NOT NULL REFERENCES rig (id),
  metered_at_utc TEXT NOT NULL,
  metered_at_offset TEXT NOT NULL,
  setting_pct REAL NOT NULL,
  metered_w REAL NOT NULL, -- on the work
  recorded_by TEXT,
  CONSTRAINT power_check_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT power_check_setting_is_above_0_and_up_to_100_percent CHECK (setting_pct > 0 AND setting_pct <= 100),
  CONSTRAINT metered_power_is_positive CHECK (metered_w > 0),
  CONSTRAINT power_check_time_is_utc CHECK (metered_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', metered_at_utc))
) STRICT;

CREATE INDEX power_check_by_rig ON power_check (rig_id, metered_at_utc);

-- One piece of wood that patches are burned on.
CREATE TABLE board (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL COLLATE NOCASE UNIQUE,
  wood TEXT NOT NULL REFERENCES wood (name),
  form TEXT NOT NULL,
  condition TEXT,
  moisture_pct REAL, -- of the dry mass, as meters show it
  job TEXT,
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  recorded_by TEXT,
  CONSTRAINT board_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT board_has_a_name CHECK (trim(name) <> ''),
  CONSTRAINT board_form_is_known CHECK (form IN ('solid', 'veneer', 'plywood', 'mdf')),
  CONSTRAINT moisture_is_0_or_more CHECK (moisture_pct >= 0),
  CONSTRAINT board_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT;

-- A named stack of coats.
CREATE TABLE finish (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL COLLATE NOCASE UNIQUE,
  family TEXT NOT NULL REFERENCES coating_family (name), -- for analysis
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  recorded_by TEXT,
  CONSTRAINT finish_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT finish_has_a_name CHECK (trim(name) <> ''),
  CONSTRAINT finish_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT;

CREATE TABLE coat (
  finish_id TEXT NOT NULL REFERENCES finish (id),
  position INTEGER NOT NULL, -- 1 is the outermost
  family TEXT NOT NULL REFERENCES coating_family (name),
  tone TEXT,
  thickness_um REAL, -- dry film
  PRIMARY KEY (finish_id, position),
  CONSTRAINT coat_position_is_1_or_more CHECK (position >= 1),
  CONSTRAINT coat_tone_is_known CHECK (tone IN ('pale', 'mid', 'dark')),
  CONSTRAINT coat_thickness_is_positive CHECK (thickness_um > 0)
) STRICT;

-- One trial. The settings are those of one pass.
CREATE TABLE patch (
  recorded INTEGER NOT NULL PRIMARY KEY, -- order of recording
  id TEXT NOT NULL UNIQUE,
  code TEXT NOT NULL COLLATE NOCASE UNIQUE, -- as written on the masking tape
  burned_at_utc TEXT NOT NULL,
  burned_at_offset TEXT NOT NULL,
  rig_id TEXT NOT NULL REFERENCES rig (id),
  board_id TEXT NOT NULL REFERENCES board (id),
  finish_id TEXT NOT NULL REFERENCES finish (id),
  power_pct REAL, -- share of the rig's rating; or else
  power_w REAL, -- on the work
  spot_speed_mm_s REAL, -- one of three ways the light was spread: lines of a scanner,
  line_spacing_mm REAL,
  scan_width_mm REAL, -- a pass by hand,
  hand_speed_mm_s REAL,
  timed_area_cm2 REAL, -- or a marked area gone over in a timed pass
  seconds_per_pass REAL,
  spot_mm REAL NOT NULL,
  spot_definition TEXT NOT NULL,
  repetition_khz REAL, -- of a pulsed source
  pulse_ns REAL,
  patch_cm2 REAL, -- size of the patch
  typed_json TEXT NOT NULL DEFAULT '{}', -- what the person typed, by knob
  burned_by TEXT,
  note TEXT,
  voided_why TEXT,
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  CONSTRAINT patch_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT patch_has_a_code CHECK (trim(code) <> ''),
  CONSTRAINT patch_power_is_in_percent_or_in_watts CHECK ((power_pct IS NULL) <> (power_w IS NULL)),
  CONSTRAINT power_is_above_0_and_up_to_100_percent CHECK (power_pct > 0 AND power_pct <= 100),
  CONSTRAINT power_is_positive CHECK (power_w > 0),
  CONSTRAINT patch_has_exactly_one_dose_form CHECK (
    (spot_speed_mm_s IS NOT NULL) + (hand_speed_mm_s IS NOT NULL) + (seconds_per_pass IS NOT NULL) = 1
    AND (spot_speed_mm_s IS NULL) = (line_spacing_mm IS NULL)
    AND (hand_speed_mm_s IS NULL) = (scan_width_mm IS NULL)
    AND (seconds_per_pass IS NULL) = (timed_area_cm2 IS NULL)),
  CONSTRAINT spot_speed_is_positive CHECK (spot_speed_mm_s > 0),
  CONSTRAINT line_spacing_is_positive CHECK (line_spacing_mm > 0),
  CONSTRAINT scan_width_is_positive CHECK (scan_width_mm > 0),
  CONSTRAINT hand_speed_is_positive CHECK (hand_speed_mm_s > 0),
  CONSTRAINT timed_area_is_positive CHECK (timed_area_cm2 > 0),
  CONSTRAINT time_per_pass_is_positive CHECK (seconds_per_pass > 0),
  CONSTRAINT spot_diameter_is_positive CHECK (spot_mm > 0),
  CONSTRAINT spot_definition_is_known CHECK (spot_definition IN ('1/e2', 'D4sigma', '1/e', 'FWHM')),
  CONSTRAINT repetition_rate_is_positive CHECK (repetition_khz > 0),
  CONSTRAINT pulse_duration_is_positive CHECK (pulse_ns > 0),
  CONSTRAINT pulse_duration_comes_with_a_repetition_rate CHECK (pulse_ns IS NULL OR repetition_khz IS NOT NULL),
  CONSTRAINT patch_size_is_positive CHECK (patch_cm2 > 0),
  CONSTRAINT typed_text_is_a_json_object CHECK (json_valid(typed_json) AND json_type(typed_json) = 'object'),
  CONSTRAINT patch_is_void_for_a_reason CHECK (trim(voided_why) <> ''),
  CONSTRAINT patch_time_is_utc CHECK (burned_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', burned_at_utc)),
  CONSTRAINT patch_offset_is_a_zone_offset CHECK (burned_at_offset = 'Z' OR burned_at_offset GLOB '[+-][0-9][0-9]:[0-9][0-9]*')
) STRICT;

CREATE INDEX patch_by_time ON patch (burned_at_utc);
CREATE INDEX patch_by_rig ON patch (rig_id);
CREATE INDEX patch_by_board ON patch (board_id);
CREATE INDEX patch_by_finish ON patch (finish_id);
-- The highest of the log's own codes, P-0001 and on, without reading all of them.
CREATE INDEX patch_by_own_number ON patch (CAST(substr(code, 3) AS INTEGER))
  WHERE code GLOB 'P-[0-9]*' AND NOT code GLOB 'P-*[^0-9]*' AND length(code) <= 11;

-- A pulsed rig has a repetition rate and a continuous one has none.
CREATE TRIGGER pulsed_patch_has_a_repetition_rate BEFORE INSERT ON patch
WHEN NEW.repetition_khz IS NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'pulsed'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a pulsed rig must have a repetition rate; none was given.');
END;

CREATE TRIGGER continuous_patch_has_no_repetition_rate BEFORE INSERT ON patch
WHEN NEW.repetition_khz IS NOT NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'cw'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a continuous rig has no repetition rate; leave it out or name a pulsed rig.');
END;

CREATE TRIGGER amended_pulsed_patch_has_a_repetition_rate BEFORE UPDATE OF rig_id, repetition_khz ON patch
WHEN NEW.repetition_khz IS NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'pulsed'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a pulsed rig must have a repetition rate; none was given.');
END;

CREATE TRIGGER amended_continuous_patch_has_no_repetition_rate BEFORE UPDATE OF rig_id, repetition_khz ON patch
WHEN NEW.repetition_khz IS NOT NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'cw'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a continuous rig has no repetition rate; leave it out or name a pulsed rig.');
END;

CREATE TRIGGER rig_with_patches_keeps_its_light BEFORE UPDATE OF emission ON rig
WHEN OLD.emission IS NOT NEW.emission AND EXISTS (SELECT 1 FROM patch WHERE rig_id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'A rig that has burned patches stays pulsed or continuous as it was; add a new rig instead.');
END;

-- What was seen on a patch after a number of passes.
CREATE TABLE reading (
  id TEXT NOT NULL PRIMARY KEY,
  patch_id TEXT NOT NULL REFERENCES patch (id),
  passes INTEGER NOT NULL, -- made so far
  outcome TEXT NOT NULL,
  soot INTEGER, -- 1: soot was wiped off, 0: there was none
  depth_um REAL, -- removed so far
  judged_at_utc TEXT NOT NULL,
  judged_at_offset TEXT NOT NULL,
  judged_by TEXT,
  note TEXT,
  voided_why TEXT,
  CONSTRAINT reading_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT passes_are_1_or_more CHECK (passes >= 1),
  CONSTRAINT outcome_is_clean_alone_or_a_mix_of_tint_char_and_residue CHECK (outcome IN (
    'clean', 'tint', 'char', 'residue', 'tint+char', 'tint+residue', 'char+residue', 'tint+char+residue')),
  CONSTRAINT soot_is_yes_or_no CHECK (soot IN (0, 1)),
  CONSTRAINT depth_removed_is_0_or_more CHECK (depth_um >= 0),
  CONSTRAINT reading_is_void_for_a_reason CHECK (trim(voided_why) <> ''),
  CONSTRAINT reading_time_is_utc CHECK (judged_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', judged_at_utc))
) STRICT;

CREATE UNIQUE INDEX reading_passes_differ ON reading (patch_id, passes) WHERE voided_why IS NULL;
CREATE INDEX reading_by_patch ON reading (patch_id);

-- A photograph of a patch, kept in the log so that one file is the whole record.
CREATE TABLE photo (
  id TEXT NOT NULL PRIMARY KEY,
  patch_id TEXT NOT NULL REFERENCES patch (id),
  file_name TEXT NOT NULL, -- as it came
  media_type TEXT NOT NULL, -- such as image/jpeg
  content BLOB NOT NULL,
  taken_at_utc TEXT NOT NULL,
  taken_at_offset TEXT NOT NULL,
  caption TEXT,
  recorded_by TEXT,
  CONSTRAINT photo_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT photo_is_an_image CHECK (media_type GLOB 'image/?*'),
  CONSTRAINT photo_has_content CHECK (length(content) > 0),
  CONSTRAINT photo_time_is_utc CHECK (taken_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', taken_at_utc))
) STRICT;

CREATE INDEX photo_by_patch ON photo (patch_id);
