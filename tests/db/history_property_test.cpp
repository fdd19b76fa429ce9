// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/fixture.h"
#include "tests/support/arbitrary_installation.h"

#include <rapidcheck.h>

namespace loopwright {
namespace {

const Message anything{"change.field",
                       {std::string("somewhere"), std::string("something"), std::string("else")}};

RecordKind anyKind(bool siteToo) {
    std::vector<RecordKind> kinds;
    if (siteToo) kinds.push_back(RecordKind::Site);
    forEachRowKind([&](auto blank) { kinds.push_back(RecordTraits<decltype(blank)>::kind); });
    return *rc::gen::elementOf(kinds);
}

bool issues(RecordKind kind, const FieldInfo& field) {
    return kind == RecordKind::Visit && field.key == "state";
}

std::optional<Edit> anyInsert(const Installation& installation, IdSource& ids) {
    std::optional<Edit> edit;
    withRecordOf(anyKind(false), [&](auto blank) {
        using Record = decltype(blank);
        if (!arbitrary::hasOwners<Record>(installation)) return;
        Record made = arbitrary::record<Record>(installation, ids);
        if constexpr (std::is_same_v<Record, Visit>) made.state = VisitState::Open;
        edit = insertRecord(made);
    });
    return edit;
}

std::optional<Edit> anySet(const Installation& installation) {
    const RecordKind kind = anyKind(true);
    const std::vector<Id> rows = arbitrary::idsOf(installation, kind);
    if (rows.empty()) return std::nullopt;
    std::optional<Edit> edit;
    withRecordOf(kind, [&](auto blank) {
        const auto fields = fieldsOf<decltype(blank)>();
        const FieldInfo& field = fields[*rc::gen::inRange<std::size_t>(0, fields.size())].info;
        if (issues(kind, field)) return;
        edit = setField(kind, *rc::gen::elementOf(rows), std::string(field.key),
                        arbitrary::anyText(installation, field));
    });
    return edit;
}

std::optional<Edit> anyRemove(const Installation& installation) {
    const RecordKind kind = anyKind(false);
    const std::vector<Id> rows = arbitrary::idsOf(installation, kind);
    return rows.empty() ? std::nullopt : std::optional(removeRecord(kind, *rc::gen::elementOf(rows)));
}

/// What the workbook should hold after each action: plain copies, kept the simplest way.
struct Model {
    Installation now;
    std::vector<Installation> undoable{};
    std::vector<Installation> redoable{};

    bool change(const Change& change) {
        Installation changed = now;
        must(apply(changed, change));
        if (changed == now) return false;
        undoable.push_back(std::exchange(now, std::move(changed)));
        redoable.clear();
        return true;
    }
    static bool step(std::vector<Installation>& from, Installation& now, std::vector<Installation>& to) {
        if (from.empty()) return false;
        to.push_back(std::exchange(now, from.back()));
        from.pop_back();
        return true;
    }
    bool undo() { return step(undoable, now, redoable); }
    bool redo() { return step(redoable, now, undoable); }
};

enum class Action { Insert, Set, Remove, Several, Undo, Redo };

Change anyChange(const Installation& installation, Action action, IdSource& ids) {
    Change change{anything, {}};
    Installation state = installation;
    const int steps = action == Action::Several ? *rc::gen::inRange(2, 6) : 1;
    for (int i = 0; i < steps; ++i) {
        const Action each = action == Action::Several
                                ? *rc::gen::element(Action::Insert, Action::Set, Action::Remove)
                                : action;
        const auto edit = each == Action::Insert ? anyInsert(state, ids)
                          : each == Action::Set  ? anySet(state)
                                                 : anyRemove(state);
        if (!edit) continue;
        must(apply(state, {anything, {*edit}}));
        change.edits.push_back(*edit);
    }
    return change;
}

TEST_F(WorkbookProperty, AnySequenceOfActionsIsWhatPlainCopiesWouldBe) {
    Workbook book = create();
    EXPECT_TRUE(rc::check([&] {
        Installation start = arbitrary::installation(ids);
        for (Visit& visit : start.visits)
            visit.state = VisitState::Open;
        must(book.add(start, takenIn));
        Model model{start};
        const auto actions =
            *rc::gen::scale(0.3, rc::gen::container<std::vector<Action>>(rc::gen::element(
                                     Action::Insert, Action::Set, Action::Set, Action::Remove,
                                     Action::Several, Action::Undo, Action::Redo)));
        for (const Action action : actions) {
            if (action == Action::Undo) {
                if (model.undoable.empty()) continue; // the taking in itself would go
                RC_ASSERT(must(book.undo()).has_value() == model.undo());
            } else if (action == Action::Redo) {
                RC_ASSERT(must(book.redo()).has_value() == model.redo());
            } else {
                const Change change = anyChange(model.now, action, ids);
                RC_ASSERT(must(book.commit(change)).has_value() == model.change(change));
            }
            RC_ASSERT(must(book.load(start.site.id)) == model.now);
        }
        while (model.redo())
            must(book.redo());
        RC_ASSERT(must(book.load(start.site.id)) == model.now);
        const Installation last = model.now;
        int taken = 0;
        for (; model.undo(); ++taken)
            must(book.undo());
        RC_ASSERT(must(book.load(start.site.id)) == start);
        for (; taken > 0; --taken)
            must(book.redo());
        RC_ASSERT(must(book.load(start.site.id)) == last);
        RC_ASSERT(!must(book.redo()));
    }));
}

} // namespace
} // namespace loopwright
