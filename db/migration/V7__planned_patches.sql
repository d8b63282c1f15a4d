-- Patches that are to be burned. A planned patch holds a code, so that a printed bench list and the
-- masking tape say the same; recording a patch under that code fulfils it.

CREATE TABLE planned_patch (
  id TEXT NOT NULL PRIMARY KEY,
  code TEXT NOT NULL COLLATE NOCASE UNIQUE,
  patch_id TEXT UNIQUE REFERENCES patch (id), -- the patch that fulfilled it
  family TEXT NOT NULL REFERENCES coating_family (name),
  wood TEXT NOT NULL, -- a word of the vocabulary, or any
  rig_id TEXT NOT NULL REFERENCES rig (id),
  board_id TEXT REFERENCES board (id), -- empty where it is still to be found
  place TEXT NOT NULL, -- what it is to be burned on, in words
  power_pct REAL, -- settings as of a patch
  power_w REAL,
  spot_speed_mm_s REAL,
  line_spacing_mm REAL,
  scan_width_mm REAL,
  hand_speed_mm_s REAL,
  timed_area_cm2 REAL,
  seconds_per_pass REAL,
  spot_mm REAL NOT NULL,
  spot_definition TEXT NOT NULL,
  repetition_khz REAL,
  pulse_ns REAL,
  passes INTEGER NOT NULL, -- read after every pass up to this one
  purpose TEXT NOT NULL,
  reason TEXT NOT NULL,
  planned_at_utc TEXT NOT NULL,
  planned_at_offset TEXT NOT NULL,
  planned_by TEXT,
  CONSTRAINT planned_patch_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT planned_patch_has_a_code CHECK (trim(code) <> ''),
  CONSTRAINT planned_power_is_in_percent_or_in_watts CHECK ((power_pct IS NULL) <> (power_w IS NULL)),
  CONSTRAINT planned_patch_has_exactly_one_dose_form CHECK (
    (spot_speed_mm_s IS NOT NULL) + (hand_speed_mm_s IS NOT NULL) + (seconds_per_pass IS NOT NULL) = 1
    AND (spot_speed_mm_s IS NULL) = (line_spacing_mm IS NULL)
    AND (hand_speed_mm_s IS NULL) = (scan_width_mm IS NULL)
    AND (seconds_per_pass IS NULL) = (timed_area_cm2 IS NULL)),
  CONSTRAINT planned_passes_are_1_or_more CHECK (passes >= 1),
  CONSTRAINT planned_time_is_utc CHECK (planned_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', planned_at_utc))
) STRICT;

CREATE TRIGGER planned_patch_is_fulfilled_once_and_else_stays BEFORE UPDATE ON planned_patch
WHEN OLD.patch_id IS NOT NULL OR NEW.patch_id IS NULL OR NEW.id IS NOT OLD.id OR NEW.code IS NOT OLD.code
BEGIN
  SELECT RAISE(ABORT, 'A planned patch stays as it was planned; it is fulfilled once, by the patch recorded under its code.');
END;

CREATE TRIGGER planned_patch_is_never_deleted BEFORE DELETE ON planned_patch
BEGIN
  SELECT RAISE(ABORT, 'A planned patch is never deleted; leave it open if it is not to be burned.');
END;
