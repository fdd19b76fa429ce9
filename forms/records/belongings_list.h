// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"

#include <QWidget>

class QVBoxLayout;

namespace loopwright {

class Appearance;

/// The records of one kind that belong to another (a circuit's equipment, a visit's instruments): one line
/// each, to open or remove, and a button that adds one.
class BelongingsList final : public QWidget {
    Q_OBJECT

  public:
    BelongingsList(const Appearance& appearance, RecordKind ownerKind, RecordKind kind, QWidget* parent);

    void show(const SiteView& view, Id owner, bool readOnly);

  signals:
    void openWanted(loopwright::RecordKind kind, loopwright::Id id);
    void addWanted(loopwright::RecordKind kind);
    void removeWanted(loopwright::RecordKind kind, loopwright::Id id);

  private:
    void addLine(const QString& title, Id id, bool readOnly);

    const Appearance& appearance_;
    const RecordKind ownerKind_;
    const RecordKind kind_;
    QWidget* lines_ = nullptr;
    QVBoxLayout* column_ = nullptr;
};

/// The key of the field in which a record of `kind` names the record it belongs to; empty when it never
/// belongs to one.
std::string_view ownerKey(RecordKind kind, RecordKind ownerKind);

} // namespace loopwright
