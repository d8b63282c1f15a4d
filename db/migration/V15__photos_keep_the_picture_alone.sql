-- A photograph keeps the picture, its colour profile and how it is to be turned. Where, when and with which device it was
-- taken goes. bare_picture and sha256 are functions of the program. A photograph that is damaged, or that is no picture,
-- stays as it is: a check must go on naming it.
DROP TRIGGER photo_keeps_its_identity;

UPDATE photo SET content = bare_picture(content), sha256 = sha256(bare_picture(content))
WHERE sha256 IS NULL OR sha256 = sha256(content);

-- Figures of a large log are found without reading every patch.
CREATE INDEX patch_by_figure ON patch (figure) WHERE figure IS NOT NULL;

CREATE TRIGGER photo_keeps_its_identity BEFORE UPDATE OF id, patch_id, content, recorded_by, sha256 ON photo
WHEN OLD.id IS NOT NEW.id OR OLD.patch_id IS NOT NEW.patch_id OR OLD.content IS NOT NEW.content OR OLD.recorded_by IS NOT NEW.recorded_by OR OLD.sha256 IS NOT NEW.sha256
BEGIN
  SELECT RAISE(ABORT, 'A photo keeps its identity, and who recorded it and when; only the rest can be amended.');
END;
