-- What a coat or a wood may hold, what must be tested for before the beam is on, and the results of
-- such tests. Dates and limits of cautions are those of one country each, and name it.

-- Cautions: a few words to be read first, a short text for paper, and a place in the order where that
-- is not the rank (ranks stay, as scopes refer to them).
ALTER TABLE caution ADD COLUMN in_short TEXT CONSTRAINT caution_in_short_is_given CHECK (trim(in_short) <> '');
ALTER TABLE caution ADD COLUMN brief TEXT CONSTRAINT caution_brief_is_given CHECK (trim(brief) <> '');
ALTER TABLE caution ADD COLUMN shown_as REAL;
ALTER TABLE caution ADD COLUMN covered_by INTEGER REFERENCES caution (rank); -- left out where that one is shown

-- Words in what a person called a coat or a finish, and in what is noted of a board: whole words,
-- small letters, a blank for every other sign.
ALTER TABLE caution_scope ADD COLUMN coat_word TEXT
  CONSTRAINT scope_coat_word_is_plain CHECK (coat_word = lower(trim(coat_word)) AND coat_word <> '');
ALTER TABLE caution_scope ADD COLUMN board_word TEXT
  CONSTRAINT scope_board_word_is_plain CHECK (board_word = lower(trim(board_word)) AND board_word <> '');

-- The coating as the person called it, where that is not the name of its family.
ALTER TABLE coat ADD COLUMN called TEXT CONSTRAINT coat_is_called_something CHECK (trim(called) <> '');

DROP TRIGGER coat_changes_are_kept;
CREATE TRIGGER coat_changes_are_kept AFTER UPDATE ON coat
BEGIN
  INSERT INTO change (changed_at_utc, changed_at_offset, changed_by, what, row_id, before, after, why)
  SELECT coalesce(a.at_utc, strftime('%Y-%m-%dT%H:%M:%fZ', 'now')), coalesce(a.at_offset, 'Z'), a.person,
    c.what, OLD.finish_id, c.before, c.after, a.reason
  FROM (
    SELECT 'coat.family' AS what, OLD.family AS before, NEW.family AS after
    UNION ALL SELECT 'coat.tone', OLD.tone, NEW.tone
    UNION ALL SELECT 'coat.thickness_um', OLD.thickness_um, NEW.thickness_um
    UNION ALL SELECT 'coat.called', OLD.called, NEW.called
  ) c LEFT JOIN amending a ON a.only = 1
  WHERE c.before IS NOT c.after;
END;

-- Families that must not be taken for others: what is never lasered, and what is sampled first.
INSERT INTO coating_family (name, usual_film, clue, behaviour, source) VALUES
  ('chlorinated film', 'PVC faces 100 to 500 um; chlorinated rubber as a paint',
    'A stretchy plastic skin that peels in sheets, or a hard marine or floor paint.',
    'Never laser it: heated, it gives off vinyl chloride and hydrogen chloride. Use another method.',
    'Film: from memory; behaviour: Blazevska-Gilev et al. 2006, Polymer Degradation and Stability 91:213-220 (infrared laser on PVC)'),
  ('filler', 'no even film: it fills holes, joints and the bed of glass or tiles',
    'Chalky or stony, in holes and joints, under paint or round a pane.',
    'Old putty, filler and mastic may hold asbestos, and glazing putty lead; have it sampled first.',
    'Asbestos: US EPA list of products that may contain asbestos; clue and lead: common practice, no published source');

UPDATE family_alias SET family = 'chlorinated film' WHERE alias IN ('pvc film', 'vinyl film');
DELETE FROM family_alias WHERE alias = 'filler';

INSERT INTO family_alias (alias, family) VALUES
  ('pvc', 'chlorinated film'),
  ('upvc', 'chlorinated film'),
  ('pvc foil', 'chlorinated film'),
  ('pvc face', 'chlorinated film'),
  ('polyvinyl chloride', 'chlorinated film'),
  ('vinyl foil', 'chlorinated film'),
  ('vinyl wrap', 'chlorinated film'),
  ('vinyl sheet', 'chlorinated film'),
  ('vinyl flooring', 'chlorinated film'),
  ('vinyl wallpaper', 'chlorinated film'),
  ('chlorinated rubber', 'chlorinated film'),
  ('chlorinated rubber paint', 'chlorinated film'),
  ('chlorinated paint', 'chlorinated film'),
  ('wood filler', 'filler'),
  ('putty', 'filler'),
  ('glazing putty', 'filler'),
  ('window putty', 'filler'),
  ('glazing compound', 'filler'),
  ('joint compound', 'filler'),
  ('spackle', 'filler'),
  ('mastic', 'filler'),
  ('floor mastic', 'filler'),
  ('stopping', 'filler'),
  ('acid-cured varnish', 'varnish'),
  ('acid-curing varnish', 'varnish'),
  ('acid-cured lacquer', 'varnish'),
  ('acid-curing lacquer', 'varnish'),
  ('catalysed lacquer', 'varnish'),
  ('catalyzed lacquer', 'varnish'),
  ('two-pack', 'varnish'),
  ('two-pack polyurethane', 'varnish'),
  ('two-part polyurethane', 'varnish'),
  ('2k', 'varnish'),
  ('2k polyurethane', 'varnish'),
  ('urethane alkyd', 'varnish'),
  ('moisture-cured polyurethane', 'varnish');

-- What samples are tested for.
CREATE TABLE substance (
  name TEXT NOT NULL PRIMARY KEY,
  found_means TEXT NOT NULL, -- what to know and do where it was found, in full sentences
  bars_beam INTEGER NOT NULL, -- 1: where it was found, the beam stays off
  source TEXT NOT NULL,
  CONSTRAINT substance_name_is_lower_case CHECK (name = lower(name) AND trim(name) <> ''),
  CONSTRAINT substance_found_means_something CHECK (trim(found_means) <> ''),
  CONSTRAINT substance_bars_the_beam_or_not CHECK (bars_beam IN (0, 1)),
  CONSTRAINT substance_source_is_named CHECK (trim(source) <> '')
) STRICT;

CREATE TABLE substance_alias (
  alias TEXT NOT NULL PRIMARY KEY,
  substance TEXT NOT NULL REFERENCES substance (name),
  CONSTRAINT substance_alias_is_lower_case CHECK (alias = lower(alias) AND trim(alias) <> '')
) STRICT;

INSERT INTO substance (name, found_means, bars_beam, source) VALUES
  ('asbestos',
    'Do not beam, sand or scrape it: removal is work for people licensed or trained for asbestos, as the local rules say.',
    1, 'UK Control of Asbestos Regulations 2012; OSHA 29 CFR 1926.1101'),
  ('chlorinated film',
    'Never laser it: use another method.',
    1, 'Blazevska-Gilev et al. 2006, Polymer Degradation and Stability 91:213-220'),
  ('lead',
    'Only people certified for lead go on, with containment, extraction, clearance and the waste route that the local rules ask for.',
    0, '40 CFR 745 subpart E (in the USA); OSHA 29 CFR 1926.62; UK Control of Lead at Work Regulations 2002'),
  ('chromate',
    'Dust and fume hold hexavalent chromium: a competent person sets extraction and respirator before any patch.',
    0, 'OSHA 3373, Hexavalent chromium; OSHA 29 CFR 1926.1126'),
  ('isocyanates',
    'Heat sets isocyanates free: a competent person sets extraction and respirator before any patch.',
    0, 'American Chemistry Council, polyurethanes and thermal degradation'),
  ('formaldehyde',
    'Heat sets formaldehyde free: a competent person sets extraction and respirator before any patch.',
    0, 'OSHA 29 CFR 1910.1048'),
  ('organotin',
    'Dust is poison to people and water: collect everything, and ask the authority for the waste route.',
    0, 'International Convention on the Control of Harmful Anti-fouling Systems on Ships, 2001'),
  ('arsenic',
    'The wood is preserved: do not put it under the beam.',
    1, 'EPA-approved consumer information sheets, in USDA Wood Handbook FPL-GTR-190, chapter 15'),
  ('creosote',
    'The wood is preserved: do not put it under the beam.',
    1, 'EPA-approved consumer information sheets, in USDA Wood Handbook FPL-GTR-190, chapter 15'),
  ('pentachlorophenol',
    'The wood is preserved: do not put it under the beam.',
    1, 'EPA-approved consumer information sheets, in USDA Wood Handbook FPL-GTR-190, chapter 15');

INSERT INTO substance_alias (alias, substance) VALUES
  ('pb', 'lead'), ('lead paint', 'lead'), ('white lead', 'lead'), ('red lead', 'lead'),
  ('chrysotile', 'asbestos'), ('asbestos fibres', 'asbestos'), ('asbestos fibers', 'asbestos'),
  ('pvc', 'chlorinated film'), ('chlorine', 'chlorinated film'), ('vinyl', 'chlorinated film'),
  ('chlorinated rubber', 'chlorinated film'),
  ('chromates', 'chromate'), ('hexavalent chromium', 'chromate'), ('chromium', 'chromate'),
  ('cr vi', 'chromate'), ('isocyanate', 'isocyanates'), ('tbt', 'organotin'), ('tributyltin', 'organotin'),
  ('cca', 'arsenic'), ('pcp', 'pentachlorophenol');

-- What must be tested for. All that a row names must fit; a row without family and word fits every
-- coat. Of several rows about one substance the strictest counts; one that knows a coat to be free by
-- its name lifts "free first" and "say".
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
) STRICT;

INSERT INTO coat_test (family, coat_word, substance, demand, source) VALUES
  (NULL, NULL, 'lead', 'say', 'NPS Preservation Brief 10; 40 CFR 745 subpart E: any coat of a stack, whatever the outermost is'),
  ('textured coat', NULL, 'asbestos', 'free first', 'UK Control of Asbestos Regulations 2012; isurv asbestos survey notes'),
  ('filler', NULL, 'asbestos', 'free first', 'US EPA list of products that may contain asbestos (caulking and putties, mastics, joint and spackling compounds)'),
  (NULL, 'putty', 'asbestos', 'free first', 'US EPA list of products that may contain asbestos'),
  (NULL, 'mastic', 'asbestos', 'free first', 'US EPA list of products that may contain asbestos'),
  (NULL, 'textured plaster', 'asbestos', 'free first', 'US EPA list of products that may contain asbestos'),
  ('chlorinated film', NULL, 'chlorinated film', 'never', 'Blazevska-Gilev et al. 2006, Polymer Degradation and Stability 91:213-220'),
  (NULL, 'pvc', 'chlorinated film', 'never', 'Blazevska-Gilev et al. 2006, Polymer Degradation and Stability 91:213-220'),
  (NULL, 'upvc', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'polyvinyl chloride', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl film', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl foil', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl face', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl wrap', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl sheet', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl flooring', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl wallpaper', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'vinyl wallcovering', 'chlorinated film', 'never', 'as PVC'),
  (NULL, 'chlorinated', 'chlorinated film', 'never', 'hydrogen chloride from chlorinated rubber: from memory, no published source read'),
  ('laminate', NULL, 'chlorinated film', 'free first', 'common practice, no published source: a face that nobody can name may be PVC'),
  (NULL, 'melamine', 'chlorinated film', 'known free', 'a melamine resin face holds no chlorine: from memory, no published source read'),
  (NULL, 'hpl', 'chlorinated film', 'known free', 'a phenolic and melamine resin sheet holds no chlorine: from memory, no published source read'),
  (NULL, 'high pressure laminate', 'chlorinated film', 'known free', 'as hpl'),
  (NULL, 'chromate', 'chromate', 'say', 'OSHA 3373, Hexavalent chromium'),
  (NULL, 'chrome yellow', 'chromate', 'say', 'OSHA 3373, Hexavalent chromium'),
  (NULL, 'antifouling', 'organotin', 'say', 'International Convention on the Control of Harmful Anti-fouling Systems on Ships, 2001'),
  (NULL, 'anti fouling', 'organotin', 'say', 'International Convention on the Control of Harmful Anti-fouling Systems on Ships, 2001');

-- Texts: what was the rule of one country says so.
UPDATE caution SET brief = 'Direct, mirrored and scattered light blinds and burns. Closed, signed area, laser safety officer, barriers; mirrors, glass and metal out of the line of fire.'
  WHERE rank = 1;
UPDATE caution SET brief = 'Marked for this wavelength at the optical density that the officer works out, on everyone inside. Ordinary safety glasses stop nothing.'
  WHERE rank = 2;
UPDATE caution SET
  text = 'Old coats of this kind often hold lead: have it tested before the first patch. On lead paint the beam makes lead dust and lead fume. Dates differ by country. In the USA the renovation rule covers housing from before 1978 unless it was tested free: more than 6 ft2 of paint in a room, or 20 ft2 outdoors, within 30 days takes a certified firm, and open flame, heat above 1100 degrees F and power tools without HEPA are forbidden. In Canada, homes from before 1960 probably hold lead and those up to 1990 may; in Australia, those from before 1970 are most at risk; in France, dwellings from before 1949 need a lead report. No rule was found that names lasers: treat them as at least as restricted and ask the authority.',
  brief = 'Coats of this kind may hold lead, and the beam makes lead dust and fume of it. Have every coat tested before the first patch; where lead is found, certified people only.',
  source = '40 CFR 745 subpart E (US EPA Renovation, Repair and Painting rule: 1.0 mg/cm2 or 0.5 % by weight), 745.83 (6 and 20 ft2, 30 days); OSHA 29 CFR 1926.62; UK Control of Lead at Work Regulations 2002; Health Canada, It''s Your Health: lead-based paint; Commonwealth of Australia 2014, Lead alert, 5th edition; France, public health code, articles L. 1334-5 to L. 1334-10, and order of 19 August 2011; NPS Preservation Brief 10'
  WHERE rank = 3;
UPDATE caution SET
  covered_by = 3,
  text = 'Any coat in this stack may hold lead, whatever the outermost coat is: have all of them tested before the first patch. Dates differ by country; in the USA the renovation rule covers housing from before 1978.',
  brief = 'A coat under this one may hold lead: have the whole stack tested before the first patch.',
  source = '40 CFR 745 subpart E (US EPA Renovation, Repair and Painting rule); NPS Preservation Brief 10'
  WHERE rank = 4;
UPDATE caution SET
  text = 'Textured coats, putty, filler, joint compound and floor mastic often held asbestos. In the UK, makers of textured coats stopped about 1985 and a ban came in 1999; other countries have other dates. Take it that this one does until a sample says otherwise, or until the data sheet of a product that you know does; until then no beam, sanding or scraping. Local rules say who may take the sample and who may remove it.',
  brief = 'Take it that this coat holds asbestos until a sample says otherwise; until then no beam, sanding or scraping.',
  source = 'UK Control of Asbestos Regulations 2012; isurv asbestos survey notes; US EPA list of products that may contain asbestos; OSHA 29 CFR 1926.1101'
  WHERE rank = 5;
UPDATE caution SET
  in_short = 'vinyl chloride and hydrogen chloride from PVC or chlorinated film',
  text = 'Do not laser PVC film, chlorinated rubber or vinyl faces, whatever a sample says: an infrared beam makes vinyl chloride of PVC, and heat sets hydrogen chloride free, which burns lungs and corrodes the machine. If you cannot tell what the film is, use another method.',
  brief = 'Never laser PVC, vinyl or chlorinated film: vinyl chloride and hydrogen chloride. If you cannot tell what it is, use another method.',
  source = 'Blazevska-Gilev et al. 2006, Polymer Degradation and Stability 91:213-220 (vinyl chloride); hydrogen chloride: from memory, no published source read'
  WHERE rank = 6;
UPDATE caution SET
  in_short = 'isocyanates when heated',
  text = 'Polyurethane, urethane alkyds, two-pack coats and polyurea break down above about 200 degrees C and give off isocyanates, which can make a person asthmatic for life. Extract at the source; filters alone do not settle which respirator is right, so ask a competent person.',
  brief = 'Heated polyurethane, urethane alkyd, two-pack coat or polyurea gives off isocyanates: asthma for life. Extract; a competent person chooses the respirator.'
  WHERE rank = 7;
UPDATE caution SET
  in_short = 'nitrocellulose: flares, and nitrous smoke',
  text = 'Nitrocellulose lacquer burns fast and hard to put out, and its smoke holds nitrogen oxides, which may harm the lungs only hours later. Keep patches small and apart, clear the swarf and dust away, and have plenty of water in reach.',
  brief = 'It burns fast, and its smoke holds nitrogen oxides. Small patches, swarf away, plenty of water in reach.',
  source = 'ILO and WHO International Chemical Safety Card 1560, nitrocellulose; delayed harm: makers'' handling notes on nitrous fume'
  WHERE rank = 8;
UPDATE caution SET
  text = 'Treat this as hot work. Clear or cover what can burn within 35 ft (11 m), vacuum gaps and old dust first, keep a charged hose or extinguisher in reach, never walk away, and keep a fire watch for at least one hour after the last pass, longer over hidden cavities: wood dust smoulders unseen and then flames. Put solvent on a patch only at its last reading, and never under a beam.',
  brief = 'Hot work: 35 ft (11 m) clear, gaps vacuumed, hose or extinguisher in reach, fire watch for one hour or more after the last pass. No solvent under a beam.'
  WHERE rank = 9;
UPDATE caution SET brief = 'Not recommended on wood: char comes first and then hinders the removal; any pause of the hand is a burn.'
  WHERE rank = 10;
UPDATE caution SET brief = 'Lead, chromium, benzene and hydrogen cyanide have been found in it. HEPA and carbon at the nozzle; a competent person chooses the respirator.'
  WHERE rank = 11;
UPDATE caution SET
  in_short = 'formaldehyde when heated',
  text = 'MDF, plywood, other glued panels, laminates and glued veneer give off formaldehyde and other poisonous vapours when the beam reaches the glue or resin, and so may acid-cured and conversion varnishes, which are made with it. Stop at the first sign that a face is through.',
  brief = 'Heated glue, resin board, laminate or acid-cured coat gives off formaldehyde. Extract; stop when a face is through.',
  source = 'OSHA 29 CFR 1910.1048; Laser cutting of phenolic resin panels: identification of potential hazards; conversion varnishes: Journal of the Air and Waste Management Association 1999, 49:70-75'
  WHERE rank = 12;
UPDATE caution SET in_short = 'reflections' WHERE rank = 13;
UPDATE caution SET in_short = 'wax and oil flare up' WHERE rank = 14;

INSERT INTO caution (rank, topic, text, source, in_short, brief, shown_as) VALUES
  (18, 'Preserved wood',
    'Wood preserved with copper, chromium and arsenic (CCA), creosote or pentachlorophenol gives off poison in smoke and ash when it burns: do not put it under the beam. Suspect sleepers, posts, piles, decks and greenish or tarry timber, and ask before the first patch.',
    'EPA-approved consumer information sheets for treated wood, in USDA Wood Handbook FPL-GTR-190, chapter 15; which timber to suspect: common practice, no published source',
    'preserved wood: arsenic, chromium, creosote or pentachlorophenol',
    'Preserved wood (CCA, creosote, pentachlorophenol) smokes poison: do not put it under the beam.', 5.5),
  (19, 'Antifouling',
    'Antifouling paint holds copper, older ones tributyltin, and the oldest arsenic or mercury. Its dust and smoke are poison to people and to water: have it tested, catch everything, and let nothing reach the ground or the lake.',
    'IMO 2002, Anti-fouling systems; International Convention on the Control of Harmful Anti-fouling Systems on Ships, 2001; Dafforn, Lewis and Johnston 2011, Marine Pollution Bulletin 62:453-465',
    'antifouling: copper, tin, arsenic or mercury',
    'Antifouling holds copper, tin, arsenic or mercury: test it, catch all dust, nothing to the ground or water.', 5.6),
  (20, 'Chromate',
    'Chromate pigments (zinc, strontium and lead chromate, chrome yellow) put hexavalent chromium into dust and fume, which causes lung cancer. Have the coat tested; a competent person sets extraction and respirator.',
    'OSHA 3373, Hexavalent chromium; OSHA 29 CFR 1926.1126',
    'chromate: hexavalent chromium',
    'Chromate gives hexavalent chromium in dust and fume: lung cancer. Test it; a competent person sets extraction and respirator.', 5.7),
  (21, 'Room',
    'Send occupants and pets out and keep them out until it is clean. Cover or take out window panes, mirrors and glazing. Have smoke detectors isolated by whoever is in charge of them, and put back before you leave. Nail heads and screws stay hot: let them cool before you touch or cover them.',
    'common practice, no published source', NULL,
    'Occupants and pets out, glass covered, smoke detectors isolated and put back. Nail heads stay hot.', 9.2),
  (22, 'Dust collector',
    'Wood and paint dust can burn or explode in the hose, the filter or the collector when a spark gets in. Use a collector meant for combustible dust and hot particles, empty it into a lidded metal bin, and include it in the fire watch.',
    'NFPA 664; OSHA Hazard Alert, Combustible dust explosions', NULL,
    'Sparks in hose, filter or collector can explode the dust: a collector meant for it, emptied into a lidded metal bin, in the fire watch too.', 9.4);

INSERT INTO caution_scope (caution, family, coat_word, board_word) VALUES
  (3, 'filler', NULL, NULL),
  (4, 'chlorinated film', NULL, NULL),
  (5, 'filler', NULL, NULL),
  (5, NULL, 'putty', NULL),
  (5, NULL, 'mastic', NULL),
  (5, NULL, 'textured plaster', NULL),
  (6, 'chlorinated film', NULL, NULL),
  (6, NULL, 'pvc', NULL),
  (6, NULL, 'upvc', NULL),
  (6, NULL, 'polyvinyl chloride', NULL),
  (6, NULL, 'vinyl film', NULL),
  (6, NULL, 'vinyl foil', NULL),
  (6, NULL, 'vinyl face', NULL),
  (6, NULL, 'vinyl wrap', NULL),
  (6, NULL, 'vinyl sheet', NULL),
  (6, NULL, 'vinyl flooring', NULL),
  (6, NULL, 'vinyl wallpaper', NULL),
  (6, NULL, 'vinyl wallcovering', NULL),
  (6, NULL, 'chlorinated', NULL),
  (7, NULL, 'polyurethane', NULL),
  (7, NULL, 'urethane', NULL),
  (7, NULL, 'polyurea', NULL),
  (7, NULL, 'two pack', NULL),
  (7, NULL, 'two part', NULL),
  (7, NULL, '2k', NULL),
  (8, NULL, 'nitrocellulose', NULL),
  (8, NULL, 'nitro', NULL),
  (8, NULL, 'cellulose lacquer', NULL),
  (12, NULL, 'acid cured', NULL),
  (12, NULL, 'acid curing', NULL),
  (12, NULL, 'conversion varnish', NULL),
  (12, NULL, 'catalysed', NULL),
  (12, NULL, 'catalyzed', NULL),
  (12, NULL, 'melamine', NULL),
  (18, NULL, NULL, 'cca'),
  (18, NULL, NULL, 'creosote'),
  (18, NULL, NULL, 'creosoted'),
  (18, NULL, NULL, 'pentachlorophenol'),
  (18, NULL, NULL, 'pcp'),
  (18, NULL, NULL, 'preserved'),
  (18, NULL, NULL, 'preservative'),
  (18, NULL, NULL, 'pressure treated'),
  (18, NULL, NULL, 'treated timber'),
  (18, NULL, NULL, 'treated wood'),
  (18, NULL, NULL, 'railway sleeper'),
  (18, NULL, NULL, 'railroad tie'),
  (18, NULL, NULL, 'sleeper'),
  (18, NULL, NULL, 'utility pole'),
  (18, NULL, 'creosote', NULL),
  (18, NULL, 'pentachlorophenol', NULL),
  (18, NULL, 'wood preservative', NULL),
  (19, NULL, 'antifouling', NULL),
  (19, NULL, 'anti fouling', NULL),
  (19, NULL, 'bottom paint', NULL),
  (20, NULL, 'chromate', NULL),
  (20, NULL, 'chrome yellow', NULL),
  (21, NULL, NULL, NULL),
  (22, NULL, NULL, NULL);

-- What was tested, by whom and with what result. A result belongs to a finish, or to a whole job.
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
) STRICT;

CREATE INDEX sample_by_finish ON sample (finish_id);

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
END;

CREATE TRIGGER sample_keeps_its_identity BEFORE UPDATE OF id, code, recorded_at_utc, recorded_at_offset, recorded_by ON sample
WHEN OLD.id IS NOT NEW.id OR OLD.code IS NOT NEW.code OR OLD.recorded_at_utc IS NOT NEW.recorded_at_utc OR OLD.recorded_at_offset IS NOT NEW.recorded_at_offset OR OLD.recorded_by IS NOT NEW.recorded_by
BEGIN
  SELECT RAISE(ABORT, 'A sample result keeps its identity and code, and who recorded it and when; only the rest can be amended.');
END;

CREATE TRIGGER sample_is_never_deleted BEFORE DELETE ON sample
BEGIN
  SELECT RAISE(ABORT, 'A sample result is never deleted; void it instead.');
END;
