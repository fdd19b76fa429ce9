// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/inspection/inspection_view.h"

#include <QAbstractButton>

namespace loopwright {

/// One result: its key, its mark, its word and how many items have it. A click does what the key does.
class ResultButton final : public QAbstractButton {
    Q_OBJECT
  public:
    ResultButton(const Appearance& appearance, const ResultKey& key, QWidget* parent = nullptr);
    void setCount(int count);
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString word() const;
    QString number() const;

    const Appearance& appearance_;
    ResultKey key_;
    int count_ = 0;
};

/// All results in a row: what there is to press, and how the inspection stands.
class ResultKeys final : public QWidget {
    Q_OBJECT
  public:
    explicit ResultKeys(const Appearance& appearance, QWidget* parent = nullptr);
    void show(const ResultCounts& counts, bool canChoose);

  signals:
    void chosen(loopwright::InspectionResult result);

  private:
    std::array<ResultButton*, resultKeys.size()> buttons_{};
};

} // namespace loopwright
