-- The SHA-256 of a photograph's bytes as they came, so that a later look can tell whether they are still the same.
-- Photographs from before have none.
ALTER TABLE photo ADD COLUMN sha256 TEXT
  CONSTRAINT photo_checksum_is_64_hexadecimal_digits CHECK (length(sha256) = 64 AND NOT sha256 GLOB '*[^0-9a-f]*');

DROP TRIGGER photo_keeps_its_identity;
CREATE TRIGGER photo_keeps_its_identity BEFORE UPDATE OF id, patch_id, content, recorded_by, sha256 ON photo
WHEN OLD.id IS NOT NEW.id OR OLD.patch_id IS NOT NEW.patch_id OR OLD.content IS NOT NEW.content OR OLD.recorded_by IS NOT NEW.recorded_by OR OLD.sha256 IS NOT NEW.sha256
BEGIN
  SELECT RAISE(ABORT, 'A photo keeps its identity, and who recorded it and when; only the rest can be amended.');
END;
