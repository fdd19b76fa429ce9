// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/observations/photo_row.h"

#include "forms/frame/appearance.h"
#include "forms/look/style.h"

#include <QHBoxLayout>
#include <QPixmap>
#include <QPushButton>
#include <QToolButton>

namespace loopwright {
namespace {

constexpr QSize pictureSize{160, 120};

} // namespace

PhotoRow::PhotoRow(const Appearance& appearance, QWidget* parent)
  : QWidget(parent)
  , appearance_(appearance) {
    auto* outer = new QHBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
}

void PhotoRow::show(const SiteView& view, Id observation, bool readOnly) {
    delete pictures_;
    pictures_ = new QWidget(this);
    row_ = new QHBoxLayout(pictures_);
    row_->setContentsMargins(0, 0, 0, 0);
    row_->setSpacing(12);
    for (const Photo& photo : view.installation.photos)
        if (photo.observation == observation) addPicture(view, photo);
    auto* add = new QPushButton(tr("Add a photo"), pictures_);
    add->setIcon(appearance_.icon(Icon::Photo));
    add->setEnabled(!readOnly);
    connect(add, &QPushButton::clicked, this, &PhotoRow::addWanted);
    row_->addWidget(add, 0, Qt::AlignTop);
    row_->addStretch(1);
    layout()->addWidget(pictures_);
}

void PhotoRow::addPicture(const SiteView& view, const Photo& photo) {
    auto* button = new QToolButton(pictures_);
    button->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
    button->setAutoRaise(true);
    button->setIconSize(pictureSize);
    button->setText(
        button->fontMetrics().elidedText(text(photo.caption), Qt::ElideRight, pictureSize.width()));
    button->setToolTip(text(photo.caption));
    button->setAccessibleName(tr("Photo: %1").arg(text(photo.caption)));
    QPixmap picture;
    if (view.attachment && picture.loadFromData(view.attachment(photo.digest)))
        button->setIcon(picture.scaled(pictureSize, Qt::KeepAspectRatio, Qt::SmoothTransformation));
    else
        button->setIcon(appearance_.icon(Icon::Missing));
    const Id id = photo.id;
    connect(button, &QToolButton::clicked, this, [this, id] { emit openWanted(id); });
    row_->addWidget(button);
}

} // namespace loopwright
