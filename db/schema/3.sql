-- Version 3: how far the range of an instrument goes. Every new field may be absent, so that what is recorded
-- stays as it is.

ALTER TABLE instrument ADD COLUMN continuityFrom_ohm TEXT;
ALTER TABLE instrument ADD COLUMN loopFrom_ohm TEXT;
ALTER TABLE instrument ADD COLUMN insulationTo_Mohm TEXT;
ALTER TABLE instrument ADD COLUMN currentTo_A TEXT;
