// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/style.h"

#include "forms/look/controls.h"
#include "forms/look/paper_style.h"

#include <QAbstractButton>
#include <QApplication>
#include <QLineEdit>
#include <QToolTip>

namespace loopwright {

void applyLook(QApplication& application, const Look& look, const Type& type) {
    application.setStyle(new PaperStyle(look, type)); // the application owns it
    application.setPalette(palette(look));
    for (const char* editor : {"QLineEdit", "QTextEdit", "QPlainTextEdit"})
        application.setPalette(selectedTextPalette(look), editor);
    application.setFont(type.screen(ScreenText::Body));
    // Windows learn of the font by a posted event. One that is shown before it came is laid out for the old
    // font.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::ApplicationFontChange);
    QToolTip::setPalette(palette(look));
    QToolTip::setFont(type.screen(ScreenText::Figure));
    for (const auto effect : {Qt::UI_AnimateMenu, Qt::UI_FadeMenu, Qt::UI_AnimateCombo, Qt::UI_AnimateTooltip,
                              Qt::UI_FadeTooltip, Qt::UI_AnimateToolBox})
        QApplication::setEffectEnabled(effect, false);
}

void setButtonKind(QAbstractButton& button, ButtonKind kind) {
    controls::setKind(button, kind);
    button.update();
}

void setRefused(QLineEdit& field, bool refused) {
    controls::setRefused(field, refused);
    field.update();
}

} // namespace loopwright
