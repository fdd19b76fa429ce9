// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/actions.h"

#include <QtGlobal>

#include <array>

namespace loopwright {

std::span<const ActionSpec> actionSpecs() {
    using enum ActionId;
    static constexpr std::array specs{
        ActionSpec{NewBook, MenuId::Book, QT_TRANSLATE_NOOP("Actions", "New book"), "Ctrl+N", Icon::Add,
                   Needs::Nothing},
        ActionSpec{OpenBook,
                   MenuId::Book,
                   QT_TRANSLATE_NOOP("Actions", "Open a book"),
                   "Ctrl+Shift+O",
                   {},
                   Needs::Nothing},
        ActionSpec{TakeIn, MenuId::Book, QT_TRANSLATE_NOOP("Actions", "Take in a site file"), "Ctrl+T",
                   Icon::TakeIn, Needs::Nothing},
        ActionSpec{CloseBook,
                   MenuId::Book,
                   QT_TRANSLATE_NOOP("Actions", "Close the book"),
                   "Ctrl+W",
                   {},
                   Needs::Book},
        ActionSpec{Quit,
                   MenuId::Book,
                   QT_TRANSLATE_NOOP("Actions", "Quit"),
                   "Ctrl+Q",
                   {},
                   Needs::Nothing,
                   false,
                   true},

        ActionSpec{GoTo, MenuId::Place, QT_TRANSLATE_NOOP("Actions", "Go to"), "Ctrl+K", Icon::GoTo},
        ActionSpec{ToPlaces, MenuId::Place, QT_TRANSLATE_NOOP("Actions", "Places"), "F2", Icon::Places},
        ActionSpec{ToSheet, MenuId::Place, QT_TRANSLATE_NOOP("Actions", "Sheet"), "F4", Icon::Sheet},
        ActionSpec{ToReasons, MenuId::Place, QT_TRANSLATE_NOOP("Actions", "Reasons"), "F6", Icon::Reasons},
        ActionSpec{ToObservations, MenuId::Place, QT_TRANSLATE_NOOP("Actions", "Observations"), "F5",
                   Icon::Observations},
        ActionSpec{OpenSite, MenuId::Place, QT_TRANSLATE_NOOP("Actions", "Open the site"), "", Icon::Site,
                   Needs::Site, false, true},
        ActionSpec{OpenBoard, MenuId::Place, QT_TRANSLATE_NOOP("Actions", "Open the board"), "Ctrl+B",
                   Icon::Board},

        ActionSpec{NewVisit, MenuId::Visit, QT_TRANSLATE_NOOP("Actions", "New visit"), "", Icon::Add},
        ActionSpec{OpenVisit, MenuId::Visit, QT_TRANSLATE_NOOP("Actions", "Open the visit"), "", Icon::Visit},
        ActionSpec{Inspect, MenuId::Visit, QT_TRANSLATE_NOOP("Actions", "Inspection"), "Ctrl+I",
                   Icon::Inspection, Needs::Site, false, true},
        ActionSpec{NoteObservation, MenuId::Visit, QT_TRANSLATE_NOOP("Actions", "Note an observation"),
                   "Ctrl+O", Icon::Observations},

        ActionSpec{Undo, MenuId::Sheet, QT_TRANSLATE_NOOP("Actions", "Undo"), "Ctrl+Z", Icon::Undo,
                   Needs::Book},
        ActionSpec{Redo, MenuId::Sheet, QT_TRANSLATE_NOOP("Actions", "Redo"), "Ctrl+Shift+Z", Icon::Redo,
                   Needs::Book},
        ActionSpec{OpenCircuit, MenuId::Sheet, QT_TRANSLATE_NOOP("Actions", "Open the circuit"), "Ctrl+E",
                   Icon::Circuit, Needs::Site, false, true},
        ActionSpec{LoadOverTime, MenuId::Sheet, QT_TRANSLATE_NOOP("Actions", "Load over time"), "Ctrl+L",
                   Icon::Heat},
        ActionSpec{NextMissing, MenuId::Sheet, QT_TRANSLATE_NOOP("Actions", "Next missing"), "Ctrl+M",
                   Icon::Missing},
        ActionSpec{ConfirmAsRead,
                   MenuId::Sheet,
                   QT_TRANSLATE_NOOP("Actions", "Confirm as read"),
                   "Ctrl+Return",
                   {},
                   Needs::Site,
                   true},
        ActionSpec{
            ClearCell, MenuId::Sheet, QT_TRANSLATE_NOOP("Actions", "Clear"), "Del", {}, Needs::Site, true},
        ActionSpec{AddWay, MenuId::Sheet, QT_TRANSLATE_NOOP("Actions", "Add a way"), "Ins", Icon::Add,
                   Needs::Site, true, true},
        ActionSpec{RemoveWay,
                   MenuId::Sheet,
                   QT_TRANSLATE_NOOP("Actions", "Remove the way"),
                   "Ctrl+Del",
                   {},
                   Needs::Site,
                   true},
        ActionSpec{ShowReport, MenuId::Report, QT_TRANSLATE_NOOP("Actions", "Show the report"), "Ctrl+R",
                   Icon::Report},
        ActionSpec{PrintReport, MenuId::Report, QT_TRANSLATE_NOOP("Actions", "Print"), "Ctrl+P", {}},
        ActionSpec{WritePdf, MenuId::Report, QT_TRANSLATE_NOOP("Actions", "Write a PDF"), "Ctrl+Shift+P", {}},

        ActionSpec{FoldReasons, MenuId::View, QT_TRANSLATE_NOOP("Actions", "Fold or unfold what holds"),
                   "Ctrl+.", Icon::Reasons},
        ActionSpec{Sums, MenuId::View, QT_TRANSLATE_NOOP("Actions", "Sums"), "Ctrl+U", {}, Needs::Nothing},
        ActionSpec{
            DarkLook, MenuId::View, QT_TRANSLATE_NOOP("Actions", "Dark"), "Ctrl+D", {}, Needs::Nothing},
    };
    return specs;
}

const char* menuTitle(MenuId menu) {
    static constexpr std::array<const char*, menuCount> titles{
        QT_TRANSLATE_NOOP("Actions", "&Book"),   QT_TRANSLATE_NOOP("Actions", "&Place"),
        QT_TRANSLATE_NOOP("Actions", "&Visit"),  QT_TRANSLATE_NOOP("Actions", "&Sheet"),
        QT_TRANSLATE_NOOP("Actions", "&Report"), QT_TRANSLATE_NOOP("Actions", "Vie&w"),
        QT_TRANSLATE_NOOP("Actions", "&Help")};
    return titles[static_cast<std::size_t>(menu)];
}

} // namespace loopwright
