// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/facts.h"

#include <QCoreApplication>
#include <QDate>

namespace loopwright::report {
namespace {

QString daySaid(const std::string& stored, const Words& words) {
    const QDate day = QDate::fromString(text(stored), Qt::ISODate);
    if (!day.isValid()) return text(stored);
    return words.date(Date{std::chrono::year(day.year()),
                           std::chrono::month(static_cast<unsigned>(day.month())),
                           std::chrono::day(static_cast<unsigned>(day.day()))});
}

/// A device's family by its full label; a key that the tables do not know as it is.
QString familySaid(const std::string& key, const ReportInput& input) {
    const DeviceFamily* family = input.tables.deviceFamily(key);
    return text(family ? family->label : key);
}

} // namespace

QString entrySaid(const EntryText& entry, const Unit& unit, const Words& words) {
    QString figure = words.figure(entry);
    const bool isFigure = entry.state == EntryState::Value || entry.state == EntryState::Above ||
                          entry.state == EntryState::Below;
    if (!isFigure) return figure;
    QString said = unit.symbol.empty() ? figure : figure + QChar(QChar::Nbsp) + text(unit.symbol);
    if (entry.origin == Origin::Carried || entry.origin == Origin::Computed ||
        entry.origin == Origin::Assumed)
        said += QStringLiteral(", ") + words.word("origin." + std::string(originWord(entry.origin)));
    return said;
}

QString fieldSaid(const FieldInfo& field, const std::string& stored, const ReportInput& input) {
    if (stored.empty()) return {};
    switch (field.kind) {
    case FieldKind::Figure: {
        const auto entry = parseEntry(stored, field.unit);
        return entry ? entrySaid(*entry, field.unit, input.words) : text(stored);
    }
    case FieldKind::Option:
        return input.words.word("choice." + std::string(field.choices->name) + "." + stored);
    case FieldKind::Flag:
        return stored == "true" ? QCoreApplication::translate("Report", "yes")
                                : QCoreApplication::translate("Report", "no");
    case FieldKind::Day:
        return daySaid(stored, input.words);
    default:
        return field.key.ends_with("family") ? familySaid(stored, input) : text(stored);
    }
}

QString deviceSaid(const Device& device, const ReportInput& input) {
    const DeviceFamily* family = input.tables.deviceFamily(device.family);
    QStringList first;
    if (!device.family.empty()) first << text(family ? family->shortLabel : device.family);
    const Words& words = input.words;
    const QString rated = entrySaid(toText(device.ratedCurrent, units::ampere), units::ampere, words);
    if (!rated.isEmpty()) first << rated;
    const QString capacity =
        entrySaid(toText(device.breakingCapacity, units::kiloampere), units::kiloampere, words);
    return capacity.isEmpty() ? first.join(u' ') : QStringLiteral("%1, %2").arg(first.join(u' '), capacity);
}

void writeFactColumns(const Composing& composing, Flow& flow, const std::vector<Fact>& facts) {
    constexpr double nameShare = 0.5;
    const Table one(composing.type, {{columnWidth * nameShare, {}}, {columnWidth * (1 - nameShare), {}}});
    const Table both(composing.type, {{columnWidth + columnGap, {}}, {columnWidth, {}}});
    const auto cell = [&](const Fact& fact) {
        const Stack name = one.text(0, fact.name, style::cellSoft, Notation::Symbols);
        const Stack said = one.text(1, fact.said);
        Box box{columnWidth, std::max(heightOf(name), heightOf(said)), {}};
        box.put(joined(name), {0, 0});
        box.put(joined(said), {columnWidth * nameShare, 0});
        return box;
    };
    flow.openTable({});
    for (std::size_t at = 0; at < facts.size(); at += 2) {
        std::vector<Stack> cells{{cell(facts[at])}};
        if (at + 1 < facts.size()) cells.push_back({cell(facts[at + 1])});
        flow.row(both.row(cells));
    }
    flow.closeTable();
}

} // namespace loopwright::report
