// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/frame/site_view.h"
#include "forms/frame/status_line.h"

#include <QWidget>

class QSettings;
class QSplitter;
class QStackedWidget;

namespace loopwright {

class ObservationStrip;
class PlaceHead;
class PlacesPanel;
class ReasonsPanel;
class RecordForm;
class SheetModel;
class SheetView;
class SidePanel;

/// Everything of an open site: Places, in the middle the sheet or the form of a record with the observations
/// below, and Reasons. It keeps where one is; the site itself comes in views and changes through the door.
class WorkArea final : public QWidget {
    Q_OBJECT
  public:
    /// `appearance` and `ids` outlive the area.
    WorkArea(const Appearance& appearance, IdSource& ids, ChangeDoor door, QWidget* parent = nullptr);

    void show(const SiteViewPtr& view, const BookState& book);
    /// A board or circuit shows its sheet; other records their form.
    void goTo(const Subject& subject);
    Id board() const { return board_; }

    SheetView& sheet() { return *sheet_; }
    ReasonsPanel& reasons() { return *reasons_; }
    PlacesPanel& places() { return *places_; }
    RecordForm& form() { return *form_; }
    ObservationStrip& strip() { return *strip_; }
    StatusLine& status() { return *status_; }
    bool isSheetShown() const;

    void save(QSettings& settings) const;
    void restore(const QSettings& settings);

  public slots:
    void toPlaces();
    void toSheet();
    void toReasons();
    void openCircuit();
    void openBoard();
    void openVisit();
    void noteObservation();
    void nextMissing();

  signals:
    void visitWanted(const loopwright::Id& visit);
    void photoWanted(const loopwright::Id& observation);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void assemble();
    void connectParts();
    void openForm(RecordKind kind, Id id);
    void choosePlace(const Subject& subject);
    Subject reasonsSubject() const;
    void refreshMiddle();
    void fold();

    const Appearance& appearance_;
    IdSource& ids_;
    ChangeDoor door_;
    SiteViewPtr view_;
    Id board_;
    PlacesPanel* places_;
    ReasonsPanel* reasons_;
    PlaceHead* head_;
    SheetModel* model_;
    SheetView* sheet_;
    RecordForm* form_;
    ObservationStrip* strip_;
    StatusLine* status_;
    QStackedWidget* pages_;
    QSplitter* across_;
    QSplitter* down_;
    SidePanel* placesSide_ = nullptr;
    SidePanel* reasonsSide_ = nullptr;
};

} // namespace loopwright
