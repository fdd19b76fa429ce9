// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/circuit_log.h"
#include "forms/frame/role_frame.h"

class QComboBox;
class QPushButton;

namespace loopwright {

class FactTable;
class PlotView;
class RoleLabel;

/// One log of a circuit's current: what it is called, which channel counts, what was found in it, and the
/// picture.
class LogCard final : public RoleFrame {
    Q_OBJECT
  public:
    /// `appearance` outlives the card.
    LogCard(const Appearance& appearance, const CurrentLog& log, QWidget* parent = nullptr);

    /// Offers its channels where there are several.
    void offer(const overload::LoggedCurrents& currents, const std::string& chosen);
    void show(CircuitLog found);
    /// Says why there is nothing to show.
    void refuse(const QString& sentence);
    void setReadOnly(bool readOnly);
    QComboBox& channels() { return *channels_; }
    QPushButton& removeButton() { return *remove_; }
    PlotView& plot() { return *plot_; }

  signals:
    void channelChosen(const QString& channel); ///< empty: the first
    void openWanted();
    void removeWanted();

  protected:
    void changeEvent(QEvent* event) override;

  private:
    void assemble(const QString& name);

    const Appearance& appearance_;
    QComboBox* channels_;
    QPushButton* remove_;
    RoleLabel* said_;
    QWidget* shown_; ///< picture and figures; away while there are none
    PlotView* plot_;
    RoleLabel* reading_;
    FactTable* facts_;
};

} // namespace loopwright
