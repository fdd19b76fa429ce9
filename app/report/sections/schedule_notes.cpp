// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/facts.h"
#include "app/report/sections/schedule.h"

#include "core/model/fields.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr double keptNote = 30 * mm;  ///< notes that are higher may be parted
constexpr double keptNotes = 80 * mm; ///< that stand in one box, one below the other
constexpr TextStyle keyStyle{PageText::Head, Weight::Regular, &Look::inkSoft};

/// Pieces beside each other, on as many lines as they need.
class Wrapped {
  public:
    Wrapped(double width, double lineHeight)
      : lineHeight_(lineHeight) {
        box_ = {width, 0, {}};
    }

    void put(const Box& piece) {
        if (at_ > 0 && at_ + piece.width > box_.width) {
            at_ = 0;
            top_ += lineHeight_;
        }
        box_.put(piece, {at_, top_});
        at_ += piece.width + between;
    }
    Box finish() {
        box_.height = top_ + lineHeight_;
        return box_;
    }

  private:
    static constexpr double between = 4.6 * mm;
    double lineHeight_;
    Box box_;
    double at_ = 0;
    double top_ = 0;
};

Box said(const Typesetter& type, const QString& words, const TextStyle& style = keyStyle) {
    return type.line(words, style, type.width(words, style) + 0.1 * mm);
}

Box markSaid(const Typesetter& type, Verdict verdict, const QString& word) {
    const double height = type.lineHeight(keyStyle);
    constexpr double side = 2.3 * mm, indent = 3.3 * mm;
    const Box words = said(type, word, style::inked(keyStyle, inkOf(verdict)));
    Box box{indent + words.width, height, {}};
    box.add(MarkInk{QRectF(0, (height - side) / 2, side, side), markOf(verdict), inkOf(verdict)});
    box.put(words, {indent, 0});
    return box;
}

Box cornersSaid(const Typesetter& type, const QString& word) {
    const double height = type.lineHeight(keyStyle);
    constexpr double wide = 5 * mm, high = 2.4 * mm, indent = 6.4 * mm;
    const Box words = said(type, word);
    Box box{indent + words.width, height, {}};
    box.add(CornersInk{QRectF(0, (height - high) / 2, wide, high), &Look::cannotTell});
    box.put(words, {indent, 0});
    return box;
}

QString limitSaid(const RuleSet& rules, const Words& words) {
    if (rules.loopRule == LoopRule::CorrectedReading)
        return QCoreApplication::translate(
            "Report", "limit: the permitted loop, against the reading corrected to hot conductors");
    return QCoreApplication::translate("Report", "limit: %1 of the permitted loop, cold reading")
        .arg(words.measure({rules.loopGuard * 100, units::percent, 0}));
}

/// Names by what they share, in the order in which that first appears.
using Grouped = std::vector<std::pair<QString, QStringList>>;

void add(Grouped& groups, const QString& shared, const QString& name) {
    if (shared.isEmpty()) return;
    const auto found = std::ranges::find(groups, shared, &Grouped::value_type::first);
    if (found == groups.end())
        groups.push_back({shared, {name}});
    else
        found->second << name;
}

QString wayOf(const Circuit& circuit) {
    return text(circuit.way.empty() ? circuit.name : circuit.way);
}

QString listed(const Grouped& ways) {
    QStringList said;
    for (const auto& [shared, those] : ways)
        said << QStringLiteral("%1: %2").arg(shared, those.join(QStringLiteral(", ")));
    return said.join(QStringLiteral(".  "));
}

/// Each once, in the order in which they first appear.
void addOnce(QStringList& list, const QString& said) {
    if (!said.isEmpty() && !list.contains(said)) list << said;
}

QStringList devicesIn(const std::vector<ScheduleRow>& rows) {
    QStringList devices;
    for (const ScheduleRow& row : rows)
        if (const DeviceFamily* family = row.input.tables.deviceFamily(row.circuit.device.family))
            addOnce(devices, QStringLiteral("%1: %2").arg(text(family->shortLabel), text(family->label)));
    return devices;
}

QStringList methodsIn(const std::vector<ScheduleRow>& rows) {
    QStringList methods;
    for (const ScheduleRow& row : rows)
        if (row.circuit.wiring.method != InstallationMethod::Unknown)
            addOnce(methods, row.input.words.word("choice.method." +
                                                  std::string(choiceKey(row.circuit.wiring.method))));
    return methods;
}

/// What a cable is, where its two sizes do not say it: copper with PVC goes without saying.
QString cableOf(const ScheduleRow& row) {
    const Wiring& wiring = row.circuit.wiring;
    const Words& words = row.input.words;
    QStringList said;
    if (!wiring.description.empty()) said << text(wiring.description);
    if (wiring.material != Material::Copper)
        said << words.word("choice.material." + std::string(choiceKey(wiring.material)));
    if (wiring.insulation != Insulation::Pvc70)
        said << words.word("choice.insulation." + std::string(choiceKey(wiring.insulation)));
    return said.join(QStringLiteral(", "));
}

QString residualOf(const ScheduleRow& row) {
    const ResidualDevice& device = row.circuit.residual;
    if (!device.fitted) return {};
    const Words& words = row.input.words;
    QStringList said;
    if (device.type != ResidualType::Unknown)
        said << words.word("choice.residual-type." + std::string(choiceKey(device.type)));
    if (device.delay == ResidualDelay::Delayed)
        said << words.word("choice.residual-delay." + std::string(choiceKey(device.delay)));
    return said.join(QStringLiteral(", "));
}

/// Why a reading could not be taken, empty where no reason is recorded as with a test's outcome; nothing
/// of any other reading.
std::optional<std::string> limitIn(const Field<CircuitReading>& field, const CircuitReading& reading) {
    const std::string stored = field.get(reading);
    if (field.info.kind == FieldKind::Option && stored == choiceKey(TestOutcome::Limited)) return "";
    if (field.info.kind != FieldKind::Figure) return std::nullopt;
    const auto entry = parseEntry(stored, field.info.unit);
    if (!entry || entry->state != EntryState::Limited) return std::nullopt;
    return entry->reason;
}

/// What could not be read, each reason once.
QStringList limitsOf(const ScheduleRow& row) {
    Grouped byReason;
    QStringList unexplained;
    for (const Field<CircuitReading>& field : fieldsOf<CircuitReading>()) {
        const auto reason = limitIn(field, *row.reading);
        if (!reason) continue;
        const QString name = row.input.words.word("field.circuit_reading." + std::string(field.info.key));
        if (reason->empty())
            unexplained << name;
        else
            add(byReason, text(*reason), name);
    }
    if (byReason.size() == 1 && byReason.front().second.size() + unexplained.size() > 1)
        return {QCoreApplication::translate("Report", "LIM throughout: %1").arg(byReason.front().first)};
    QStringList said;
    for (const auto& [reason, names] : byReason)
        said << QCoreApplication::translate("Report", "%1: LIM: %2")
                    .arg(names.join(QStringLiteral("; ")), reason);
    if (!unexplained.isEmpty())
        said << QCoreApplication::translate("Report", "%1: LIM, no reason is recorded")
                    .arg(unexplained.join(QStringLiteral("; ")));
    return said;
}

/// Reasons why something was not read, the fault current at a circuit's own device, and what somebody
/// remarked.
QStringList remarksOf(const ScheduleRow& row) {
    QStringList said;
    const Words& words = row.input.words;
    if (row.reading) {
        said << limitsOf(row);
        if (row.reading->prospectiveFaultCurrent.hasFigure())
            said << QStringLiteral("%1: %2").arg(
                words.word("field.circuit_reading.prospectiveFaultCurrent_kA"),
                entrySaid(toText(row.reading->prospectiveFaultCurrent, units::kiloampere), units::kiloampere,
                          words));
        if (!row.reading->remark.empty()) said << text(row.reading->remark);
    }
    if (!row.circuit.notes.empty()) said << text(row.circuit.notes);
    return said;
}

/// Whether a cell of these rows has the property.
bool isAny(const std::vector<ScheduleRow>& rows, bool ScheduleCell::*property) {
    const std::vector<ScheduleColumn> columns = scheduleColumns();
    return std::ranges::any_of(rows, [&](const ScheduleRow& row) {
        return row.circuit.use != CircuitUse::Spare &&
               std::ranges::any_of(columns,
                                   [&](const ScheduleColumn& column) { return column.cell(row).*property; });
    });
}

/// A note with its name at the left; in parts where it is high.
Stack note(const Typesetter& type, const QString& name, const QString& said, double width) {
    constexpr double nameWidth = 24 * mm, below = 0.4 * mm;
    Stack parts;
    for (const Stack& lines :
         split(type.paragraph(said, style::foot, width - nameWidth, Align::Left, Notation::Symbols),
               keptNote)) {
        if (lines.empty()) continue;
        const Stack title =
            parts.empty() ? type.fitted(name, style::footStrong, nameWidth - 2 * mm) : Stack{};
        Box box{width, std::max(heightOf(lines), heightOf(title)) + below, {}};
        box.put(joined(title), {0, 0});
        box.put(joined(lines), {nameWidth, 0});
        parts.push_back(box);
    }
    return parts;
}

} // namespace

Box scheduleKey(const Composing& composing, const std::vector<ScheduleRow>& rows) {
    const Typesetter& type = composing.type;
    const Words& words = composing.input.words;
    Wrapped line(sheetOf(PageForm::Landscape).width, type.lineHeight(keyStyle) + 0.4 * mm);
    for (const Verdict verdict : {Verdict::Holds, Verdict::Close, Verdict::Fails, Verdict::CannotTell})
        line.put(markSaid(type, verdict, words.word(wordKey(verdict))));
    if (isAny(rows, &ScheduleCell::isMissing))
        line.put(cornersSaid(type, QCoreApplication::translate("Report", "not read")));
    TextStyle carried = keyStyle;
    carried.isItalic = true;
    line.put(said(type, QCoreApplication::translate("Report", "‹ carried from the visit before"), carried));
    line.put(said(type, QCoreApplication::translate("Report", "· told, or from a plate")));
    line.put(said(type, QCoreApplication::translate("Report", "= worked out")));
    line.put(said(type, QCoreApplication::translate("Report", "~ assumed")));
    line.put(said(type, QCoreApplication::translate("Report", "+ correct, − wrong")));
    if (isAny(rows, &ScheduleCell::isLimited))
        line.put(said(type, QCoreApplication::translate("Report", "LIM: could not be read, see the notes")));
    line.put(
        said(type, QCoreApplication::translate("Report", "at 1, at 5: times the rated residual current")));
    line.put(said(type, limitSaid(composing.input.rules, words)));
    const Box key = line.finish();
    Box box{key.width, key.height + 2 * mm, {}};
    box.put(key, {0, 2 * mm});
    return box;
}

Stack scheduleNotes(const Composing& composing, const std::vector<ScheduleRow>& rows) {
    constexpr double between = 8 * mm;
    const double width = (sheetOf(PageForm::Landscape).width - between) / 2;
    Grouped cables, residuals;
    for (const ScheduleRow& row : rows) {
        add(cables, cableOf(row), wayOf(row.circuit));
        add(residuals, residualOf(row), wayOf(row.circuit));
    }
    Stack notes;
    const auto write = [&](const QString& name, const QString& said) {
        append(notes, note(composing.type, name, said, width));
    };
    write(QCoreApplication::translate("Report", "Devices"), devicesIn(rows).join(QStringLiteral(".  ")));
    write(QCoreApplication::translate("Report", "Residual types"), listed(residuals));
    write(QCoreApplication::translate("Report", "Methods"), methodsIn(rows).join(QStringLiteral(".  ")));
    write(QCoreApplication::translate("Report", "Cables"), listed(cables));
    for (const ScheduleRow& row : rows)
        write(QCoreApplication::translate("Report", "Way %1").arg(text(row.circuit.way)),
              remarksOf(row).join(QStringLiteral(".  ")));

    Stack boxes;
    for (const Stack& part : split(notes, keptNotes)) {
        if (part.empty()) continue;
        const std::size_t left = balanced(part);
        boxes.push_back(
            sideBySide(std::span(part).first(left), std::span(part).subspan(left), width + between));
    }
    return boxes;
}

} // namespace loopwright::report
