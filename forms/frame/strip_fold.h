// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>

class QSplitter;

namespace loopwright {

class ObservationStrip;
class Type;

/// Keeps the strip of observations down to its head while the window is narrow, except while somebody uses
/// it.
class StripFold final : public QObject {
    Q_OBJECT
  public:
    /// `splitter` holds the strip; all outlive this.
    StripFold(ObservationStrip& strip, QSplitter& splitter, const Type& type, QObject* parent);

    void setNarrow(bool narrow);
    bool isNarrow() const { return narrow_; }
    /// Opens the strip and gives it the keyboard.
    void reveal();

  private:
    void fold(bool folded);

    ObservationStrip& strip_;
    QSplitter& splitter_;
    const Type& type_;
    int openHeight_; ///< of the strip, to come back to
    bool narrow_ = false;
};

} // namespace loopwright
