-- Words and facts that come with the program: woods, coating families, cautions.
-- Every value names its source. The rows follow in later migrations.

PRAGMA application_id = 1667789420; -- the letters "chrl": marks the file as a charline log

-- A wood: a species, or a generic wood as people name it.
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
) STRICT;

CREATE TABLE wood_alias (
  alias TEXT NOT NULL PRIMARY KEY,
  wood TEXT NOT NULL REFERENCES wood (name),
  CONSTRAINT wood_alias_is_lower_case CHECK (alias = lower(alias) AND trim(alias) <> '')
) STRICT;

CREATE TABLE coating_family (
  name TEXT NOT NULL PRIMARY KEY,
  usual_film TEXT NOT NULL, -- usual dry film in words, with its unit
  clue TEXT NOT NULL, -- how to tell it in the field
  behaviour TEXT NOT NULL, -- under the beam
  source TEXT NOT NULL,
  CONSTRAINT family_name_is_lower_case CHECK (name = lower(name) AND trim(name) <> ''),
  CONSTRAINT family_source_is_named CHECK (trim(source) <> '')
) STRICT;

CREATE TABLE family_alias (
  alias TEXT NOT NULL PRIMARY KEY,
  family TEXT NOT NULL REFERENCES coating_family (name),
  CONSTRAINT family_alias_is_lower_case CHECK (alias = lower(alias) AND trim(alias) <> '')
) STRICT;

CREATE TABLE caution (
  rank INTEGER NOT NULL PRIMARY KEY, -- most serious first
  topic TEXT NOT NULL,
  text TEXT NOT NULL, -- what to know and do, in full sentences
  source TEXT NOT NULL,
  CONSTRAINT caution_topic_is_given CHECK (trim(topic) <> ''),
  CONSTRAINT caution_text_is_given CHECK (trim(text) <> ''),
  CONSTRAINT caution_source_is_named CHECK (trim(source) <> '')
) STRICT;

-- When a caution is shown. All that a row names must hold; one such row is enough.
CREATE TABLE caution_scope (
  caution INTEGER NOT NULL REFERENCES caution (rank),
  family TEXT REFERENCES coating_family (name),
  wood TEXT REFERENCES wood (name),
  wood_kind TEXT,
  form TEXT,
  emission TEXT,
  CONSTRAINT scope_wood_kind_is_known CHECK (wood_kind IN ('hardwood', 'softwood', 'panel')),
  CONSTRAINT scope_form_is_known CHECK (form IN ('solid', 'veneer', 'plywood', 'mdf')),
  CONSTRAINT scope_emission_is_known CHECK (emission IN ('pulsed', 'cw'))
) STRICT;
