// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"
#include "forms/records/form_plan.h"

#include <QScrollArea>

class QFormLayout;
class QLabel;
class QVBoxLayout;

namespace loopwright {

class Appearance;
class BelongingsList;
class FieldEditor;
class PhotoRow;

/// The form of one record of any kind: site, supply, board, circuit, equipment, visit, instrument,
/// observation. What it shows is in form_plan.cpp; a field is stored the moment it is left. What this visit
/// read about the record stands in the same form, and its row is made by the first reading typed.
class RecordForm final : public QScrollArea {
    Q_OBJECT

  public:
    /// `ids` makes the ids of records that the form adds; `appearance` and `ids` outlive the form.
    RecordForm(const Appearance& appearance, ChangeDoor door, IdSource& ids, QWidget* parent = nullptr);

    /// Shows another record, or nothing when the id is none.
    void open(const SiteViewPtr& view, RecordKind kind, Id id);
    /// Shows the same record after a change; closes itself when the record is gone.
    void setView(const SiteViewPtr& view);
    /// Puts the keyboard into the first field.
    void takeKeyboard();
    RecordKind kind() const { return kind_; }
    Id record() const { return id_; }
    bool isOpen() const { return !id_.isNone(); }

  signals:
    void recordWanted(loopwright::RecordKind kind, loopwright::Id id); ///< a belonging was chosen or added
    void photoWanted(loopwright::Id observation); ///< a picture is to be chosen and kept with it
    void closed();

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    struct Bound {
        FieldEditor* editor;
        RecordKind kind;
    };
    void build();
    void leaveField();
    void addHead(QVBoxLayout& column);
    void addSection(const FormSection& section, QVBoxLayout& column);
    void addField(RecordKind kind, std::string_view key, QFormLayout& fields);
    void addBelongings(RecordKind kind, QVBoxLayout& column);
    void addPhotos(QVBoxLayout& column);
    void refresh();
    std::string storedText(const Bound& bound) const;
    void enter(FieldEditor& editor, RecordKind kind, const QString& typed);
    void addBelonging(RecordKind kind);
    void take(const Change& change, FieldEditor* editor);
    bool isSealed() const;

    const Appearance& appearance_;
    ChangeDoor door_;
    IdSource& ids_;
    SiteViewPtr view_;
    RecordKind kind_ = RecordKind::Site;
    Id id_;
    std::vector<Bound> bound_;
    std::vector<BelongingsList*> belongings_;
    PhotoRow* photos_ = nullptr; ///< of an observation
    QLabel* title_ = nullptr;
    QLabel* refusal_ = nullptr;
};

} // namespace loopwright
