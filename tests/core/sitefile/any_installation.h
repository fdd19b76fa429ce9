// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/digest.h"
#include "core/model/fields.h"
#include "core/sitefile/nesting.h"
#include "tests/support/arbitrary_installation.h"

#include <algorithm>
#include <map>
#include <rapidcheck.h>
#include <string>

/// Sound installations: every reference names what it may, nothing is read twice, no board feeds itself.
namespace loopwright::test {

/// Words that the schema allows for a text field; empty where any text will do.
inline std::vector<std::string> wordsFor(const std::string& key) {
    if (key.ends_with("family")) return {"60898-B", "88-2", "3036"};
    if (key == "ruleSet") return {"bs-7671-2018", "iec-60364"};
    if (key == "item") return {"intake-sound", "earthing-type", "board-heat"};
    return {};
}

/// A stored form that a site file can hold; often nothing at all.
inline std::string anyStored(const FieldInfo& field) {
    if (field.kind == FieldKind::Reference || *rc::gen::inRange(0, 3) == 0) return {};
    if (const auto words = wordsFor(std::string(field.key)); !words.empty())
        return *rc::gen::elementOf(words);
    const bool mayLookLikeAnId = field.key == "name" && *rc::gen::inRange(0, 10) == 0;
    return mayLookLikeAnId ? "3b241101-e2bb-4255-8caf-4136c566a962" : arbitrary::storedText(field);
}

/// Builds an installation and knows the bytes of its attachments.
struct AnyInstallation {
    Installation installation;
    std::map<std::string, std::string, std::less<>> attachments;

    template <class Record>
    Record make(SequentialIds& ids) {
        Record record{};
        record.id = ids.next();
        for (const Field<Record>& field : fieldsOf<Record>())
            if (const std::string text = anyStored(field.info); !text.empty())
                RC_ASSERT(field.set(record, text).has_value());
        return record;
    }

    template <class Record>
    void addSome(SequentialIds& ids, Id holder, int most) {
        for (int i = *rc::gen::inRange(0, most + 1); i > 0; --i) {
            Record record = make<Record>(ids);
            record.*sitefile::Nesting<Record>::holder = holder;
            (installation.*RecordTraits<Record>::rows).push_back(std::move(record));
        }
    }

    /// One reading of some of the subjects.
    template <class Reading, class Subject>
    void readSome(SequentialIds& ids, Id visit, const std::vector<Subject>& subjects, Id Reading::*subject) {
        for (const Subject& row : subjects) {
            if (*rc::gen::arbitrary<bool>()) continue;
            Reading reading = make<Reading>(ids);
            reading.visit = visit;
            reading.*subject = row.id;
            (installation.*RecordTraits<Reading>::rows).push_back(std::move(reading));
        }
    }

    void addPhoto(SequentialIds& ids, Id observation) {
        Photo photo = make<Photo>(ids);
        photo.observation = observation;
        const bool isPng = *rc::gen::arbitrary<bool>();
        attach(photo, (isPng ? "\x89PNG\r\n\x1A\n" : "\xFF\xD8\xFF") + *rc::gen::arbitrary<std::string>(),
               isPng ? "image/png" : "image/jpeg");
        installation.photos.push_back(std::move(photo));
    }

    void addLog(SequentialIds& ids, Id reading) {
        CurrentLog log = make<CurrentLog>(ids);
        log.reading = reading;
        std::string text = "time_s;I1 [A]\n";
        for (int i = *rc::gen::inRange(2, 6), second = 0; i > 0; --i, second += *rc::gen::inRange(1, 9))
            text += std::to_string(second) + ';' + std::to_string(*rc::gen::inRange(0, 99)) + '\n';
        attach(log, text, "text/csv");
        installation.currentLogs.push_back(std::move(log));
    }

    template <class Record>
    void attach(Record& record, const std::string& bytes, std::string mediaType) {
        record.digest = digestOf(std::as_bytes(std::span(bytes)));
        record.mediaType = std::move(mediaType);
        if (*rc::gen::inRange(0, 4) > 0)
            attachments[record.digest] = bytes; // sometimes only the digest is known
    }

    void addObservation(SequentialIds& ids, Id visit) {
        Observation observation = make<Observation>(ids);
        observation.visit = visit;
        if (!installation.boards.empty() && *rc::gen::arbitrary<bool>())
            observation.board = (*rc::gen::elementOf(installation.boards)).id;
        if (!installation.circuits.empty() && *rc::gen::arbitrary<bool>()) {
            const Circuit circuit = *rc::gen::elementOf(installation.circuits);
            observation.circuit = circuit.id;
            observation.board = circuit.board;
        }
        for (int i = *rc::gen::inRange(0, 3); i > 0; --i)
            addPhoto(ids, observation.id);
        installation.observations.push_back(std::move(observation));
    }

    void addVisit(SequentialIds& ids) {
        Visit visit = make<Visit>(ids);
        visit.site = installation.site.id;
        addSome<Instrument>(ids, visit.id, 2);
        readSome(ids, visit.id, installation.supplies, &SupplyReading::supply);
        readSome(ids, visit.id, installation.boards, &BoardReading::board);
        readSome(ids, visit.id, installation.circuits, &CircuitReading::circuit);
        for (const CircuitReading& reading : installation.circuitReadings)
            if (reading.visit == visit.id && *rc::gen::arbitrary<bool>()) addLog(ids, reading.id);
        for (const std::string& item : wordsFor("item")) {
            if (*rc::gen::arbitrary<bool>()) continue;
            InspectionOutcome outcome = make<InspectionOutcome>(ids);
            outcome.visit = visit.id;
            outcome.item = item;
            installation.inspectionOutcomes.push_back(std::move(outcome));
        }
        for (int i = *rc::gen::inRange(0, 3); i > 0; --i)
            addObservation(ids, visit.id);
        installation.visits.push_back(std::move(visit));
    }

    void build() {
        SequentialIds ids;
        installation.site = make<Site>(ids);
        addSome<Supply>(ids, installation.site.id, 2);
        for (int i = *rc::gen::inRange(0, 4); i > 0; --i) {
            Board board = make<Board>(ids);
            board.site = installation.site.id;
            if (!installation.circuits.empty() && *rc::gen::arbitrary<bool>())
                board.fedFrom = (*rc::gen::elementOf(installation.circuits)).id;
            addSome<Circuit>(ids, board.id, 4);
            installation.boards.push_back(std::move(board));
        }
        for (const Circuit& circuit : installation.circuits)
            addSome<Equipment>(ids, circuit.id, 2);
        for (int i = *rc::gen::inRange(0, 3); i > 0; --i)
            addVisit(ids);
    }
};

inline AnyInstallation anyInstallation() {
    AnyInstallation any;
    any.build();
    return any;
}

} // namespace loopwright::test
