// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/icons.h"

#include <optional>
#include <span>

namespace loopwright {

/// Everything that can be done from a menu.
enum class ActionId : std::uint8_t {
    NewBook,
    OpenBook,
    TakeIn,
    CloseBook,
    Quit,
    Undo,
    Redo,
    GoTo,
    ToPlaces,
    ToSheet,
    ToReasons,
    ToObservations,
    OpenSite,
    OpenBoard,
    NewVisit,
    OpenVisit,
    Inspect,
    NoteObservation,
    OpenCircuit,
    LoadOverTime,
    NextMissing,
    ConfirmAsRead,
    ClearCell,
    AddWay,
    RemoveWay,
    FoldReasons,
    ShowReport,
    PrintReport,
    WritePdf,
    Sums,
    DarkLook,
};

enum class MenuId : std::uint8_t { Book, Place, Visit, Sheet, Report, View, Help };
inline constexpr int menuCount = 7;

/// When an action can be used.
enum class Needs : std::uint8_t { Nothing, Book, Site };

/// One action, said once: menus, command bar and shortcuts are made from this table.
struct ActionSpec {
    ActionId id;
    MenuId menu;
    const char* text; ///< translated in the context "Actions"
    const char* keys; ///< portable text of the shortcut; empty: none
    std::optional<Icon> icon;
    Needs needs = Needs::Site;
    bool onSheet = false;     ///< its shortcut counts only while the sheet has the keyboard
    bool startsGroup = false; ///< a line above it in the menu
};
std::span<const ActionSpec> actionSpecs();

const char* menuTitle(MenuId menu); ///< translated in the context "Actions"

} // namespace loopwright
