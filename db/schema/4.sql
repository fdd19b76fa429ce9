-- Version 4: how warm it is around the devices of a board. It may be absent, so that what is recorded stays as it is.

ALTER TABLE board ADD COLUMN ambient_degC TEXT;
