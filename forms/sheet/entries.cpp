// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sheet/entries.h"

#include "forms/sheet/cells.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>
#include <array>

namespace loopwright::entries {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Sheet", text);
}

tl::expected<Edit::Value, CellRefusal> parsed(const RowFacts& facts, const ColumnField& field,
                                              const QString& typed) {
    auto stored =
        parseField(*fieldInfo(field.kind, field.key), utf8(typed.trimmed()), facts.words.numberFormat());
    if (!stored) return tl::unexpected(facts.words.sentence(stored.error()));
    return Edit::Value{std::string(field.key), std::move(*stored)};
}

/// Parses the parts into the fields of the same place; an empty result of a part that was not typed is left
/// out.
Result parsedAll(const RowFacts& facts, std::span<const std::pair<ColumnField, QString>> parts) {
    CellEntry entry{parts.front().first.kind, {}};
    for (const auto& [field, typed] : parts) {
        auto value = parsed(facts, field, typed);
        if (!value) return tl::unexpected(value.error());
        entry.values.push_back(std::move(*value));
    }
    return entry;
}

/// What may be typed for an outcome, beside the word that the reader's language has for it.
struct TypedOutcome {
    const char16_t* typed;
    TestOutcome outcome;
};
constexpr std::array typedOutcomes{
    TypedOutcome{u"+", TestOutcome::Correct},         TypedOutcome{u"-", TestOutcome::Wrong},
    TypedOutcome{u"\u2212", TestOutcome::Wrong},      TypedOutcome{u"LIM", TestOutcome::Limited},
    TypedOutcome{u"N/A", TestOutcome::NotApplicable}, TypedOutcome{u"", TestOutcome::NotDone}};

std::optional<TestOutcome> outcomeNamed(const QString& typed, const Words& words) {
    for (const TypedOutcome& known : typedOutcomes)
        if (typed.compare(QStringView(known.typed), Qt::CaseInsensitive) == 0) return known.outcome;
    for (const Choice& choice : choicesOf<TestOutcome>().choices) {
        const QString word = words.word("choice.test-outcome." + std::string(choice.key));
        if (typed.compare(word, Qt::CaseInsensitive) == 0) return static_cast<TestOutcome>(choice.value);
    }
    return std::nullopt;
}

/// A device as it was typed, taken apart: "B32·30" is family B, rating 32, residual current 30.
struct TypedDevice {
    const DeviceFamily* family = nullptr; ///< nullptr: none was named
    QString rating;
    QString residual;
};

/// The family whose name on the sheet `head` begins with: the longest such name, and of several families the
/// one that is there already. A name that ends in a digit ("1361") is parted from the rating by a space.
const DeviceFamily* familyAtStart(const QString& head, const std::string& current,
                                  std::span<const DeviceFamily> families) {
    const DeviceFamily* best = nullptr;
    for (const DeviceFamily& family : families) {
        const QString name = cells::familyName(family);
        if (!head.startsWith(name, Qt::CaseInsensitive)) continue;
        const QString rest = head.mid(name.size());
        const bool parted =
            rest.isEmpty() || rest.front().isSpace() || (!name.back().isDigit() && rest.front().isDigit());
        const qsizetype bestLength = best ? cells::familyName(*best).size() : 0;
        if (parted && (name.size() > bestLength || (name.size() == bestLength && family.key == current)))
            best = &family;
    }
    return best;
}

tl::expected<TypedDevice, CellRefusal> takenApart(const QString& typed, const std::string& current,
                                                  std::span<const DeviceFamily> families) {
    static const QRegularExpression parting(QStringLiteral("[·/]"));
    static const QRegularExpression rating(QStringLiteral("^\\d[\\d.,]*(\\s*A)?$"));
    const QString whole = typed.trimmed();
    const qsizetype at = whole.lastIndexOf(parting);
    const QString head = (at < 0 ? whole : whole.left(at)).trimmed();
    TypedDevice device{familyAtStart(head, current, families), {}, at < 0 ? QString() : whole.mid(at + 1)};
    device.rating = head.mid(device.family ? cells::familyName(*device.family).size() : 0).trimmed();
    if (device.rating.isEmpty() || rating.match(device.rating).hasMatch()) return device;
    QStringList known;
    for (const DeviceFamily& family : families)
        if (const QString name = cells::familyName(family); !known.contains(name)) known << name;
    return tl::unexpected(
        tr("“%1” is not a device. Type family, rating and residual current, as B32·30. Families: %2.")
            .arg(typed, known.join(QStringLiteral(", "))));
}

constexpr ColumnField family{RecordKind::Circuit, "device.family"};
constexpr ColumnField rating{RecordKind::Circuit, "device.ratedCurrent_A"};
constexpr ColumnField residualFitted{RecordKind::Circuit, "residual.fitted"};
constexpr ColumnField residualCurrent{RecordKind::Circuit, "residual.residualCurrent_mA"};

} // namespace

Result field(const RowFacts& facts, const SheetColumn& column, const QString& typed) {
    return parsedAll(facts, std::array{std::pair(column.fields.front(), typed)});
}

Result outcome(const RowFacts& facts, const SheetColumn& column, const QString& typed) {
    const auto named = outcomeNamed(typed.trimmed(), facts.words);
    if (!named) return tl::unexpected(tr("“%1” is not an outcome. Type +, -, LIM or N/A.").arg(typed));
    const ColumnField& field = column.fields.front();
    const bool isDone = *named != TestOutcome::NotDone;
    return CellEntry{field.kind,
                     {{std::string(field.key), isDone ? std::string(choiceKey(*named)) : std::string()}}};
}

Result device(const RowFacts& facts, const SheetColumn&, const QString& typed) {
    const auto device = takenApart(typed, facts.circuit.device.family, facts.view.tables->deviceFamilies());
    if (!device) return tl::unexpected(device.error());
    auto entry = parsedAll(
        facts, std::array{std::pair(rating, device->rating), std::pair(residualCurrent, device->residual)});
    if (!entry) return entry;
    entry->values.push_back({std::string(residualFitted.key), device->residual.isEmpty() ? "" : "true"});
    if (device->family)
        entry->values.push_back({std::string(family.key), device->family->key});
    else if (typed.trimmed().isEmpty())
        entry->values.push_back({std::string(family.key), {}});
    return entry;
}

Result sizes(const RowFacts& facts, const SheetColumn& column, const QString& typed) {
    const qsizetype parting = typed.indexOf(u'/');
    const QString line = parting < 0 ? typed : typed.left(parting);
    std::vector parts{std::pair(column.fields[0], line)};
    const bool clearsBoth = typed.trimmed().isEmpty();
    if (parting >= 0 || clearsBoth)
        parts.emplace_back(column.fields[1], parting < 0 ? QString() : typed.mid(parting + 1));
    return parsedAll(facts, parts);
}

QString fieldText(const RowFacts& facts, const SheetColumn& column) {
    const ColumnField& field = column.fields.front();
    const FieldInfo* info = fieldInfo(field.kind, field.key);
    const std::string stored = storedText(facts, field.kind, field.key);
    if (info->kind != FieldKind::Figure) return text(stored);
    const auto entry = parseEntry(stored, info->unit);
    return entry ? text(formatFigure(*entry, facts.words.numberFormat())) : text(stored);
}

QString shownText(const RowFacts& facts, const SheetColumn& column) {
    return column.show(facts, column).text;
}

} // namespace loopwright::entries
