-- == index board_joined
CREATE INDEX board_joined ON board (joined_into) WHERE joined_into IS NOT NULL
-- == index change_by_row
CREATE INDEX change_by_row ON change (row_id)
-- == index finish_joined
CREATE INDEX finish_joined ON finish (joined_into) WHERE joined_into IS NOT NULL
-- == index former_name_of_a_board
CREATE INDEX former_name_of_a_board ON change (before COLLATE NOCASE) WHERE what = 'board.name'
-- == index former_name_of_a_finish
CREATE INDEX former_name_of_a_finish ON change (before COLLATE NOCASE) WHERE what = 'finish.name'
-- == index former_name_of_a_rig
CREATE INDEX former_name_of_a_rig ON change (before COLLATE NOCASE) WHERE what = 'rig.name'
-- == index patch_by_board
CREATE INDEX patch_by_board ON patch (board_id)
-- == index patch_by_figure
CREATE INDEX patch_by_figure ON patch (figure) WHERE figure IS NOT NULL
-- == index patch_by_finish
CREATE INDEX patch_by_finish ON patch (finish_id)
-- == index patch_by_own_number
CREATE INDEX patch_by_own_number ON patch (CAST(substr(code, 3) AS INTEGER))
  WHERE code GLOB 'P-[0-9]*' AND NOT code GLOB 'P-*[^0-9]*' AND length(code) <= 11
-- == index patch_by_rig
CREATE INDEX patch_by_rig ON patch (rig_id)
-- == index patch_by_time
CREATE INDEX patch_by_time ON patch (burned_at_utc)
-- == index photo_by_patch
CREATE INDEX photo_by_patch ON photo (patch_id)
-- == index power_check_by_rig
CREATE INDEX power_check_by_rig ON power_check (rig_id, metered_at_utc)
-- == index reading_by_patch
CREATE INDEX reading_by_patch ON reading (patch_id)
-- == index reading_passes_differ
CREATE UNIQUE INDEX reading_passes_differ ON reading (patch_id, passes) WHERE voided_why IS NULL
-- == index rig_joined
CREATE INDEX rig_joined ON rig (joined_into) WHERE joined_into IS NOT NULL
-- == index sample_by_finish
CREATE INDEX sample_by_finish ON sample (finish_id)
-- == index upkeep_by_rig
CREATE INDEX upkeep_by_rig ON upkeep (rig_id, done_at_utc)
-- == table amending
CREATE TABLE amending (
  only INTEGER NOT NULL PRIMARY KEY,
  at_utc TEXT NOT NULL,
  at_offset TEXT NOT NULL,
  person TEXT,
  reason TEXT,
  CONSTRAINT one_person_amends_at_a_time CHECK (only = 1)
) STRICT
-- == table board
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
  recorded_by TEXT, voided_why TEXT
  CONSTRAINT board_is_void_for_a_reason CHECK (trim(voided_why) <> ''), joined_into TEXT
  REFERENCES board (id) DEFERRABLE INITIALLY DEFERRED
  CONSTRAINT board_is_not_joined_into_itself CHECK (joined_into IS NOT id),
  CONSTRAINT board_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT board_has_a_name CHECK (trim(name) <> ''),
  CONSTRAINT board_form_is_known CHECK (form IN ('solid', 'veneer', 'plywood', 'mdf')),
  CONSTRAINT moisture_is_0_or_more CHECK (moisture_pct >= 0),
  CONSTRAINT board_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT
-- == table caution
CREATE TABLE caution (
  rank INTEGER NOT NULL PRIMARY KEY, -- most serious first
  topic TEXT NOT NULL,
  text TEXT NOT NULL, -- what to know and do, in full sentences
  source TEXT NOT NULL, in_short TEXT CONSTRAINT caution_in_short_is_given CHECK (trim(in_short) <> ''), brief TEXT CONSTRAINT caution_brief_is_given CHECK (trim(brief) <> ''), shown_as REAL, covered_by INTEGER REFERENCES caution (rank),
  CONSTRAINT caution_topic_is_given CHECK (trim(topic) <> ''),
  CONSTRAINT caution_text_is_given CHECK (trim(text) <> ''),
  CONSTRAINT caution_source_is_named CHECK (trim(source) <> '')
) STRICT
-- == table caution_scope
CREATE TABLE caution_scope (
  caution INTEGER NOT NULL REFERENCES caution (rank),
  family TEXT REFERENCES coating_family (name),
  wood TEXT REFERENCES wood (name),
  wood_kind TEXT,
  form TEXT,
  emission TEXT, coat_word TEXT
  CONSTRAINT scope_coat_word_is_plain CHECK (coat_word = lower(trim(coat_word)) AND coat_word <> ''), board_word TEXT
  CONSTRAINT scope_board_word_is_plain CHECK (board_word = lower(trim(board_word)) AND board_word <> ''),
  CONSTRAINT scope_wood_kind_is_known CHECK (wood_kind IN ('hardwood', 'softwood', 'panel')),
  CONSTRAINT scope_form_is_known CHECK (form IN ('solid', 'veneer', 'plywood', 'mdf')),
  CONSTRAINT scope_emission_is_known CHECK (emission IN ('pulsed', 'cw'))
) STRICT
-- == table change
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
) STRICT
-- == table coat
CREATE TABLE coat (
  finish_id TEXT NOT NULL REFERENCES finish (id),
  position INTEGER NOT NULL, -- 1 is the outermost
  family TEXT NOT NULL REFERENCES coating_family (name),
  tone TEXT,
  thickness_um REAL, called TEXT CONSTRAINT coat_is_called_something CHECK (trim(called) <> ''), voided_why TEXT
  CONSTRAINT coat_is_struck_for_a_reason CHECK (trim(voided_why) <> ''), -- dry film
  PRIMARY KEY (finish_id, position),
  CONSTRAINT coat_position_is_1_or_more CHECK (position >= 1),
  CONSTRAINT coat_tone_is_known CHECK (tone IN ('pale', 'mid', 'dark')),
  CONSTRAINT coat_thickness_is_positive CHECK (thickness_um > 0)
) STRICT
-- == table coat_test
CREATE TABLE coat_test (
  family TEXT REFERENCES coating_family (name),
  coat_word TEXT, -- as in caution_scope
  substance TEXT NOT NULL REFERENCES substance (name),
  demand TEXT NOT NULL, -- never: no beam at all; free first: no beam until a sample is free of it;
                        -- say: every paper says whether it was tested; known free: not to be asked
  source TEXT NOT NULL,
  CONSTRAINT coat_test_word_is_plain CHECK (coat_word = lower(trim(coat_word)) AND coat_word <> ''),
  CONSTRAINT coat_test_demand_is_known CHECK (demand IN ('never', 'free first', 'say', 'known free')),
  CONSTRAINT coat_test_source_is_named CHECK (trim(source) <> '')
) STRICT
-- == table coating_family
CREATE TABLE coating_family (
  name TEXT NOT NULL PRIMARY KEY,
  usual_film TEXT NOT NULL, -- usual dry film in words, with its unit
  clue TEXT NOT NULL, -- how to tell it in the field
  behaviour TEXT NOT NULL, -- under the beam
  source TEXT NOT NULL,
  CONSTRAINT family_name_is_lower_case CHECK (name = lower(name) AND trim(name) <> ''),
  CONSTRAINT family_source_is_named CHECK (trim(source) <> '')
) STRICT
-- == table family_alias
CREATE TABLE family_alias (
  alias TEXT NOT NULL PRIMARY KEY,
  family TEXT NOT NULL REFERENCES coating_family (name),
  CONSTRAINT family_alias_is_lower_case CHECK (alias = lower(alias) AND trim(alias) <> '')
) STRICT
-- == table finish
CREATE TABLE finish (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL COLLATE NOCASE UNIQUE,
  family TEXT NOT NULL REFERENCES coating_family (name), -- for analysis
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  recorded_by TEXT, joined_into TEXT
  REFERENCES finish (id) DEFERRABLE INITIALLY DEFERRED
  CONSTRAINT finish_is_not_joined_into_itself CHECK (joined_into IS NOT id),
  CONSTRAINT finish_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT finish_has_a_name CHECK (trim(name) <> ''),
  CONSTRAINT finish_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT
-- == table own_family
CREATE TABLE own_family (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL UNIQUE REFERENCES coating_family (name),
  like_family TEXT NOT NULL REFERENCES coating_family (name),
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  recorded_by TEXT,
  CONSTRAINT own_family_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT own_family_is_like_another CHECK (like_family <> name),
  CONSTRAINT own_family_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT
-- == table own_wood
CREATE TABLE own_wood (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL UNIQUE REFERENCES wood (name),
  like_wood TEXT NOT NULL REFERENCES wood (name),
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  recorded_by TEXT,
  CONSTRAINT own_wood_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT own_wood_is_like_another CHECK (like_wood <> name),
  CONSTRAINT own_wood_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT
-- == table patch
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
  recorded_at_offset TEXT NOT NULL, recorded_by TEXT, brought_in_by TEXT
  CONSTRAINT patch_was_brought_in_by_an_import_or_a_merge CHECK (brought_in_by IN ('import', 'merge')), figure TEXT -- line, circle, ... or a person's own word
  CONSTRAINT figure_is_a_word CHECK (trim(figure) <> ''), lines_s REAL -- lines or turns per second
  CONSTRAINT lines_per_second_are_positive CHECK (lines_s > 0), standoff_mm REAL -- from head to work
  CONSTRAINT stand_off_is_positive CHECK (standoff_mm > 0), defocus_mm REAL, rest_s REAL -- between two passes
  CONSTRAINT rest_is_0_or_more CHECK (rest_s >= 0), place TEXT
  CONSTRAINT place_is_known CHECK (place IN ('face', 'arris', 'end grain', 'moulding', 'knot')), wood_part TEXT
  CONSTRAINT wood_part_is_sap_or_heart CHECK (wood_part IN ('sap', 'heart')), wetted INTEGER
  CONSTRAINT wetted_is_yes_or_no CHECK (wetted IN (0, 1)), air INTEGER -- air assist
  CONSTRAINT air_assist_is_yes_or_no CHECK (air IN (0, 1)), extraction INTEGER
  CONSTRAINT extraction_is_yes_or_no CHECK (extraction IN (0, 1)), temperature_c REAL -- of the wood
  CONSTRAINT temperature_is_one_of_wood CHECK (temperature_c BETWEEN -60 AND 150), strokes_s TEXT -- times of single strokes, blanks between; the hand speed follows
  CONSTRAINT stroke_times_are_a_list CHECK (trim(strokes_s) <> ''), stroke_mm REAL -- length of each
  CONSTRAINT stroke_length_comes_with_times CHECK (
    (stroke_mm > 0) IS NOT 0 AND (stroke_mm IS NULL) = (strokes_s IS NULL)
    AND (stroke_mm IS NULL OR hand_speed_mm_s IS NOT NULL)),
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
) STRICT
-- == table photo
CREATE TABLE photo (
  id TEXT NOT NULL PRIMARY KEY,
  patch_id TEXT NOT NULL REFERENCES patch (id),
  file_name TEXT NOT NULL, -- as it came
  media_type TEXT NOT NULL, -- such as image/jpeg
  content BLOB NOT NULL,
  taken_at_utc TEXT NOT NULL,
  taken_at_offset TEXT NOT NULL,
  caption TEXT,
  recorded_by TEXT, sha256 TEXT
  CONSTRAINT photo_checksum_is_64_hexadecimal_digits CHECK (length(sha256) = 64 AND NOT sha256 GLOB '*[^0-9a-f]*'),
  CONSTRAINT photo_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT photo_is_an_image CHECK (media_type GLOB 'image/?*'),
  CONSTRAINT photo_has_content CHECK (length(content) > 0),
  CONSTRAINT photo_time_is_utc CHECK (taken_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', taken_at_utc))
) STRICT
-- == table planned_patch
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
  planned_by TEXT, voided_why TEXT
  CONSTRAINT planned_patch_is_void_for_a_reason CHECK (trim(voided_why) <> ''), depends_on TEXT
  REFERENCES planned_patch (id) DEFERRABLE INITIALLY DEFERRED, condition TEXT
  CONSTRAINT planned_condition_is_known CHECK (condition IN ('no char'))
  CONSTRAINT planned_condition_is_about_another_plan CHECK (
    (condition IS NULL) = (depends_on IS NULL) AND depends_on IS NOT id), figure TEXT
  CONSTRAINT planned_figure_is_a_word CHECK (trim(figure) <> ''),
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
) STRICT
-- == table power_check
CREATE TABLE power_check (
  id TEXT NOT NULL PRIMARY KEY,
  rig_id TEXT NOT NULL REFERENCES rig (id),
  metered_at_utc TEXT NOT NULL,
  metered_at_offset TEXT NOT NULL,
  setting_pct REAL NOT NULL,
  metered_w REAL NOT NULL, -- on the work
  recorded_by TEXT, repetition_khz REAL -- as it was metered; empty for the rig's usual one
  CONSTRAINT metered_repetition_rate_is_positive CHECK (repetition_khz > 0), pulse_ns REAL
  CONSTRAINT metered_pulse_duration_is_positive CHECK (pulse_ns > 0), voided_why TEXT
  CONSTRAINT power_check_is_void_for_a_reason CHECK (trim(voided_why) <> ''),
  CONSTRAINT power_check_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT power_check_setting_is_above_0_and_up_to_100_percent CHECK (setting_pct > 0 AND setting_pct <= 100),
  CONSTRAINT metered_power_is_positive CHECK (metered_w > 0),
  CONSTRAINT power_check_time_is_utc CHECK (metered_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', metered_at_utc))
) STRICT
-- == table reading
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
) STRICT
-- == table rig
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
  recorded_by TEXT, max_pulse_mj REAL -- largest pulse energy of the source, where it is known
  CONSTRAINT largest_pulse_energy_is_positive CHECK (max_pulse_mj > 0), joined_into TEXT
  REFERENCES rig (id) DEFERRABLE INITIALLY DEFERRED
  CONSTRAINT rig_is_not_joined_into_itself CHECK (joined_into IS NOT id), figure TEXT
  CONSTRAINT usual_figure_is_a_word CHECK (trim(figure) <> ''), lines_s REAL
  CONSTRAINT usual_lines_per_second_are_positive CHECK (lines_s > 0), standoff_mm REAL
  CONSTRAINT usual_stand_off_is_positive CHECK (standoff_mm > 0), defocus_mm REAL, air INTEGER
  CONSTRAINT usual_air_assist_is_yes_or_no CHECK (air IN (0, 1)), extraction INTEGER
  CONSTRAINT usual_extraction_is_yes_or_no CHECK (extraction IN (0, 1)), focus_spot_mm REAL -- spot diameter at focus, as spot_definition means it
  CONSTRAINT spot_at_focus_is_positive CHECK (focus_spot_mm > 0), beam_quality REAL -- M2
  CONSTRAINT beam_quality_is_1_or_more CHECK (beam_quality >= 1),
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
) STRICT
-- == table sample
CREATE TABLE sample (
  id TEXT NOT NULL PRIMARY KEY,
  code TEXT NOT NULL COLLATE NOCASE UNIQUE, -- S-0001, S-0002, ...
  finish_id TEXT REFERENCES finish (id),
  job TEXT,
  substance TEXT NOT NULL, -- a name of substance, or the person's own word
  taken_on TEXT NOT NULL, -- day of the sample or the test
  tested_by TEXT, -- laboratory or person
  reference TEXT, -- number of the report or the sample
  result TEXT NOT NULL,
  value TEXT, -- as typed, with its unit
  note TEXT,
  voided_why TEXT,
  recorded_at_utc TEXT NOT NULL,
  recorded_at_offset TEXT NOT NULL,
  recorded_by TEXT,
  CONSTRAINT sample_identity_is_a_uuid CHECK (length(id) = 36),
  CONSTRAINT sample_has_a_code CHECK (trim(code) <> ''),
  CONSTRAINT sample_is_of_a_finish_or_a_job CHECK (finish_id IS NOT NULL OR trim(job) <> ''),
  CONSTRAINT sample_job_is_given CHECK (trim(job) <> ''),
  CONSTRAINT sample_substance_is_given CHECK (trim(substance) <> ''),
  CONSTRAINT sample_day_is_a_day CHECK (taken_on IS strftime('%Y-%m-%d', taken_on)),
  CONSTRAINT sample_result_is_known CHECK (result IN ('found', 'free', 'inconclusive')),
  CONSTRAINT sample_is_void_for_a_reason CHECK (trim(voided_why) <> ''),
  CONSTRAINT sample_time_is_utc CHECK (recorded_at_utc IS strftime('%Y-%m-%dT%H:%M:%fZ', recorded_at_utc))
) STRICT
-- == table substance
CREATE TABLE substance (
  name TEXT NOT NULL PRIMARY KEY,
  found_means TEXT NOT NULL, -- what to know and do where it was found, in full sentences
  bars_beam INTEGER NOT NULL, -- 1: where it was found, the beam stays off
  source TEXT NOT NULL,
  CONSTRAINT substance_name_is_lower_case CHECK (name = lower(name) AND trim(name) <> ''),
  CONSTRAINT substance_found_means_something CHECK (trim(found_means) <> ''),
  CONSTRAINT substance_bars_the_beam_or_not CHECK (bars_beam IN (0, 1)),
  CONSTRAINT substance_source_is_named CHECK (trim(source) <> '')
) STRICT
-- == table substance_alias
CREATE TABLE substance_alias (
  alias TEXT NOT NULL PRIMARY KEY,
  substance TEXT NOT NULL REFERENCES substance (name),
  CONSTRAINT substance_alias_is_lower_case CHECK (alias = lower(alias) AND trim(alias) <> '')
) STRICT
-- == table unclear_word
CREATE TABLE unclear_word (
  word TEXT NOT NULL,
  about TEXT NOT NULL,
  advice TEXT NOT NULL, -- one full sentence
  PRIMARY KEY (about, word),
  CONSTRAINT unclear_word_is_lower_case CHECK (word = lower(word) AND trim(word) <> ''),
  CONSTRAINT unclear_word_is_about_a_wood_or_a_family CHECK (about IN ('wood', 'family')),
  CONSTRAINT unclear_word_comes_with_advice CHECK (trim(advice) <> '')
) STRICT
-- == table upkeep
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
) STRICT
-- == table wood
CREATE TABLE wood (
  name TEXT NOT NULL PRIMARY KEY,
  generic TEXT REFERENCES wood (name), -- the generic wood that a species belongs to
  kind TEXT NOT NULL, -- hardwood, softwood or panel
  specific_gravity REAL, -- oven-dry mass over volume at 12 % moisture, no unit
  pores TEXT NOT NULL, -- ring, semi-ring, diffuse, none; blank where unsupported
  resin TEXT NOT NULL, -- resin canals in words; blank where unsupported
  source TEXT NOT NULL,
  CONSTRAINT wood_name_is_lower_case CHECK (name = lower(name) AND trim(name) <> ''),
  CONSTRAINT wood_kind_is_known CHECK (kind IN ('hardwood', 'softwood', 'panel')),
  CONSTRAINT wood_specific_gravity_is_plausible CHECK (specific_gravity > 0 AND specific_gravity < 1.5),
  CONSTRAINT wood_pores_are_known CHECK (pores IN ('ring', 'semi-ring', 'diffuse', 'none', '')),
  CONSTRAINT wood_source_is_named CHECK (trim(source) <> '')
) STRICT
-- == table wood_alias
CREATE TABLE wood_alias (
  alias TEXT NOT NULL PRIMARY KEY,
  wood TEXT NOT NULL REFERENCES wood (name),
  CONSTRAINT wood_alias_is_lower_case CHECK (alias = lower(alias) AND trim(alias) <> '')
) STRICT
-- == trigger added_coats_are_kept
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
END
-- == trigger amended_continuous_patch_has_no_repetition_rate
CREATE TRIGGER amended_continuous_patch_has_no_repetition_rate BEFORE UPDATE OF rig_id, repetition_khz ON patch
WHEN NEW.repetition_khz IS NOT NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'cw'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a continuous rig has no repetition rate; leave it out or name a pulsed rig.');
END
-- == trigger amended_pulsed_patch_has_a_repetition_rate
CREATE TRIGGER amended_pulsed_patch_has_a_repetition_rate BEFORE UPDATE OF rig_id, repetition_khz ON patch
WHEN NEW.repetition_khz IS NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'pulsed'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a pulsed rig must have a repetition rate; none was given.');
END
-- == trigger board_changes_are_kept
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
END
-- == trigger board_is_never_deleted
CREATE TRIGGER board_is_never_deleted BEFORE DELETE ON board
BEGIN
  SELECT RAISE(ABORT, 'A board is never deleted; it stays for the patches burned on it.');
END
-- == trigger board_keeps_its_identity
CREATE TRIGGER board_keeps_its_identity BEFORE UPDATE OF id, recorded_at_utc, recorded_at_offset, recorded_by ON board
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A board keeps its identity, and who recorded it and when; only the rest can be amended.');
END
-- == trigger change_is_never_amended
CREATE TRIGGER change_is_never_amended BEFORE UPDATE ON change
BEGIN
  SELECT RAISE(ABORT, 'The history of changes is never amended.');
END
-- == trigger change_is_never_deleted
CREATE TRIGGER change_is_never_deleted BEFORE DELETE ON change
BEGIN
  SELECT RAISE(ABORT, 'The history of changes is never deleted.');
END
-- == trigger coat_changes_are_kept
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
END
-- == trigger coat_is_never_deleted
CREATE TRIGGER coat_is_never_deleted BEFORE DELETE ON coat
BEGIN
  SELECT RAISE(ABORT, 'A coat is never deleted; amend it instead.');
END
-- == trigger coat_keeps_its_identity
CREATE TRIGGER coat_keeps_its_identity BEFORE UPDATE OF finish_id, position ON coat
WHEN OLD.finish_id IS NOT NEW.finish_id OR OLD.position IS NOT NEW.position
BEGIN
  SELECT RAISE(ABORT, 'A coat keeps its place, and who recorded it and when; only the rest can be amended.');
END
-- == trigger continuous_patch_has_no_repetition_rate
CREATE TRIGGER continuous_patch_has_no_repetition_rate BEFORE INSERT ON patch
WHEN NEW.repetition_khz IS NOT NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'cw'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a continuous rig has no repetition rate; leave it out or name a pulsed rig.');
END
-- == trigger finish_changes_are_kept
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
END
-- == trigger finish_is_never_deleted
CREATE TRIGGER finish_is_never_deleted BEFORE DELETE ON finish
BEGIN
  SELECT RAISE(ABORT, 'A finish is never deleted; it stays for the patches burned on it.');
END
-- == trigger finish_keeps_its_identity
CREATE TRIGGER finish_keeps_its_identity BEFORE UPDATE OF id, recorded_at_utc, recorded_at_offset, recorded_by ON finish
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A finish keeps its identity, and who recorded it and when; only the rest can be amended.');
END
-- == trigger own_family_changes_are_kept
CREATE TRIGGER own_family_changes_are_kept AFTER UPDATE ON own_family
WHEN OLD.like_family IS NOT NEW.like_family
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    'own_family.like_family', OLD.id, OLD.like_family, NEW.like_family, a.reason
  FROM (SELECT 1) LEFT JOIN amending a ON a.only = 1;
END
-- == trigger own_family_is_never_deleted
CREATE TRIGGER own_family_is_never_deleted BEFORE DELETE ON own_family
BEGIN
  SELECT RAISE(ABORT, 'A coating family that was added is never deleted.');
END
-- == trigger own_family_keeps_its_identity
CREATE TRIGGER own_family_keeps_its_identity BEFORE UPDATE OF id, name, recorded_at_utc, recorded_at_offset, recorded_by ON own_family
WHEN OLD.id IS NOT NEW.id OR OLD.name IS NOT NEW.name OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A coating family keeps its name, and who recorded it and when; only the family that it is like can be amended.');
END
-- == trigger own_wood_changes_are_kept
CREATE TRIGGER own_wood_changes_are_kept AFTER UPDATE ON own_wood
WHEN OLD.like_wood IS NOT NEW.like_wood
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    'own_wood.like_wood', OLD.id, OLD.like_wood, NEW.like_wood, a.reason
  FROM (SELECT 1) LEFT JOIN amending a ON a.only = 1;
END
-- == trigger own_wood_is_never_deleted
CREATE TRIGGER own_wood_is_never_deleted BEFORE DELETE ON own_wood
BEGIN
  SELECT RAISE(ABORT, 'A wood that was added is never deleted.');
END
-- == trigger own_wood_keeps_its_identity
CREATE TRIGGER own_wood_keeps_its_identity BEFORE UPDATE OF id, name, recorded_at_utc, recorded_at_offset, recorded_by ON own_wood
WHEN OLD.id IS NOT NEW.id OR OLD.name IS NOT NEW.name OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A wood keeps its name, and who recorded it and when; only the wood that it is like can be amended.');
END
-- == trigger patch_changes_are_kept
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
END
-- == trigger patch_is_never_deleted
CREATE TRIGGER patch_is_never_deleted BEFORE DELETE ON patch
BEGIN
  SELECT RAISE(ABORT, 'A patch is never deleted; void it instead.');
END
-- == trigger patch_keeps_its_identity
CREATE TRIGGER patch_keeps_its_identity BEFORE UPDATE OF recorded, id, code, recorded_at_utc, recorded_at_offset, recorded_by, brought_in_by ON patch
WHEN OLD.recorded IS NOT NEW.recorded OR OLD.id IS NOT NEW.id OR OLD.code IS NOT NEW.code OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by OR OLD.brought_in_by IS NOT NEW.brought_in_by
BEGIN
  SELECT RAISE(ABORT, 'A patch keeps its identity and code, and who recorded it and when; only the rest can be amended.');
END
-- == trigger photo_changes_are_kept
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
END
-- == trigger photo_is_never_deleted
CREATE TRIGGER photo_is_never_deleted BEFORE DELETE ON photo
BEGIN
  SELECT RAISE(ABORT, 'A photo is never deleted; void the patch if it is wrong.');
END
-- == trigger photo_keeps_its_identity
CREATE TRIGGER photo_keeps_its_identity BEFORE UPDATE OF id, patch_id, content, recorded_by, sha256 ON photo
WHEN OLD.id IS NOT NEW.id OR OLD.patch_id IS NOT NEW.patch_id OR OLD.content IS NOT NEW.content OR OLD.recorded_by IS NOT NEW.recorded_by OR OLD.sha256 IS NOT NEW.sha256
BEGIN
  SELECT RAISE(ABORT, 'A photo keeps its identity, and who recorded it and when; only the rest can be amended.');
END
-- == trigger planned_patch_changes_are_kept
CREATE TRIGGER planned_patch_changes_are_kept AFTER UPDATE ON planned_patch
WHEN OLD.voided_why IS NOT NEW.voided_why
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    'planned_patch.voided_why', OLD.id, OLD.voided_why, NEW.voided_why, a.reason
  FROM (SELECT 1) LEFT JOIN amending a ON a.only = 1;
END
-- == trigger planned_patch_is_fulfilled_once
CREATE TRIGGER planned_patch_is_fulfilled_once BEFORE UPDATE ON planned_patch
WHEN OLD.patch_id IS NOT NULL
BEGIN
  SELECT RAISE(ABORT, 'A planned patch is fulfilled once, and then stays so.');
END
-- == trigger planned_patch_is_never_deleted
CREATE TRIGGER planned_patch_is_never_deleted BEFORE DELETE ON planned_patch
BEGIN
  SELECT RAISE(ABORT, 'A planned patch is never deleted; void it if it is not to be burned.');
END
-- == trigger planned_patch_stays_as_it_was_planned
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
END
-- == trigger power_check_changes_are_kept
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
END
-- == trigger power_check_is_never_deleted
CREATE TRIGGER power_check_is_never_deleted BEFORE DELETE ON power_check
BEGIN
  SELECT RAISE(ABORT, 'A power check is never deleted; amend it, or void it.');
END
-- == trigger power_check_keeps_its_identity
CREATE TRIGGER power_check_keeps_its_identity BEFORE UPDATE OF id, recorded_by ON power_check
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A power check keeps its identity, and who recorded it and when; only the rest can be amended.');
END
-- == trigger pulsed_patch_has_a_repetition_rate
CREATE TRIGGER pulsed_patch_has_a_repetition_rate BEFORE INSERT ON patch
WHEN NEW.repetition_khz IS NULL AND (SELECT emission FROM rig WHERE id = NEW.rig_id) = 'pulsed'
BEGIN
  SELECT RAISE(ABORT, 'A patch burned with a pulsed rig must have a repetition rate; none was given.');
END
-- == trigger reading_changes_are_kept
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
END
-- == trigger reading_is_never_deleted
CREATE TRIGGER reading_is_never_deleted BEFORE DELETE ON reading
BEGIN
  SELECT RAISE(ABORT, 'A reading is never deleted; amend it, or void the patch.');
END
-- == trigger reading_keeps_its_identity
CREATE TRIGGER reading_keeps_its_identity BEFORE UPDATE OF id, patch_id ON reading
WHEN OLD.id IS NOT NEW.id OR OLD.patch_id IS NOT NEW.patch_id
BEGIN
  SELECT RAISE(ABORT, 'A reading keeps its identity, and who recorded it and when; only the rest can be amended.');
END
-- == trigger rig_changes_are_kept
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
END
-- == trigger rig_is_never_deleted
CREATE TRIGGER rig_is_never_deleted BEFORE DELETE ON rig
BEGIN
  SELECT RAISE(ABORT, 'A rig is never deleted; it stays for the patches burned with it.');
END
-- == trigger rig_keeps_its_identity
CREATE TRIGGER rig_keeps_its_identity BEFORE UPDATE OF id, recorded_at_utc, recorded_at_offset, recorded_by ON rig
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A rig keeps its identity, and who recorded it and when; only the rest can be amended.');
END
-- == trigger rig_with_patches_keeps_its_light
CREATE TRIGGER rig_with_patches_keeps_its_light BEFORE UPDATE OF emission ON rig
WHEN OLD.emission IS NOT NEW.emission AND EXISTS (SELECT 1 FROM patch WHERE rig_id = OLD.id)
BEGIN
  SELECT RAISE(ABORT, 'A rig that has burned patches stays pulsed or continuous as it was; add a new rig instead.');
END
-- == trigger sample_changes_are_kept
CREATE TRIGGER sample_changes_are_kept AFTER UPDATE ON sample
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.id, c.before, c.after, a.reason
  FROM (
    SELECT 'sample.finish_id' AS what, OLD.finish_id AS before, NEW.finish_id AS after
    UNION ALL SELECT 'sample.job', OLD.job, NEW.job
    UNION ALL SELECT 'sample.substance', OLD.substance, NEW.substance
    UNION ALL SELECT 'sample.taken_on', OLD.taken_on, NEW.taken_on
    UNION ALL SELECT 'sample.tested_by', OLD.tested_by, NEW.tested_by
    UNION ALL SELECT 'sample.reference', OLD.reference, NEW.reference
    UNION ALL SELECT 'sample.result', OLD.result, NEW.result
    UNION ALL SELECT 'sample.value', OLD.value, NEW.value
    UNION ALL SELECT 'sample.note', OLD.note, NEW.note
    UNION ALL SELECT 'sample.voided_why', OLD.voided_why, NEW.voided_why
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END
-- == trigger sample_is_never_deleted
CREATE TRIGGER sample_is_never_deleted BEFORE DELETE ON sample
BEGIN
  SELECT RAISE(ABORT, 'A sample result is never deleted; void it instead.');
END
-- == trigger sample_keeps_its_identity
CREATE TRIGGER sample_keeps_its_identity BEFORE UPDATE OF id, code, recorded_at_utc, recorded_at_offset, recorded_by ON sample
WHEN OLD.id IS NOT NEW.id OR OLD.code IS NOT NEW.code OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A sample result keeps its identity and code, and who recorded it and when; only the rest can be amended.');
END
-- == trigger upkeep_changes_are_kept
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
END
-- == trigger upkeep_is_never_deleted
CREATE TRIGGER upkeep_is_never_deleted BEFORE DELETE ON upkeep
BEGIN
  SELECT RAISE(ABORT, 'Upkeep is never deleted; amend it, or void it.');
END
-- == trigger upkeep_keeps_its_identity
CREATE TRIGGER upkeep_keeps_its_identity BEFORE UPDATE OF id, recorded_by ON upkeep
WHEN OLD.id IS NOT NEW.id OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'Upkeep keeps its identity and who recorded it; only the rest can be amended.');
END
-- == view board_known_as
CREATE VIEW board_known_as (name, id, former) AS
SELECT n.name, coalesce(j.target, n.id), n.former
FROM (
  SELECT name, id, joined_into IS NOT NULL AS former FROM board
  UNION ALL SELECT before, row_id, 2 FROM change WHERE what = 'board.name' AND before IS NOT NULL
) n LEFT JOIN joined_board j ON j.id = n.id
-- == view finish_known_as
CREATE VIEW finish_known_as (name, id, former) AS
SELECT n.name, coalesce(j.target, n.id), n.former
FROM (
  SELECT name, id, joined_into IS NOT NULL AS former FROM finish
  UNION ALL SELECT before, row_id, 2 FROM change WHERE what = 'finish.name' AND before IS NOT NULL
) n LEFT JOIN joined_finish j ON j.id = n.id
-- == view joined_board
CREATE VIEW joined_board (id, target) AS
WITH RECURSIVE chain (id, target) AS (
  SELECT id, joined_into FROM board
  WHERE joined_into IS NOT NULL AND joined_into IN (SELECT id FROM board WHERE joined_into IS NULL)
  UNION SELECT board.id, chain.target FROM board JOIN chain ON board.joined_into = chain.id)
SELECT id, target FROM chain
-- == view joined_finish
CREATE VIEW joined_finish (id, target) AS
WITH RECURSIVE chain (id, target) AS (
  SELECT id, joined_into FROM finish
  WHERE joined_into IS NOT NULL AND joined_into IN (SELECT id FROM finish WHERE joined_into IS NULL)
  UNION SELECT finish.id, chain.target FROM finish JOIN chain ON finish.joined_into = chain.id)
SELECT id, target FROM chain
-- == view joined_rig
CREATE VIEW joined_rig (id, target) AS
WITH RECURSIVE chain (id, target) AS (
  SELECT id, joined_into FROM rig
  WHERE joined_into IS NOT NULL AND joined_into IN (SELECT id FROM rig WHERE joined_into IS NULL)
  UNION SELECT rig.id, chain.target FROM rig JOIN chain ON rig.joined_into = chain.id)
SELECT id, target FROM chain
-- == view rig_known_as
CREATE VIEW rig_known_as (name, id, former) AS
SELECT n.name, coalesce(j.target, n.id), n.former
FROM (
  SELECT name, id, joined_into IS NOT NULL AS former FROM rig
  UNION ALL SELECT before, row_id, 2 FROM change WHERE what = 'rig.name' AND before IS NOT NULL
) n LEFT JOIN joined_rig j ON j.id = n.id
