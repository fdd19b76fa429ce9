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

class InspectionPage;
class ObservationStrip;
class OverloadPage;
class PlaceHead;
class PlacesPanel;
class ReasonsPanel;
class RecordForm;
class SheetModel;
class SheetView;
class SidePanel;
class StripFold;

/// Everything of an open site: Places, in the middle the sheet, the form of a record, the inspection or a
/// load over time with the observations below, and Reasons. It keeps where one is; the site itself comes in
/// views and changes through the door.
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
    InspectionPage& inspection() { return *inspection_; }
    OverloadPage& overload() { return *overload_; }
    ObservationStrip& strip() { return *strip_; }
    StatusLine& status() { return *status_; }
    bool isSheetShown() const;
    bool isInspectionShown() const;
    bool isOverloadShown() const;

    void save(QSettings& settings) const;
    void restore(const QSettings& settings);

  public slots:
    void toPlaces();
    void toSheet();
    void toReasons();
    void toObservations();
    void openCircuit();
    void openOverload();
    void openBoard();
    void openVisit();
    void openInspection();
    void noteObservation();
    /// The next reading that a check misses, or the next item nobody has looked at.
    void nextMissing();

  signals:
    void visitWanted(const loopwright::Id& visit);
    void photoWanted(const loopwright::Id& observation);
    void logWanted(const loopwright::Id& circuit);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void assemble();
    void connectParts();
    void openForm(RecordKind kind, Id id);
    void choosePlace(const Subject& subject);
    void enterPlace();
    void showBoard(Id board);
    /// What stands in the middle.
    Subject shown() const;
    Subject reasonsSubject() const;
    Id boardInView() const;
    void showInMiddle(QWidget* page);
    void describeHere();
    void refreshMiddle();
    void fold();

    const Appearance& appearance_;
    IdSource& ids_;
    ChangeDoor door_;
    SiteViewPtr view_;
    Id board_;
    Subject place_;            ///< where one is in Places
    bool boardInHand_ = false; ///< while the keyboard is in Places, the board is spoken of and not a circuit
    PlacesPanel* places_;
    ReasonsPanel* reasons_;
    PlaceHead* head_;
    SheetModel* model_;
    SheetView* sheet_;
    RecordForm* form_;
    InspectionPage* inspection_;
    OverloadPage* overload_;
    ObservationStrip* strip_;
    StatusLine* status_;
    QStackedWidget* pages_;
    QSplitter* across_;
    QSplitter* down_;
    SidePanel* placesSide_ = nullptr;
    SidePanel* reasonsSide_ = nullptr;
    StripFold* stripFold_ = nullptr;
};

} // namespace loopwright
