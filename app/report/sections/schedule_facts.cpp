// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/facts.h"
#include "app/report/places.h"
#include "app/report/sections/schedule.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

/// A name above, what is said below.
struct BoardFact {
    QString name; ///< in core's notation
    QString said;
};

class BoardFacts {
  public:
    BoardFacts(const Composing& composing, const Board& board)
      : input_(composing.input)
      , board_(board)
      , feeder_(find(input_.installation.circuits, board.fedFrom))
      , reading_(findReading(input_.installation.boardReadings, composing.visit.id, &BoardReading::board,
                             board.id)) {}

    std::vector<BoardFact> make() && {
        const auto translate = [](const char* source) {
            return QCoreApplication::translate("Report", source);
        };
        add(translate(QT_TRANSLATE_NOOP("Report", "Fed from")), fedFrom());
        if (feeder_) {
            add(translate(QT_TRANSLATE_NOOP("Report", "Device")), deviceSaid(feeder_->device, input_));
            add(translate(QT_TRANSLATE_NOOP("Report", "Feeder")), feederSizes());
        }
        addReading(QStringLiteral("Z_db"), &BoardReading::loopImpedance, units::ohm);
        addReading(translate(QT_TRANSLATE_NOOP("Report", "Fault current")),
                   &BoardReading::prospectiveFaultCurrent, units::kiloampere);
        addReading(translate(QT_TRANSLATE_NOOP("Report", "Own electrode, R_A")),
                   &BoardReading::electrodeResistance, units::ohm);
        add(translate(QT_TRANSLATE_NOOP("Report", "Board rated")),
            joinedWith(entry(board_.ratedCurrent, units::ampere),
                       entry(board_.withstandCurrent, units::kiloampere)));
        add(input_.words.word("field.board.ambient_degC"), entry(board_.ambient, units::celsius));
        addResidual();
        addOutcome(translate(QT_TRANSLATE_NOOP("Report", "Polarity")), &BoardReading::polarity);
        if (board_.phases == Phases::Three)
            addOutcome(translate(QT_TRANSLATE_NOOP("Report", "Phase sequence")),
                       &BoardReading::phaseSequence);
        else
            add(translate(QT_TRANSLATE_NOOP("Report", "Phase")),
                input_.words.word("choice.phases." + std::string(choiceKey(board_.phases))));
        return std::move(facts_);
    }

  private:
    static QString joinedWith(const QString& first, const QString& second) {
        return first.isEmpty() || second.isEmpty() ? first + second
                                                   : QStringLiteral("%1, %2").arg(first, second);
    }
    void add(const QString& name, const QString& said) {
        if (!said.isEmpty()) facts_.push_back({name, said});
    }
    template <class Q>
    QString entry(const Entry<Q>& entry, const Unit& unit) const {
        return entrySaid(toText(entry, unit), unit, input_.words);
    }
    template <class Q>
    void addReading(const QString& name, Entry<Q> BoardReading::*member, const Unit& unit) {
        if (reading_) add(name, entry(reading_->*member, unit));
    }
    void addOutcome(const QString& name, TestOutcome BoardReading::*member) {
        const TestOutcome outcome = reading_ ? reading_->*member : TestOutcome::NotDone;
        add(name, input_.words.word("choice.test-outcome." + std::string(choiceKey(outcome))));
    }
    void addResidual() {
        if (!board_.residual.fitted) return;
        QString said = entry(board_.residual.residualCurrent, units::milliampere);
        if (reading_) {
            said = joinedWith(said, entry(reading_->residualTime, units::millisecond));
            said = joinedWith(said, entry(reading_->residualTimeFive, units::millisecond));
        }
        add(QCoreApplication::translate("Report", "RCD"), said);
    }
    QString fedFrom() const {
        if (!feeder_) return QCoreApplication::translate("Report", "supply");
        return addressOf(input_.installation,
                         {find(input_.installation.boards, feeder_->board), feeder_, nullptr});
    }
    /// "35 / 16 mm², 24 m"
    QString feederSizes() const {
        const Wiring& wiring = feeder_->wiring;
        const QString line = input_.words.figure(toText(wiring.lineSize, units::squareMillimetre));
        const QString protective = entry(wiring.protectiveSize, units::squareMillimetre);
        const QString sizes = line.isEmpty() ? QString() : QStringLiteral("%1 / %2").arg(line, protective);
        return joinedWith(sizes, entry(wiring.length, units::metre));
    }

    const ReportInput& input_;
    const Board& board_;
    const Circuit* feeder_;
    const BoardReading* reading_;
    std::vector<BoardFact> facts_;
};

Box factBox(const Typesetter& type, const BoardFact& fact) {
    const double most = 80 * mm;
    const double width = std::min(
        most, std::max(type.richWidth(fact.name, style::head), type.width(fact.said, style::cellStrong)) +
                  0.1 * mm);
    Stack stack{type.line(fact.name, style::head, width, Align::Left, Notation::Symbols)};
    append(stack, type.paragraph(fact.said, style::cellStrong, width));
    Box box = joined(stack);
    box.width = width;
    return box;
}

} // namespace

void writeBoardFacts(const Composing& composing, Flow& flow, const Board& board) {
    const double width = sheetOf(PageForm::Landscape).width;
    constexpr double between = 9 * mm;
    std::vector<std::vector<Box>> lines(1);
    double used = 0;
    for (const BoardFact& fact : BoardFacts(composing, board).make()) {
        const Box box = factBox(composing.type, fact);
        if (used + box.width > width && !lines.back().empty()) {
            lines.emplace_back();
            used = 0;
        }
        used += box.width + between;
        lines.back().push_back(box);
    }
    Stack stack{gap(1.6 * mm)};
    for (const std::vector<Box>& line : lines) {
        Box row{width, 0, {}};
        double at = 0;
        for (const Box& box : line) {
            row.put(box, {at, 0});
            row.height = std::max(row.height, box.height + 1 * mm);
            at += box.width + between;
        }
        stack.push_back(row);
    }
    Box box = joined(stack);
    box.height += 0.6 * mm;
    box.add(LineInk{{0, box.height}, {width, box.height}, hairline, &Look::lineStrong});
    box.height += 3.2 * mm;
    flow.add(box, 0, Keep::WithNext);
    if (board.notes.empty()) return;
    flow.add(composing.type.paragraph(text(board.notes), style::cellSoft, width), 0);
    flow.add(gap(2 * mm), 0, Keep::WithNext);
}

} // namespace loopwright::report
