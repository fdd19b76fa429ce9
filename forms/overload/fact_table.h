// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/words/overload_words.h"

#include <QWidget>

#include <vector>

class QGridLayout;

namespace loopwright {

/// What is so at the left, how much at the right, a hairline below each.
class FactTable final : public QWidget {
    Q_OBJECT
  public:
    explicit FactTable(const Appearance& appearance, QWidget* parent = nullptr);
    void show(const std::vector<OverloadFact>& facts);

  private:
    const Appearance& appearance_;
    QWidget* body_ = nullptr;
};

} // namespace loopwright
