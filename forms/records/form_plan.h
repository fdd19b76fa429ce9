// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/fields.h"
#include "forms/frame/site_view.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright {

/// A heading of a record's form and the fields below it. All fields of a section are of one record.
struct FormSection {
    const char* heading; ///< English, context "RecordForm"; empty: the form's own first block
    /// Whose fields: the record itself, or what this visit read about it.
    RecordKind kind;
    std::vector<std::string_view> fields;
};

/// What the form of a kind of record shows, in reading order.
std::span<const FormSection> formPlan(RecordKind kind);

/// Kinds of record that belong to this one and are listed at the foot of its form, each with its own form.
std::span<const RecordKind> belongings(RecordKind kind);

/// One value that a field can be set to: its stored form and what a person reads.
struct FieldOption {
    std::string stored;
    QString shown;
};

class Words;

/// What a field offers to choose from: choices, records it can name, device families, rule sets. Empty: it is
/// typed.
std::vector<FieldOption> fieldOptions(const SiteView& view, RecordKind kind, const FieldInfo& field,
                                      const Words& words);

/// How a person finds a record: "Board C / F1", "2026, periodic", "Tester 2".
QString recordTitle(const Installation& installation, RecordKind kind, Id id);

} // namespace loopwright
