-- More words of the trade, words that a person adds, and bed liner as a family of its own.

-- A wood that somebody added, beside its row in wood. Class, pores, resin and cautions are those of
-- the wood that it is like.
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
) STRICT;

-- A coating family that somebody added. It is never without the cautions of the family that it is like.
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
) STRICT;

CREATE TRIGGER own_wood_changes_are_kept AFTER UPDATE ON own_wood
WHEN OLD.like_wood IS NOT NEW.like_wood
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    'own_wood.like_wood', OLD.id, OLD.like_wood, NEW.like_wood, a.reason
  FROM (SELECT 1) LEFT JOIN amending a ON a.only = 1;
END;

CREATE TRIGGER own_family_changes_are_kept AFTER UPDATE ON own_family
WHEN OLD.like_family IS NOT NEW.like_family
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    'own_family.like_family', OLD.id, OLD.like_family, NEW.like_family, a.reason
  FROM (SELECT 1) LEFT JOIN amending a ON a.only = 1;
END;

CREATE TRIGGER own_wood_keeps_its_identity BEFORE UPDATE OF id, name, recorded_at_utc, recorded_at_offset, recorded_by ON own_wood
WHEN OLD.id IS NOT NEW.id OR OLD.name IS NOT NEW.name OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A wood keeps its name, and who recorded it and when; only the wood that it is like can be amended.');
END;

CREATE TRIGGER own_family_keeps_its_identity BEFORE UPDATE OF id, name, recorded_at_utc, recorded_at_offset, recorded_by ON own_family
WHEN OLD.id IS NOT NEW.id OR OLD.name IS NOT NEW.name OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A coating family keeps its name, and who recorded it and when; only the family that it is like can be amended.');
END;

CREATE TRIGGER own_wood_is_never_deleted BEFORE DELETE ON own_wood
BEGIN
  SELECT RAISE(ABORT, 'A wood that was added is never deleted.');
END;

CREATE TRIGGER own_family_is_never_deleted BEFORE DELETE ON own_family
BEGIN
  SELECT RAISE(ABORT, 'A coating family that was added is never deleted.');
END;

-- Words that people use and that name no wood or no family: what to say instead.
CREATE TABLE unclear_word (
  word TEXT NOT NULL,
  about TEXT NOT NULL,
  advice TEXT NOT NULL, -- one full sentence
  PRIMARY KEY (about, word),
  CONSTRAINT unclear_word_is_lower_case CHECK (word = lower(word) AND trim(word) <> ''),
  CONSTRAINT unclear_word_is_about_a_wood_or_a_family CHECK (about IN ('wood', 'family')),
  CONSTRAINT unclear_word_comes_with_advice CHECK (trim(advice) <> '')
) STRICT;

INSERT INTO unclear_word (word, about, advice) VALUES
  ('parquet', 'wood', 'Parquet is a floor, not a wood; name the wood that it is made of, such as oak or beech.'),
  ('parquetry', 'wood', 'Parquetry is a floor, not a wood; name the wood that it is made of, such as oak or beech.'),
  ('floorboard', 'wood', 'Floorboards are a use, not a wood; name the wood, such as pine or oak.'),
  ('floorboards', 'wood', 'Floorboards are a use, not a wood; name the wood, such as pine or oak.'),
  ('floor boards', 'wood', 'Floorboards are a use, not a wood; name the wood, such as pine or oak.'),
  ('veneer', 'wood', 'Veneer is a form, not a wood; name the wood of the face, and give veneer as the form.'),
  ('paint', 'family', 'Paint may be latex, alkyd or milk paint, which differ under the beam; name one of them.');

-- Specific gravity is oven-dry mass over volume at 12 % moisture. European and tropical woods carry
-- none: published densities include the water. The names are those that joinery, floors and boats
-- of Europe and North America use. Where a trade name means several species, the source says so.
INSERT INTO wood (name, generic, kind, specific_gravity, pores, resin, source) VALUES
  ('scots pine', 'pine', 'softwood', NULL, 'none', 'many',
    'name: EN 13556:2003; resin canals: European Wood, species description of pine'),
  ('maritime pine', 'pine', 'softwood', NULL, 'none', 'many',
    'name: EN 13556:2003; resin canals: European Wood, species description of pine'),
  ('pitch pine', 'pine', 'softwood', NULL, 'none', 'many',
    'trade name of several resinous pines: longleaf and slash pine in Europe, Pinus rigida in North America; no number, as the species is open'),
  ('yellow pine', 'pine', 'softwood', NULL, 'none', 'many',
    'trade name of several pines: the southern pines in North America, Pinus strobus in Britain; no number, as the species is open'),
  ('southern pine', 'pine', 'softwood', NULL, 'none', 'many',
    'USDA Wood Handbook FPL-GTR-190 (2010), chapter 2: longleaf, shortleaf, loblolly and slash pine sold together; no number, as the species is open'),
  ('slash pine', 'pine', 'softwood', 0.59, 'none', 'many',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin canals: as other southern pines'),
  ('virginia pine', 'pine', 'softwood', 0.48, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('red pine', 'pine', 'softwood', 0.46, 'none', 'yes',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin: chapter 2, somewhat resinous'),
  ('jack pine', 'pine', 'softwood', 0.43, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('radiata pine', 'pine', 'softwood', NULL, 'none', 'many',
    'name: EN 13556:2003; resin canals: as the genus'),
  ('parana pine', 'softwood', 'softwood', NULL, 'none', '',
    'name: EN 13556:2003; resin left out'),
  ('norway spruce', 'spruce', 'softwood', NULL, 'none', 'few',
    'name: EN 13556:2003; resin canals: as the genus'),
  ('white spruce', 'spruce', 'softwood', 0.36, 'none', 'few',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin canals: as the genus'),
  ('engelmann spruce', 'spruce', 'softwood', 0.35, 'none', 'few',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin canals: as the genus'),
  ('silver fir', 'fir', 'softwood', NULL, 'none', '',
    'name: EN 13556:2003; resin left out'),
  ('white fir', 'fir', 'softwood', 0.39, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('balsam fir', 'fir', 'softwood', 0.35, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('noble fir', 'fir', 'softwood', 0.39, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('european larch', 'larch', 'softwood', NULL, 'none', '',
    'name: EN 13556:2003; resin left out'),
  ('siberian larch', 'larch', 'softwood', NULL, 'none', '',
    'name: EN 13556:2003; resin left out'),
  ('western larch', 'larch', 'softwood', 0.52, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('tamarack', 'larch', 'softwood', 0.53, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('eastern hemlock', 'hemlock', 'softwood', 0.40, 'none', 'none normally',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin canals: as western hemlock'),
  ('yellow cedar', 'cedar', 'softwood', 0.44, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('port orford cedar', 'cedar', 'softwood', 0.43, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('atlantic white cedar', 'cedar', 'softwood', 0.32, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('northern white cedar', 'cedar', 'softwood', 0.31, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('eastern redcedar', 'cedar', 'softwood', 0.47, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('incense cedar', 'cedar', 'softwood', 0.37, 'none', '',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; resin left out'),
  ('cedar of lebanon', 'cedar', 'softwood', NULL, 'none', '',
    'name: EN 13556:2003; resin left out'),
  ('yew', 'softwood', 'softwood', NULL, 'none', '',
    'name: EN 13556:2003; resin left out'),
  ('kauri', 'softwood', 'softwood', NULL, 'none', '',
    'name: EN 13556:2003; resin left out'),
  ('european oak', 'oak', 'hardwood', NULL, 'ring', 'none',
    'name: EN 13556:2003; pores: European Wood, species description of oak'),
  ('southern red oak', 'oak', 'hardwood', 0.59, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('black oak', 'oak', 'hardwood', 0.61, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('bur oak', 'oak', 'hardwood', 0.64, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('chestnut oak', 'oak', 'hardwood', 0.66, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('post oak', 'oak', 'hardwood', 0.67, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('european ash', 'ash', 'hardwood', NULL, 'ring', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('black ash', 'ash', 'hardwood', 0.49, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('green ash', 'ash', 'hardwood', 0.56, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('oregon ash', 'ash', 'hardwood', 0.55, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('european elm', 'elm', 'hardwood', NULL, 'ring', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('rock elm', 'elm', 'hardwood', 0.63, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('slippery elm', 'elm', 'hardwood', 0.53, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('sweet chestnut', 'chestnut', 'hardwood', NULL, 'ring', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('pecan', 'hickory', 'hardwood', 0.66, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('mockernut hickory', 'hickory', 'hardwood', 0.72, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('black locust', 'hardwood', 'hardwood', 0.69, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('hackberry', 'hardwood', 'hardwood', 0.53, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: F. Roth, Timber (1895), key in W. Noyes, Wood and Forest'),
  ('european walnut', 'walnut', 'hardwood', NULL, 'semi-ring', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('european cherry', 'cherry', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; pore class left out'),
  ('european beech', 'beech', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: F. Roth, Timber (1895), by genus'),
  ('european birch', 'birch', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('sweet birch', 'birch', 'hardwood', 0.65, 'diffuse', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('hornbeam', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; pore class left out'),
  ('sycamore maple', 'maple', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('norway maple', 'maple', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('field maple', 'maple', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('soft maple', 'maple', 'hardwood', NULL, 'diffuse', 'none',
    'trade name of several maples; no number, as the species is open; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('silver maple', 'maple', 'hardwood', 0.47, 'diffuse', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('black maple', 'maple', 'hardwood', 0.57, 'diffuse', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('bigleaf maple', 'maple', 'hardwood', 0.48, 'diffuse', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('european lime', 'lime', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('european alder', 'alder', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: as the generic wood'),
  ('european aspen', 'poplar', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: as the generic wood'),
  ('cottonwood', 'poplar', 'hardwood', 0.40, 'diffuse', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture, eastern cottonwood; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('london plane', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; pore class left out'),
  ('black willow', 'hardwood', 'hardwood', 0.39, 'diffuse', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: S. J. Record, The Mechanical Properties of Wood (1914), by genus'),
  ('southern magnolia', 'hardwood', 'hardwood', 0.50, '', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pore class left out'),
  ('black tupelo', 'hardwood', 'hardwood', 0.50, '', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pore class left out'),
  ('sassafras', 'hardwood', 'hardwood', 0.46, 'ring', 'none',
    'USDA Wood Handbook FPL-GTR-190 (2010), Table 5-3a, specific gravity at 12 % moisture; pores: F. Roth, Timber (1895), key in W. Noyes, Wood and Forest'),
  ('pear', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; pore class left out'),
  ('apple', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; pore class left out'),
  ('boxwood', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; pore class left out'),
  ('iroko', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('sapele', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('utile', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('african mahogany', 'mahogany', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('american mahogany', 'mahogany', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('afrormosia', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('afzelia', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('meranti', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('keruing', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('idigbo', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('okoume', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('obeche', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('jatoba', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('ipe', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('jarrah', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('wenge', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('rosewood', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('ramin', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('purpleheart', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('opepe', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('greenheart', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('balau', 'hardwood', 'hardwood', NULL, '', 'none',
    'name: EN 13556:2003; specific gravity at 12 % moisture and pore class left out: no source read'),
  ('merbau', 'hardwood', 'hardwood', NULL, 'diffuse', 'none',
    'name: EN 13556:2003; pores: H. G. Richter and M. J. Dallwitz, Commercial Timbers'),
  ('hdf', NULL, 'panel', NULL, '', '',
    'panel product, not a species: common practice, no published source'),
  ('osb', NULL, 'panel', NULL, '', '',
    'panel product, not a species: common practice, no published source'),
  ('blockboard', NULL, 'panel', NULL, '', '',
    'panel product, not a species: common practice, no published source'),
  ('bamboo', NULL, 'panel', NULL, '', '',
    'glued strips of a grass, not a wood: common practice, no published source');

INSERT INTO wood_alias (alias, wood) VALUES
  ('scotch pine', 'scots pine'),
  ('european redwood', 'scots pine'),
  ('baltic redwood', 'scots pine'),
  ('baltic pine', 'scots pine'),
  ('nordic pine', 'scots pine'),
  ('red deal', 'scots pine'),
  ('yellow deal', 'scots pine'),
  ('european pine', 'scots pine'),
  ('pinus sylvestris', 'scots pine'),
  ('pinus pinaster', 'maritime pine'),
  ('pitchpine', 'pitch pine'),
  ('american pitch pine', 'pitch pine'),
  ('pinus rigida', 'pitch pine'),
  ('southern yellow pine', 'southern pine'),
  ('syp', 'southern pine'),
  ('pinus elliottii', 'slash pine'),
  ('pinus virginiana', 'virginia pine'),
  ('norway pine', 'red pine'),
  ('pinus resinosa', 'red pine'),
  ('pinus banksiana', 'jack pine'),
  ('monterey pine', 'radiata pine'),
  ('pinus radiata', 'radiata pine'),
  ('brazilian pine', 'parana pine'),
  ('araucaria angustifolia', 'parana pine'),
  ('columbian pine', 'douglas-fir'),
  ('british columbian pine', 'douglas-fir'),
  ('western yellow pine', 'ponderosa pine'),
  ('weymouth pine', 'eastern white pine'),
  ('northern white pine', 'eastern white pine'),
  ('european spruce', 'norway spruce'),
  ('european whitewood', 'norway spruce'),
  ('white deal', 'norway spruce'),
  ('picea abies', 'norway spruce'),
  ('picea glauca', 'white spruce'),
  ('picea engelmannii', 'engelmann spruce'),
  ('european silver fir', 'silver fir'),
  ('european fir', 'silver fir'),
  ('abies alba', 'silver fir'),
  ('abies concolor', 'white fir'),
  ('abies balsamea', 'balsam fir'),
  ('abies procera', 'noble fir'),
  ('larix decidua', 'european larch'),
  ('larix sibirica', 'siberian larch'),
  ('larix occidentalis', 'western larch'),
  ('american larch', 'tamarack'),
  ('larix laricina', 'tamarack'),
  ('tsuga canadensis', 'eastern hemlock'),
  ('alaska cedar', 'yellow cedar'),
  ('alaska yellow cedar', 'yellow cedar'),
  ('nootka cypress', 'yellow cedar'),
  ('callitropsis nootkatensis', 'yellow cedar'),
  ('port-orford white cedar', 'port orford cedar'),
  ('lawson cypress', 'port orford cedar'),
  ('chamaecyparis lawsoniana', 'port orford cedar'),
  ('white cedar', 'atlantic white cedar'),
  ('chamaecyparis thyoides', 'atlantic white cedar'),
  ('thuja occidentalis', 'northern white cedar'),
  ('eastern red cedar', 'eastern redcedar'),
  ('aromatic cedar', 'eastern redcedar'),
  ('juniperus virginiana', 'eastern redcedar'),
  ('calocedrus decurrens', 'incense cedar'),
  ('cedrus libani', 'cedar of lebanon'),
  ('taxus baccata', 'yew'),
  ('kauri pine', 'kauri'),
  ('agathis australis', 'kauri'),
  ('californian redwood', 'redwood'),
  ('california redwood', 'redwood'),
  ('sequoia', 'redwood'),
  ('english oak', 'european oak'),
  ('french oak', 'european oak'),
  ('baltic oak', 'european oak'),
  ('european white oak', 'european oak'),
  ('pedunculate oak', 'european oak'),
  ('sessile oak', 'european oak'),
  ('quercus robur', 'european oak'),
  ('quercus petraea', 'european oak'),
  ('quercus falcata', 'southern red oak'),
  ('quercus velutina', 'black oak'),
  ('quercus macrocarpa', 'bur oak'),
  ('quercus montana', 'chestnut oak'),
  ('quercus prinus', 'chestnut oak'),
  ('quercus stellata', 'post oak'),
  ('common ash', 'european ash'),
  ('fraxinus excelsior', 'european ash'),
  ('fraxinus nigra', 'black ash'),
  ('fraxinus pennsylvanica', 'green ash'),
  ('fraxinus latifolia', 'oregon ash'),
  ('english elm', 'european elm'),
  ('wych elm', 'european elm'),
  ('dutch elm', 'european elm'),
  ('ulmus procera', 'european elm'),
  ('ulmus glabra', 'european elm'),
  ('ulmus thomasii', 'rock elm'),
  ('red elm', 'slippery elm'),
  ('ulmus rubra', 'slippery elm'),
  ('european chestnut', 'sweet chestnut'),
  ('spanish chestnut', 'sweet chestnut'),
  ('castanea sativa', 'sweet chestnut'),
  ('carya illinoinensis', 'pecan'),
  ('carya tomentosa', 'mockernut hickory'),
  ('robinia', 'black locust'),
  ('false acacia', 'black locust'),
  ('robinia pseudoacacia', 'black locust'),
  ('celtis occidentalis', 'hackberry'),
  ('english walnut', 'european walnut'),
  ('french walnut', 'european walnut'),
  ('juglans regia', 'european walnut'),
  ('wild cherry', 'european cherry'),
  ('gean', 'european cherry'),
  ('prunus avium', 'european cherry'),
  ('steamed beech', 'european beech'),
  ('fagus sylvatica', 'european beech'),
  ('silver birch', 'european birch'),
  ('downy birch', 'european birch'),
  ('betula pendula', 'european birch'),
  ('betula pubescens', 'european birch'),
  ('betula lenta', 'sweet birch'),
  ('european hornbeam', 'hornbeam'),
  ('carpinus betulus', 'hornbeam'),
  ('european sycamore', 'sycamore maple'),
  ('sycamore plane', 'sycamore maple'),
  ('acer pseudoplatanus', 'sycamore maple'),
  ('acer platanoides', 'norway maple'),
  ('acer campestre', 'field maple'),
  ('acer saccharinum', 'silver maple'),
  ('acer nigrum', 'black maple'),
  ('acer macrophyllum', 'bigleaf maple'),
  ('small-leaved lime', 'european lime'),
  ('tilia cordata', 'european lime'),
  ('black alder', 'european alder'),
  ('common alder', 'european alder'),
  ('alnus glutinosa', 'european alder'),
  ('populus tremula', 'european aspen'),
  ('eastern cottonwood', 'cottonwood'),
  ('populus deltoides', 'cottonwood'),
  ('european plane', 'london plane'),
  ('plane tree', 'london plane'),
  ('lacewood', 'london plane'),
  ('salix nigra', 'black willow'),
  ('magnolia grandiflora', 'southern magnolia'),
  ('black gum', 'black tupelo'),
  ('nyssa sylvatica', 'black tupelo'),
  ('sassafras albidum', 'sassafras'),
  ('pearwood', 'pear'),
  ('pyrus communis', 'pear'),
  ('applewood', 'apple'),
  ('malus sylvestris', 'apple'),
  ('buxus sempervirens', 'boxwood'),
  ('kambala', 'iroko'),
  ('milicia excelsa', 'iroko'),
  ('chlorophora excelsa', 'iroko'),
  ('sapelli', 'sapele'),
  ('sapeli', 'sapele'),
  ('sapele mahogany', 'sapele'),
  ('entandrophragma cylindricum', 'sapele'),
  ('sipo', 'utile'),
  ('entandrophragma utile', 'utile'),
  ('khaya', 'african mahogany'),
  ('khaya ivorensis', 'african mahogany'),
  ('honduras mahogany', 'american mahogany'),
  ('cuban mahogany', 'american mahogany'),
  ('brazilian mahogany', 'american mahogany'),
  ('swietenia macrophylla', 'american mahogany'),
  ('swietenia mahagoni', 'american mahogany'),
  ('pericopsis elata', 'afrormosia'),
  ('doussie', 'afzelia'),
  ('red meranti', 'meranti'),
  ('dark red meranti', 'meranti'),
  ('lauan', 'meranti'),
  ('philippine mahogany', 'meranti'),
  ('dipterocarpus', 'keruing'),
  ('framire', 'idigbo'),
  ('terminalia ivorensis', 'idigbo'),
  ('gaboon', 'okoume'),
  ('aucoumea klaineana', 'okoume'),
  ('wawa', 'obeche'),
  ('ayous', 'obeche'),
  ('triplochiton scleroxylon', 'obeche'),
  ('brazilian cherry', 'jatoba'),
  ('hymenaea courbaril', 'jatoba'),
  ('brazilian walnut', 'ipe'),
  ('lapacho', 'ipe'),
  ('eucalyptus marginata', 'jarrah'),
  ('millettia laurentii', 'wenge'),
  ('palisander', 'rosewood'),
  ('nauclea diderrichii', 'opepe'),
  ('yellow balau', 'balau'),
  ('bangkirai', 'balau'),
  ('kwila', 'merbau'),
  ('intsia bijuga', 'merbau'),
  ('burma teak', 'teak'),
  ('tectona grandis', 'teak'),
  ('hardboard', 'hdf'),
  ('high density fibreboard', 'hdf'),
  ('high density fiberboard', 'hdf'),
  ('oriented strand board', 'osb'),
  ('laminboard', 'blockboard'),
  ('marine ply', 'plywood'),
  ('marine plywood', 'plywood'),
  ('birch ply', 'plywood'),
  ('birch plywood', 'plywood');

-- New woods call for what their generic wood calls for, so that nothing is left out.
INSERT INTO caution_scope (caution, family, wood, wood_kind, form, emission, coat_word, board_word)
SELECT s.caution, s.family, w.name, s.wood_kind, s.form, s.emission, s.coat_word, s.board_word
FROM caution_scope s JOIN wood w ON w.generic = s.wood
WHERE w.rowid > (SELECT rowid FROM wood WHERE name = 'western redcedar')
  AND w.resin NOT IN ('none normally')
  AND NOT EXISTS (SELECT 1 FROM caution_scope o WHERE o.caution = s.caution AND o.wood = w.name
    AND o.family IS s.family AND o.wood_kind IS s.wood_kind AND o.form IS s.form AND o.emission IS s.emission
    AND o.coat_word IS s.coat_word AND o.board_word IS s.board_word);

-- Other glued panels, and bamboo, whose strips are glued too, call for what a panel calls for.
INSERT INTO caution_scope (caution, family, wood, wood_kind, form, emission, coat_word, board_word)
SELECT s.caution, s.family, w.name, s.wood_kind, s.form, s.emission, s.coat_word, s.board_word
FROM caution_scope s JOIN wood w ON w.name IN ('hdf', 'osb', 'blockboard', 'bamboo')
WHERE s.wood = 'mdf';

-- Bed liner (polyurethane or polyurea) and textured coats of mineral filler have neither behaviour
-- nor hazard in common: isocyanates here, asbestos there.
INSERT INTO coating_family (name, usual_film, clue, behaviour, source) VALUES
  ('bed liner', 'about 750 to 3000 um (30 to 125 mil)',
    'Rubbery and pebbled to the touch; it dents under a nail and does not chip.',
    'Many passes with heavy isocyanate fume; think of other methods first.',
    'Film: from memory; clue and behaviour: common practice, no published source');

UPDATE coating_family SET
  usual_film = 'about 2000 to 3000 um (80 to 120 mil)',
  clue = 'Peaks, combed or swirled patterns, hard, white under later paint.',
  behaviour = 'Thick and mineral: it chips and dusts instead of lifting. No beam before a sample says that it is free of asbestos.',
  source = 'Film: isurv, asbestos surveys; clue: UK Health and Safety Executive, Asbestos essentials, Textured coatings (2023); behaviour: common practice, no published source'
WHERE name = 'textured coat';

UPDATE family_alias SET family = 'bed liner' WHERE alias IN ('bed liner', 'bedliner', 'polyurea', 'anti-slip coat');
DELETE FROM family_alias WHERE alias = 'bed liner'; -- it is the name now
DELETE FROM family_alias WHERE alias = 'filler'; -- likewise
INSERT OR IGNORE INTO family_alias (alias, family) VALUES
  ('bed lining', 'bed liner'),
  ('truck bed liner', 'bed liner'),
  ('spray-on liner', 'bed liner'),
  ('non-slip coat', 'bed liner'),
  ('polyurea coat', 'bed liner'),
  ('textured plaster', 'textured coat'),
  ('textured plaster coat', 'textured coat'),
  ('stipple', 'textured coat'),
  ('popcorn ceiling', 'textured coat'),
  ('wood putty', 'filler'),
  ('linseed putty', 'filler'),
  ('grain filler', 'filler'),
  ('spackling', 'filler'),
  ('stopper', 'filler');

-- A bed liner calls for all that a textured coat called for, apart from asbestos.
INSERT INTO caution_scope (caution, family, wood, wood_kind, form, emission, coat_word, board_word)
SELECT s.caution, 'bed liner', s.wood, s.wood_kind, s.form, s.emission, s.coat_word, s.board_word
FROM caution_scope s JOIN caution c ON c.rank = s.caution
WHERE s.family = 'textured coat' AND c.topic <> 'Asbestos';

DELETE FROM caution_scope
WHERE family = 'textured coat' AND caution IN (SELECT rank FROM caution WHERE topic = 'Isocyanates');

-- Coats that were typed as bed liner are known by the name of their finish alone; the others stay.
INSERT INTO amending (only, at_utc, at_offset, person, reason)
VALUES (1, strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), 'Z', NULL, 'bed liner became a coating family of its own');

UPDATE coat SET family = 'bed liner'
WHERE family = 'textured coat'
  AND (replace(replace(called, '-', ''), ' ', '') LIKE '%bedliner%' OR called LIKE '%polyurea%'
    OR finish_id IN (SELECT id FROM finish
      WHERE (replace(replace(name, '-', ''), ' ', '') LIKE '%bedliner%' OR name LIKE '%polyurea%')
        AND name NOT LIKE '%plaster%' AND name NOT LIKE '%ceiling%'));

UPDATE finish SET family = 'bed liner'
WHERE family = 'textured coat'
  AND (replace(replace(name, '-', ''), ' ', '') LIKE '%bedliner%' OR name LIKE '%polyurea%')
  AND name NOT LIKE '%plaster%' AND name NOT LIKE '%ceiling%';

DELETE FROM amending;
