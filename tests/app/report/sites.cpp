// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/report/sites.h"

#include "tests/support/messages.h"

#include <QBuffer>

#include <fstream>
#include <sstream>

namespace loopwright::test {
namespace {

constexpr Date day(int year, unsigned month, unsigned dayOfMonth) {
    return Date{std::chrono::year(year), std::chrono::month(month), std::chrono::day(dayOfMonth)};
}

const ReferenceTables& tables() {
    static const ReferenceTables built = ReferenceTables::builtIn();
    return built;
}

const RuleSet& rules() {
    static const std::vector<RuleSet> sets = builtInRuleSets();
    return ruleSetFor(sets, "bs-7671-2018");
}

const FixedClock& clock() {
    static const FixedClock fixed(std::chrono::sys_days(day(2026, 3, 16)));
    return fixed;
}

template <class Q>
Entry<Q> read(Q value, int decimals = 2) {
    return Entry<Q>::of(value, decimals);
}
template <class Q>
Entry<Q> limited(std::string reason) {
    return {EntryState::Limited, Origin::Read, 0, {}, std::move(reason)};
}

/// Adds records that belong to each other.
class Builder {
  public:
    explicit Builder(std::string name) {
        site.installation.site = {.id = ids.next(), .name = std::move(name)};
        site.visit = ids.next();
        site.installation.visits.push_back({.id = site.visit, .site = here().site.id, .label = "visit"});
    }

    Installation& here() { return site.installation; }
    Visit& visit() { return here().visits.front(); }

    Board& board(std::string name, std::string description, Id fedFrom = {}) {
        Board board{.id = ids.next(),
                    .site = here().site.id,
                    .name = std::move(name),
                    .description = std::move(description)};
        board.fedFrom = fedFrom;
        board.ratedCurrent = read(amperes(125), 0);
        board.withstandCurrent = read(kiloamperes(16), 0);
        here().boards.push_back(board);
        return here().boards.back();
    }

    /// A sound radial circuit with all its readings.
    Id circuit(Id board, std::string way, std::string name) {
        Circuit circuit{.id = ids.next(), .board = board, .way = std::move(way), .name = std::move(name)};
        circuit.points = read(Ratio(4), 0);
        circuit.device = {"60898-B", read(amperes(16), 0), read(kiloamperes(10), 0)};
        circuit.wiring.method = InstallationMethod::B1;
        circuit.wiring.description = "singles in conduit";
        circuit.wiring.lineSize = read(squareMillimetres(2.5), 1);
        circuit.wiring.protectiveSize = read(squareMillimetres(1.5), 1);
        circuit.wiring.length = read(metres(24), 0);
        circuit.load = read(amperes(8.7), 1);
        CircuitReading reading{.id = ids.next(), .visit = site.visit, .circuit = circuit.id};
        reading.continuity = read(ohms(0.47));
        reading.insulationLive = {EntryState::Above, Origin::Read, 0, megohms(999), {}};
        reading.insulationEarth = read(megohms(412), 0);
        reading.polarity = TestOutcome::Correct;
        reading.loopImpedance = read(ohms(0.7));
        here().circuits.push_back(circuit);
        here().circuitReadings.push_back(reading);
        return circuit.id;
    }

    Observation& observation(Id board, Id circuit, Grade grade, std::string text, std::string action) {
        here().observations.push_back({.id = ids.next(),
                                       .visit = site.visit,
                                       .board = board,
                                       .circuit = circuit,
                                       .grade = grade,
                                       .text = std::move(text),
                                       .action = std::move(action)});
        return here().observations.back();
    }

    void photo(Id observation, const Attachment& bytes, std::string caption) {
        here().photos.push_back({ids.next(), observation, bytes.digest, bytes.mediaType, std::move(caption)});
        site.attachments.push_back(bytes);
    }

    SequentialIds ids;
    ReportedSite site;
};

std::string repeated(const std::string& text, int times) {
    std::string all;
    for (int time = 0; time < times; ++time)
        all += text;
    return all;
}

} // namespace

Attachment paintedPhoto(int width, int height, Qt::GlobalColor colour) {
    QImage picture(width, height, QImage::Format_RGB32);
    picture.fill(colour);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    picture.save(&buffer, "PNG");
    return {"painted-" + std::to_string(width) + "-" + std::to_string(height) + "-" + std::to_string(colour),
            "image/png", bytes.toStdString()};
}

ReportInput ReportedSite::input() {
    assessment_ = assess(installation, visit, tables(), rules());
    const AttachmentSource source = [this](std::string_view digest) -> std::optional<std::string> {
        for (const Attachment& each : attachments)
            if (each.digest == digest) return each.bytes;
        return std::nullopt;
    };
    return {installation, assessment_, tables(), rules(), words_, clock(), source, officeLabels};
}

Report ReportedSite::report() {
    return composeReport(input());
}

ReportedSite emptySite() {
    return Builder("Empty yard").site;
}

ReportedSite smallSite() {
    Builder build("Ropewalk cottage");
    Installation& here = build.here();
    here.site.description = "a dwelling with a workshop";
    here.site.client = "the tenants’ meeting";
    here.site.address = "1 Hemp Quay\nOakum Row";
    Supply supply{.id = build.ids.next(), .site = here.site.id, .earthing = Earthing::TnCS};
    supply.nominalVoltage = read(volts(230), 0);
    supply.fuse = {"1361", read(amperes(100), 0), read(kiloamperes(33), 0)};
    here.supplies.push_back(supply);
    SupplyReading atSupply{.id = build.ids.next(), .visit = build.site.visit, .supply = supply.id};
    atSupply.externalLoopImpedance = read(ohms(0.21));
    atSupply.prospectiveFaultCurrent = read(kiloamperes(1.1), 1);
    here.supplyReadings.push_back(atSupply);

    const Id first = build.board("Board A", "hall cupboard").id;
    const Id feeder = build.circuit(first, "1", "Workshop board");
    here.circuits.back().use = CircuitUse::Distribution;
    build.circuit(first, "2", "Lights, ground floor");
    here.circuits.back().wiring.length.origin = Origin::Carried;
    build.circuit(first, "3", "Ring, kitchen");
    here.circuits.back().topology = Topology::Ring;
    here.circuits.back().residual = {.fitted = true, .residualCurrent = read(milliamperes(30), 0)};
    build.circuit(first, "4", "Spare");
    here.circuits.back().use = CircuitUse::Spare;

    const Id second = build.board("Board B", "workshop", feeder).id;
    const Id kiln = build.circuit(second, "F1", "Kiln, glaze room");
    here.circuits.back().section = "Old fuse ways";
    here.circuits.back().device = {"1361", read(amperes(30), 0), read(kiloamperes(16.5), 1)};
    here.circuits.back().load = read(amperes(41.7), 1);
    const Id glue = build.circuit(second, "2", "Glue pots");
    here.circuitReadings.back().insulationEarth = read(megohms(0.8), 1);
    build.circuit(second, "3", "Saw");
    here.circuitReadings.back().loopImpedance = limited<Resistance>("saw in use");
    build.circuit(second, "4", "Long bench");
    here.circuitReadings.back().loopImpedance = read(ohms(2.15));

    Visit& visit = build.visit();
    visit.started = day(2026, 3, 9);
    visit.ended = day(2026, 3, 11);
    visit.inspector = "Inspector 2";
    visit.extent = "Both boards and all circuits.";
    visit.limitations = "The saw was in use.";
    visit.nextDue = day(2029, 3, 11);
    here.instruments.push_back({.id = build.ids.next(),
                                .visit = visit.id,
                                .name = "Tester 2",
                                .serial = "T2-0417",
                                .measures = "loop, insulation",
                                .calibrationDue = day(2027, 3, 1)});
    here.inspectionOutcomes.push_back(
        {build.ids.next(), visit.id, "intake-sound", InspectionResult::InOrder, "clean and dry"});

    Observation& charred = build.observation(second, kiln, Grade::MakeSafe, "The fuse carrier is charred.",
                                             "Keep the kiln circuit isolated until it is rewired.");
    charred.byWhen = "now";
    charred.whoActs = "client";
    build.photo(charred.id, paintedPhoto(800, 600, Qt::darkGray), "the carrier");
    build.observation(first, {}, Grade::WorthImproving, "Ways are not labelled.", "Label every way.")
        .whoActs = "client";
    (void)glue;
    return build.site;
}

ReportedSite nastySite() {
    Builder build(repeated("Very long name of a site that nobody would shorten ", 4));
    Installation& here = build.here();
    here.site.description = repeated("former ropeworks, spinning walk and tar house ", 6);
    here.site.address = repeated("Unbroken", 60);
    here.site.client = "日本の工房 · Мастерская · ورشة · Größenwahn & Söhne <b>";
    Visit& visit = build.visit();
    visit.started = day(2025, 12, 30);
    visit.ended = day(2026, 1, 2);
    visit.inspector = repeated("Inspector with many names ", 8);
    visit.extent = repeated(
        "Every board, every circuit, every socket that could be reached without moving a loom. ", 90);
    visit.limitations = repeated("x", 4000);

    const std::array names{std::string("Größe Ω µ 你好 Жёлтый"),
                           repeated("Donaudampfschifffahrtsgesellschaft", 3),
                           repeated("Sockets along the north wall of the long walk ", 5),
                           std::string("a_b_c under_score Z_s <i>&amp;</i>"),
                           std::string("مقابس الورشة"),
                           std::string()};
    const Id crowded =
        build.board(repeated("Board with a long name ", 7), repeated("in the room behind the room ", 9)).id;
    here.boards.back().notes = repeated("Keep clear. ", 80);
    for (int index = 0; index < 60; ++index) {
        const Id id = build.circuit(crowded, index % 7 == 0 ? "12 L1/L2/L3" : std::to_string(index + 1),
                                    names[static_cast<std::size_t>(index) % names.size()] + " " +
                                        std::to_string(index + 1));
        Circuit& circuit = here.circuits.back();
        CircuitReading& reading = here.circuitReadings.back();
        if (index % 10 == 9)
            circuit.section =
                repeated("A heading that is longer than it should be ", 7) + std::to_string(index);
        if (index % 5 == 0) reading.loopImpedance = read(ohms(12345.6789), 4);
        if (index % 5 == 1) reading.insulationEarth = read(megohms(0.0004), 4);
        if (index % 5 == 2)
            reading.continuity = limited<Resistance>(repeated("behind a press that could not be moved ", 4));
        if (index % 5 == 3) circuit.load = read(amperes(123456.78), 2);
        if (index % 5 == 4) circuit.device.family = "made-up-family-of-nobody";
        if (index % 4 == 0) circuit.wiring.length = Entry<Length>::of(metres(98765.4), 1, Origin::Assumed);
        if (index % 6 == 0) reading.remark = repeated("A remark of some length. ", 12);
        if (index < 9)
            build
                .observation(crowded, id, static_cast<Grade>(index % 4),
                             repeated("It is worn, loose and warm. ", 6 + 40 * (index % 3)),
                             repeated("Replace it with one that fits. ", 4))
                .byWhen = repeated("before the next season ", 3);
    }
    build.observation({}, {}, Grade::PutRight, repeated("unbroken", 600), {});
    build.photo(here.observations.back().id, paintedPhoto(4000, 300, Qt::gray),
                repeated("a very wide picture ", 10));
    build.photo(here.observations.back().id, paintedPhoto(30, 4000, Qt::black), "a very high one");
    here.photos.push_back(
        {build.ids.next(), here.observations.back().id, "nowhere", "image/png", "one that is not there"});
    build.board("", "");
    for (int index = 0; index < 30; ++index)
        here.instruments.push_back({.id = build.ids.next(),
                                    .visit = visit.id,
                                    .name = repeated("Tester ", index + 1),
                                    .serial = repeated("0", 8 * index),
                                    .calibrationDue = day(2025, 1, 1)});
    here.inspectionOutcomes.push_back({build.ids.next(), visit.id, repeated("own-item-", 20),
                                       InspectionResult::Observed, repeated("seen and written down ", 200)});
    build.site.officeLabels = {QStringLiteral("label of the office ").repeated(4),
                               QStringLiteral("B"),
                               {},
                               QStringLiteral("label").repeated(30)};
    return build.site;
}

ReportedSite demoSite() {
    const std::string folder = LOOPWRIGHT_SOURCE_DIR "/resources/demo/";
    const auto bytesOf = [](const std::string& path) {
        std::ifstream file(path, std::ios::binary);
        std::stringstream all;
        all << file.rdbuf();
        if (!file) throw std::runtime_error("cannot read " + path);
        return all.str();
    };
    SequentialIds ids;
    const auto imported = importSite(bytesOf(folder + "oakum-row.site.json"), ids,
                                     [&](std::string_view path) -> tl::expected<std::string, Message> {
                                         return bytesOf(folder + std::string(path));
                                     });
    if (!imported)
        throw std::runtime_error(imported.error().front().where + ": " +
                                 shown(imported.error().front().what));
    ReportedSite site;
    site.installation = imported->installation;
    site.attachments = imported->attachments;
    site.visit = site.installation.visits.back().id;
    return site;
}

} // namespace loopwright::test
