-- Version 2: settings of adjustable circuit-breakers, kinds of equipment and of premises, demand, what instruments
-- may be off by, loops line to neutral, residual devices at half their current, circuits taken out of use,
-- since when equipment, devices and wiring are in place, logs of a circuit's current. The bytes of a log are kept in
-- photo_blob, as those of photos are.
--
-- Columns are only ever added, and at the end of their table: a changeset of the journal knows its columns by their
-- place, so that one recorded before still applies, and leaves the columns that it does not know alone.

ALTER TABLE site ADD COLUMN occupancy TEXT;

ALTER TABLE supply ADD COLUMN demand_A TEXT;

ALTER TABLE circuit ADD COLUMN device_thermalSetting_A TEXT;
ALTER TABLE circuit ADD COLUMN device_thermalDelay_s TEXT;
ALTER TABLE circuit ADD COLUMN device_shortTimeSetting_A TEXT;
ALTER TABLE circuit ADD COLUMN device_shortTimeDelay_s TEXT;
ALTER TABLE circuit ADD COLUMN device_instantaneousSetting_A TEXT;
ALTER TABLE circuit ADD COLUMN wiring_soilResistivity_Km_per_W TEXT;
ALTER TABLE circuit ADD COLUMN demand_A TEXT;
ALTER TABLE circuit ADD COLUMN takenOut TEXT;
ALTER TABLE circuit ADD COLUMN deviceSince TEXT;
ALTER TABLE circuit ADD COLUMN wiringSince TEXT;

ALTER TABLE equipment ADD COLUMN kind TEXT;
ALTER TABLE equipment ADD COLUMN since TEXT;

ALTER TABLE instrument ADD COLUMN continuityUncertainty_percent TEXT;
ALTER TABLE instrument ADD COLUMN insulationUncertainty_percent TEXT;
ALTER TABLE instrument ADD COLUMN loopUncertainty_percent TEXT;
ALTER TABLE instrument ADD COLUMN residualTimeUncertainty_percent TEXT;
ALTER TABLE instrument ADD COLUMN electrodeUncertainty_percent TEXT;
ALTER TABLE instrument ADD COLUMN currentUncertainty_percent TEXT;

ALTER TABLE supply_reading ADD COLUMN neutralLoopImpedance_ohm TEXT;

ALTER TABLE board_reading ADD COLUMN neutralLoopImpedance_ohm TEXT;
ALTER TABLE board_reading ADD COLUMN residualHalf TEXT;

CREATE TABLE current_log (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    reading TEXT NOT NULL REFERENCES circuit_reading ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    name TEXT,
    channel TEXT,
    digest TEXT,
    mediaType TEXT,
    notes TEXT
) STRICT;
CREATE INDEX current_log_by_position ON current_log (position);
CREATE INDEX current_log_by_reading ON current_log (reading);

ALTER TABLE circuit_reading ADD COLUMN residualHalf TEXT;
