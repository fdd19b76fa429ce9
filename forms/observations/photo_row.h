// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/site_view.h"

#include <QWidget>

class QHBoxLayout;

namespace loopwright {

class Appearance;

/// The pictures of one observation, small and in their order, with their captions, and a way to add one.
class PhotoRow final : public QWidget {
    Q_OBJECT

  public:
    PhotoRow(const Appearance& appearance, QWidget* parent);

    void show(const SiteView& view, Id observation, bool readOnly);

  signals:
    void addWanted();
    void openWanted(loopwright::Id photo);

  private:
    void addPicture(const SiteView& view, const Photo& photo);

    const Appearance& appearance_;
    QWidget* pictures_ = nullptr;
    QHBoxLayout* row_ = nullptr;
};

} // namespace loopwright
