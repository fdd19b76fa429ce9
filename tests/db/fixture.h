// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/workbook.h"
#include "tests/support/messages.h"
#include "tests/support/temporary_folder.h"

#include <gtest/gtest.h>

namespace loopwright {

inline const std::chrono::sys_seconds testInstant =
    std::chrono::sys_days{std::chrono::year{2026} / 3 / 10} + std::chrono::hours{9};

/// A folder, a fixed time and fixed ids to keep workbooks by.
class WorkbookTest : public testing::Test {
  protected:
    WorkbookTest() = default;
    explicit WorkbookTest(const std::filesystem::path& parent)
      : folder(parent) {}
    Surroundings surroundings(std::string who = "A. Tester") {
        return {{std::move(who)}, clock, journalIds, std::chrono::milliseconds{20}, {}};
    }
    Workbook create() { return must(Workbook::create(path, surroundings())); }
    Workbook open(std::string who = "A. Tester") {
        return must(Workbook::open(path, surroundings(std::move(who))));
    }

    TemporaryFolder folder;
    std::filesystem::path path = folder / "book.loopwright";
    FixedClock clock{testInstant};
    SequentialIds journalIds{1'000'000};
    SequentialIds ids{1};
};

/// For properties, which are tried with many workbooks or many changes.
class WorkbookProperty : public WorkbookTest {
  protected:
    WorkbookProperty()
      : WorkbookTest(memoryFolder()) {}
};

/// One record of every kind, and a board that is fed from a circuit of another.
inline Installation workshop(IdSource& ids) {
    Installation made;
    made.site = {
        .id = ids.next(), .name = "Net loft", .description = "boat store", .address = "Quay 3\nHarbour"};
    const Supply supply{.id = ids.next(), .site = made.site.id, .earthing = Earthing::TnCS};
    const Board first{.id = ids.next(), .site = made.site.id, .name = "Board A"};
    const Circuit feeder{.id = ids.next(),
                         .board = first.id,
                         .way = "3",
                         .name = "To Board B",
                         .use = CircuitUse::Distribution};
    const Board second{.id = ids.next(), .site = made.site.id, .name = "Board B", .fedFrom = feeder.id};
    Circuit kiln{.id = ids.next(), .board = second.id, .way = "1", .name = "Kiln"};
    kiln.device = {"60898-C", Entry<Current>::of(amperes(32), 0), {}};
    const Equipment heater{.id = ids.next(), .circuit = kiln.id, .name = "Heater", .fixed = false};
    const Visit visit{.id = ids.next(),
                      .site = made.site.id,
                      .label = "2026, periodic",
                      .started = Date{std::chrono::year{2026} / 3 / 9}};
    const Observation observation{
        .id = ids.next(), .visit = visit.id, .board = second.id, .circuit = kiln.id, .text = "Scorched"};
    made.supplies = {supply};
    made.boards = {first, second};
    made.circuits = {feeder, kiln};
    made.equipment = {heater};
    made.visits = {visit};
    made.instruments = {{.id = ids.next(), .visit = visit.id, .name = "Tester 2"}};
    made.supplyReadings = {{.id = ids.next(), .visit = visit.id, .supply = supply.id}};
    made.boardReadings = {{.id = ids.next(), .visit = visit.id, .board = first.id}};
    made.circuitReadings = {{.id = ids.next(), .visit = visit.id, .circuit = kiln.id}};
    made.inspectionOutcomes = {{.id = ids.next(), .visit = visit.id, .item = "intake"}};
    made.observations = {observation};
    made.photos = {{.id = ids.next(),
                    .observation = observation.id,
                    .digest = std::string(64, '0'),
                    .mediaType = "image/png"}};
    made.currentLogs = {{.id = ids.next(),
                         .reading = made.circuitReadings[0].id,
                         .name = "Kiln, three firings",
                         .channel = "I1 [A]",
                         .digest = std::string(64, '1'),
                         .mediaType = "text/csv"}};
    return made;
}

/// A change of one field with a label that names it.
inline Change setting(RecordKind kind, Id id, std::string key, std::string text) {
    Message label{"change.field", {std::string("Board B / 1"), key, text}};
    return {std::move(label), {setField(kind, id, std::move(key), std::move(text))}};
}

inline const Message takenIn{"change.added", {std::string("Net loft")}};

} // namespace loopwright
