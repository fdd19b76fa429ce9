// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/strip_fold.h"

#include "forms/look/type.h"
#include "forms/observations/observation_strip.h"

#include <QApplication>
#include <QListView>
#include <QSplitter>

#include <algorithm>

namespace loopwright {
namespace {

constexpr int headHeight = 34;
constexpr int leastHeight = 68;
constexpr int usualHeight = 128;

} // namespace

StripFold::StripFold(ObservationStrip& strip, QSplitter& splitter, const Type& type, QObject* parent)
  : QObject(parent)
  , strip_(strip)
  , splitter_(splitter)
  , type_(type)
  , openHeight_(type.scaled(usualHeight)) {
    strip_.setMinimumHeight(type.scaled(leastHeight));
    splitter_.setSizes({4 * openHeight_, openHeight_});
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (narrow_ && now && !strip_.isAncestorOf(now)) fold(true);
    });
}

void StripFold::setNarrow(bool narrow) {
    if (narrow == narrow_) return;
    narrow_ = narrow;
    fold(narrow);
}

void StripFold::fold(bool folded) {
    if (folded == strip_.isFolded()) return;
    if (folded) openHeight_ = std::max(strip_.height(), type_.scaled(leastHeight));
    strip_.setFolded(folded);
    strip_.setMinimumHeight(type_.scaled(folded ? headHeight : leastHeight));
    strip_.setMaximumHeight(folded ? type_.scaled(headHeight) : QWIDGETSIZE_MAX);
    // The splitter keeps the room that it gave before, also to a part that may no longer fill it.
    const int height = folded ? type_.scaled(headHeight) : openHeight_;
    splitter_.setSizes({std::max(0, splitter_.height() - height), height});
}

void StripFold::reveal() {
    fold(false);
    QListView& list = strip_.list();
    if (list.model()->rowCount() > 0 && !list.currentIndex().isValid())
        list.setCurrentIndex(list.model()->index(0, 0));
    list.setFocus();
}

} // namespace loopwright
