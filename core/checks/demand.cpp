// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/demand.h"

#include "core/checks/demand_kinds.h"
#include "core/checks/load_current.h"
#include "core/physics/demand.h"

#include <algorithm>

namespace loopwright {
namespace {

/// Whether the circuit is known to ask for nothing: no equipment is recorded, and its load is 0 or not
/// applicable; or all that it serves is generation.
bool asksForNothing(const CircuitRecords& records) {
    const bool wasMeasured = records.reading && records.reading->measuredLoad.hasFigure();
    const Entry<Current>& load = wasMeasured ? records.reading->measuredLoad : records.circuit.load;
    const bool isZero = load.state == EntryState::Value && load.value == Current();
    if (load.hasFigure() && !isZero) return false;
    if (records.equipment.empty()) return isZero || load.state == EntryState::NotApplicable;
    return std::ranges::all_of(records.equipment, [](const Equipment* equipment) {
        return equipment->kind == EquipmentKind::PvInverter;
    });
}

/// The design current. How it was got is told where the circuit itself is judged, and what it lacks there
/// too.
std::optional<Figure<Current>> designCurrent(const VisitContext& visit, const CircuitRecords& records) {
    if (asksForNothing(records)) return Figure<Current>{};
    VisitContext aside = visit;
    aside.detail = Detail::VerdictOnly;
    Worksheet scratch(phrasing<"board-demand">, aside, {RecordKind::Circuit, records.circuit.id});
    const auto load = loadCurrent(aside, records, scratch);
    return load ? std::optional(Figure<Current>{load->value, load->bound}) : std::nullopt;
}

/// Calls `take` with each line that a circuit or board of these phases is on.
template <class Take>
void forLines(Phases phases, Take&& take) {
    if (phases != Phases::Three) return take(static_cast<std::size_t>(phases));
    for (std::size_t line = 0; line < 3; ++line)
        take(line);
}

void addTo(Figure<Current>& sum, Current value, Bound bound) {
    sum = {sum.value + value, combined(sum.bound, bound)};
}

/// The inspector's own figure for a circuit or a supply, which is that of each of its lines. 0 is none: where
/// nothing is connected the circuits say so themselves.
template <class Record>
std::optional<Demand> ownFigure(const Record& record, Worksheet& sheet) {
    const Entry<Current>& own = record.demand;
    if (!own.hasFigure() || !isUsable(own.value)) return std::nullopt;
    const Bound bound = boundOf(own.state);
    if (bound != Bound::Exact) sheet.beyondRange(record, "demand_A");
    Demand demand{{}, 1};
    forLines(record.phases, [&](std::size_t line) { demand.lines[line] = {own.value, bound}; });
    return demand;
}

/// Adds up the circuits of one board.
class BoardTally {
  public:
    BoardTally(const VisitContext& visit, const Board& board, std::size_t depth, Worksheet& sheet)
      : visit_(visit)
      , board_(board)
      , depth_(depth)
      , sheet_(sheet) {}

    Demand result() {
        for (const Outgoing& outgoing : visit_.distribution.startingAt(board_.id))
            if (isInUse(outgoing.circuit)) add(outgoing);
        addAllowed();
        return demand_;
    }

  private:
    void add(const Outgoing& outgoing) {
        if (const auto own = ownFigure(outgoing.circuit, sheet_)) {
            addShown(*own, outgoing.circuit, "check.note.demand-own");
        } else if (!outgoing.fed.empty()) {
            addBoards(outgoing);
        } else if (const auto load = designCurrent(visit_, outgoing)) {
            addLoad(outgoing, *load);
        } else {
            lack(outgoing.circuit);
        }
    }
    void addLoad(const Outgoing& outgoing, const Figure<Current>& load) {
        const std::size_t kind = loadKindOf(outgoing);
        if (load.bound != Bound::Exact) sheet_.beyondRange(outgoing.circuit, "load_A");
        ++demand_.circuits;
        forLines(outgoing.circuit.phases, [&](std::size_t line) {
            sums_[kind][line].add(load.value);
            addTo(demand_.lines[line], Current(), load.bound);
        });
        show([&] {
            return computedTerm(
                "I_b", load.value, units::ampere,
                {"check.note.demand-of-circuit",
                 {pathOf(visit_.installation, outgoing.circuit), Word{loadKinds[kind].phrase}}});
        });
    }
    /// What boards ask for flows in the lines of the circuit that feeds them.
    void addBoards(const Outgoing& outgoing) {
        Demand fed;
        if (depth_ < visit_.distribution.boards)
            for (const Board* board : outgoing.fed)
                fed.add(BoardTally(visit_, *board, depth_ + 1, sheet_).result());
        if (outgoing.circuit.phases != Phases::Three) {
            Figure<Current> sum;
            for (const Figure<Current>& line : fed.lines)
                addTo(sum, line.value, line.bound);
            fed.lines = {};
            fed.lines[static_cast<std::size_t>(outgoing.circuit.phases)] = sum;
        }
        addShown(fed, outgoing.circuit, "check.note.demand-of-boards");
    }
    void addShown(const Demand& more, const Circuit& circuit, std::string_view note) {
        demand_.add(more);
        forLines(circuit.phases, [&](std::size_t line) {
            show([&] {
                return computedTerm(lineSymbol(line), more.lines[line].value, units::ampere,
                                    {note, {pathOf(visit_.installation, circuit)}});
            });
        });
    }
    void lack(const Circuit& circuit) {
        ++demand_.circuits;
        sheet_.lacks(circuit, "load_A");
        forLines(circuit.phases,
                 [&](std::size_t line) { addTo(demand_.lines[line], Current(), Bound::OrMore); });
    }
    /// The loads of each kind, with what the allowance leaves of them.
    void addAllowed() {
        for (std::size_t kind = 0; kind < loadKinds.size(); ++kind) {
            const bool isAsked = std::ranges::any_of(
                sums_[kind], [](const physics::LoadSums& sums) { return sums.total > Current(); });
            if (!isAsked) continue;
            const auto allowance = publishedAllowance(visit_, kind);
            if (allowance) showAllowance(*allowance, loadKinds[kind].phrase);
            for (std::size_t line = 0; line < 3; ++line)
                demand_.lines[line].value +=
                    allowance ? physics::demandAfterAllowance(sums_[kind][line], allowance->value)
                              : sums_[kind][line].total;
        }
    }
    void showAllowance(const Sourced<physics::Allowance>& allowance, std::string_view phrase) {
        const physics::Allowance& value = allowance.value;
        const Source& source = allowance.source;
        const auto share = [&](std::string_view symbol, Ratio ratio) {
            show([&] {
                return tableTerm(symbol, ratio, units::ratio, source,
                                 {"check.note.allowance", {Word{phrase}}});
            });
        };
        share("f_1", value.largest);
        share("f_2", value.second);
        share("f_3", value.others);
        if (value.inFull > Current())
            show([&] {
                return tableTerm("I_full", value.inFull, units::ampere, source,
                                 {"check.note.allowance", {Word{phrase}}});
            });
    }
    template <class Make>
    void show(Make&& make) {
        if (depth_ == 0) sheet_.showAside(std::forward<Make>(make));
    }
    static std::string_view lineSymbol(std::size_t line) {
        constexpr std::array symbols{"I_L1", "I_L2", "I_L3"};
        return symbols[line];
    }

    const VisitContext& visit_;
    const Board& board_;
    std::size_t depth_; ///< of this board below the one that is asked about
    Worksheet& sheet_;
    Demand demand_;
    std::array<std::array<physics::LoadSums, 3>, loadKinds.size()> sums_;
};

} // namespace

void Demand::add(const Demand& other) {
    for (std::size_t line = 0; line < lines.size(); ++line)
        addTo(lines[line], other.lines[line].value, other.lines[line].bound);
    circuits += other.circuits;
}

std::size_t Demand::most() const {
    const auto most = std::ranges::max_element(
        lines, [](const Figure<Current>& a, const Figure<Current>& b) { return a.value < b.value; });
    return static_cast<std::size_t>(most - lines.begin());
}

Word lineWord(std::size_t line) {
    constexpr std::array words{"choice.phases.L1", "choice.phases.L2", "choice.phases.L3"};
    return {words[line]};
}

Demand demandOfCircuits(const VisitContext& visit, const Board& board, Worksheet& sheet) {
    return BoardTally(visit, board, 0, sheet).result();
}

Demand demandOfBoard(const BoardContext& context, Worksheet& sheet) {
    if (!context.feeders.empty()) {
        const Circuit& feeder = context.feeders.front().circuit;
        if (const auto own = ownFigure(feeder, sheet)) {
            sheet.show([&] {
                return recordedTerm("I_d", feeder.demand, units::ampere,
                                    {"check.note.demand-own", {pathOf(context.installation, feeder)}});
            });
            return *own;
        }
    }
    return demandOfCircuits(context, context.board, sheet);
}

Demand demandAtIntake(const VisitContext& visit, Worksheet& sheet) {
    const Supply& supply = *visit.supply;
    if (const auto own = ownFigure(supply, sheet)) {
        sheet.show([&] { return recordedTerm("I_d", supply.demand, units::ampere); });
        return *own;
    }
    Demand sum;
    for (const Board* board : visit.distribution.atSupply)
        sum.add(demandOfCircuits(visit, *board, sheet));
    return sum;
}

} // namespace loopwright
