-- The workbook, schema version 1. Frozen once released: a change of mind is the next version.
--
-- One table for each kind of record of core/model/fields.h, a column for each of its fields
-- ("device.ratedCurrent_A" is device_ratedCurrent_A). Fields are kept in their stored form, as text; absent is NULL.
-- `position` is the order in which rows were added; it is a column because a row that undo brings back must stand
-- where it stood. References are checked when a change ends, so that its steps may come in any order.

CREATE TABLE site (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    name TEXT,
    description TEXT,
    address TEXT,
    client TEXT,
    premises TEXT,
    notes TEXT
) STRICT;
CREATE INDEX site_by_position ON site (position);

CREATE TABLE supply (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    site TEXT NOT NULL REFERENCES site ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    earthing TEXT,
    phases TEXT,
    nominalVoltage_V TEXT,
    fuse_family TEXT,
    fuse_ratedCurrent_A TEXT,
    fuse_breakingCapacity_kA TEXT,
    tails_mm2 TEXT,
    earthingConductor_mm2 TEXT,
    mainBonding_mm2 TEXT,
    earthedBy TEXT,
    notes TEXT
) STRICT;
CREATE INDEX supply_by_position ON supply (position);
CREATE INDEX supply_by_site ON supply (site);

CREATE TABLE board (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    site TEXT NOT NULL REFERENCES site ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    name TEXT,
    description TEXT,
    location TEXT,
    fedFrom TEXT REFERENCES circuit ON DELETE SET NULL DEFERRABLE INITIALLY DEFERRED,
    earthing TEXT,
    phases TEXT,
    ratedCurrent_A TEXT,
    withstandCurrent_kA TEXT,
    residual_fitted TEXT,
    residual_residualCurrent_mA TEXT,
    residual_type TEXT,
    residual_delay TEXT,
    notes TEXT
) STRICT;
CREATE INDEX board_by_position ON board (position);
CREATE INDEX board_by_site ON board (site);
CREATE INDEX board_by_fedFrom ON board (fedFrom);

CREATE TABLE circuit (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    board TEXT NOT NULL REFERENCES board ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    way TEXT,
    name TEXT,
    section TEXT,
    use TEXT,
    topology TEXT,
    phases TEXT,
    points TEXT,
    device_family TEXT,
    device_ratedCurrent_A TEXT,
    device_breakingCapacity_kA TEXT,
    residual_fitted TEXT,
    residual_residualCurrent_mA TEXT,
    residual_type TEXT,
    residual_delay TEXT,
    wiring_description TEXT,
    wiring_material TEXT,
    wiring_insulation TEXT,
    wiring_method TEXT,
    wiring_lineSize_mm2 TEXT,
    wiring_protectiveSize_mm2 TEXT,
    wiring_protectiveConductor TEXT,
    wiring_length_m TEXT,
    wiring_ambient_degC TEXT,
    wiring_groupedCircuits TEXT,
    wiring_insulatedLength_m TEXT,
    wiring_parallelConductors TEXT,
    load_A TEXT,
    outdoors TEXT,
    generalSockets TEXT,
    notes TEXT
) STRICT;
CREATE INDEX circuit_by_position ON circuit (position);
CREATE INDEX circuit_by_board ON circuit (board);

CREATE TABLE equipment (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    circuit TEXT NOT NULL REFERENCES circuit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    name TEXT,
    count TEXT,
    power_W TEXT,
    ratedVoltage_V TEXT,
    current_A TEXT,
    powerFactor TEXT,
    efficiency TEXT,
    startMultiple TEXT,
    onTime_min TEXT,
    offTime_min TEXT,
    plugFuse_A TEXT,
    fixed TEXT,
    notes TEXT
) STRICT;
CREATE INDEX equipment_by_position ON equipment (position);
CREATE INDEX equipment_by_circuit ON equipment (circuit);

CREATE TABLE visit (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    site TEXT NOT NULL REFERENCES site ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    label TEXT,
    kind TEXT,
    state TEXT,
    started TEXT,
    ended TEXT,
    inspector TEXT,
    ruleSet TEXT,
    ruleSetRevision TEXT,
    extent TEXT,
    limitations TEXT,
    conductorTemperature_degC TEXT,
    nextDue TEXT,
    notes TEXT
) STRICT;
CREATE INDEX visit_by_position ON visit (position);
CREATE INDEX visit_by_site ON visit (site);

CREATE TABLE instrument (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    visit TEXT NOT NULL REFERENCES visit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    name TEXT,
    serial TEXT,
    measures TEXT,
    calibrationDue TEXT
) STRICT;
CREATE INDEX instrument_by_position ON instrument (position);
CREATE INDEX instrument_by_visit ON instrument (visit);

CREATE TABLE supply_reading (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    visit TEXT NOT NULL REFERENCES visit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    supply TEXT NOT NULL REFERENCES supply ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    externalLoopImpedance_ohm TEXT,
    prospectiveFaultCurrent_kA TEXT,
    electrodeResistance_ohm TEXT,
    voltage_V TEXT,
    polarity TEXT,
    phaseSequence TEXT,
    remark TEXT
) STRICT;
CREATE INDEX supply_reading_by_position ON supply_reading (position);
CREATE INDEX supply_reading_by_visit ON supply_reading (visit);
CREATE INDEX supply_reading_by_supply ON supply_reading (supply);

CREATE TABLE board_reading (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    visit TEXT NOT NULL REFERENCES visit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    board TEXT NOT NULL REFERENCES board ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    loopImpedance_ohm TEXT,
    prospectiveFaultCurrent_kA TEXT,
    electrodeResistance_ohm TEXT,
    polarity TEXT,
    phaseSequence TEXT,
    residualTime_ms TEXT,
    residualTimeFive_ms TEXT,
    remark TEXT
) STRICT;
CREATE INDEX board_reading_by_position ON board_reading (position);
CREATE INDEX board_reading_by_visit ON board_reading (visit);
CREATE INDEX board_reading_by_board ON board_reading (board);

CREATE TABLE circuit_reading (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    visit TEXT NOT NULL REFERENCES visit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    circuit TEXT NOT NULL REFERENCES circuit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    ringLine_ohm TEXT,
    ringNeutral_ohm TEXT,
    ringProtective_ohm TEXT,
    continuity_ohm TEXT,
    insulationLive_Mohm TEXT,
    insulationEarth_Mohm TEXT,
    polarity TEXT,
    loopImpedance_ohm TEXT,
    prospectiveFaultCurrent_kA TEXT,
    residualTime_ms TEXT,
    residualTimeFive_ms TEXT,
    residualButton TEXT,
    measuredLoad_A TEXT,
    remark TEXT
) STRICT;
CREATE INDEX circuit_reading_by_position ON circuit_reading (position);
CREATE INDEX circuit_reading_by_visit ON circuit_reading (visit);
CREATE INDEX circuit_reading_by_circuit ON circuit_reading (circuit);

CREATE TABLE inspection_outcome (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    visit TEXT NOT NULL REFERENCES visit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    item TEXT,
    result TEXT,
    remark TEXT
) STRICT;
CREATE INDEX inspection_outcome_by_position ON inspection_outcome (position);
CREATE INDEX inspection_outcome_by_visit ON inspection_outcome (visit);

CREATE TABLE observation (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    visit TEXT NOT NULL REFERENCES visit ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    board TEXT REFERENCES board ON DELETE SET NULL DEFERRABLE INITIALLY DEFERRED,
    circuit TEXT REFERENCES circuit ON DELETE SET NULL DEFERRABLE INITIALLY DEFERRED,
    grade TEXT,
    text TEXT,
    place TEXT,
    action TEXT,
    byWhen TEXT,
    whoActs TEXT,
    putRight TEXT
) STRICT;
CREATE INDEX observation_by_position ON observation (position);
CREATE INDEX observation_by_visit ON observation (visit);
CREATE INDEX observation_by_board ON observation (board);
CREATE INDEX observation_by_circuit ON observation (circuit);

CREATE TABLE photo (
    id TEXT PRIMARY KEY NOT NULL,
    position INTEGER NOT NULL,
    observation TEXT NOT NULL REFERENCES observation ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
    digest TEXT,
    mediaType TEXT,
    caption TEXT
) STRICT;
CREATE INDEX photo_by_position ON photo (position);
CREATE INDEX photo_by_observation ON photo (observation);

-- One entry for each user action, oldest first; also the audit trail, so that entries are only ever added. An undo
-- is an entry of its own, whose changeset is the inverse of that of the entry which it reverses.
CREATE TABLE journal (
    sequence INTEGER PRIMARY KEY NOT NULL,
    id TEXT NOT NULL UNIQUE,
    at TEXT NOT NULL, -- UTC, "2026-03-10T09:41:00Z"
    who TEXT NOT NULL,
    action TEXT NOT NULL CHECK (action IN ('change', 'undo', 'redo')),
    reverses TEXT REFERENCES journal (id) CHECK ((reverses IS NULL) = (action = 'change')),
    label_key TEXT NOT NULL,       -- of core/phrases
    label_arguments TEXT NOT NULL, -- JSON
    changeset BLOB NOT NULL        -- of SQLite's session extension
) STRICT;
CREATE TRIGGER journal_entries_stay BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'journal entries are never removed'); END;
CREATE TRIGGER journal_entries_never_change BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'journal entries never change'); END;

-- Pictures by the SHA-256 of their bytes: never changed, only referenced (photo.digest), and therefore outside the
-- journal.
CREATE TABLE photo_blob (
    digest TEXT PRIMARY KEY NOT NULL,
    mediaType TEXT NOT NULL,
    bytes BLOB NOT NULL
) STRICT;
CREATE TRIGGER photo_bytes_never_change BEFORE UPDATE ON photo_blob
BEGIN SELECT RAISE(ABORT, 'the bytes of a photo never change'); END;
