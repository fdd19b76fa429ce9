// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/places/places_model.h"

#include "forms/frame/place_text.h"
#include "forms/inspection/inspection_rows.h"
#include "forms/look/mark.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <functional>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Places", text);
}

PlaceNode& add(PlaceNode& parent, PlaceNode&& made) {
    made.parent = &parent;
    parent.children.push_back(std::make_unique<PlaceNode>(std::move(made)));
    return *parent.children.back();
}

/// The worst verdict of a tally and how many have it; what holds is not counted, because most do.
void setWorst(PlaceNode& node, const Tally& tally) {
    for (const Verdict verdict : {Verdict::Fails, Verdict::CannotTell, Verdict::Close, Verdict::Holds})
        if (tally.of(verdict) > 0) {
            node.worst = verdict;
            node.count = verdict == Verdict::Holds ? 0 : tally.of(verdict);
            return;
        }
}

/// The board that feeds `board`; nullptr when the supply does, or nobody knows.
const Board* feedingBoard(const Installation& installation, const Board& board) {
    const Circuit* feeder = find(installation.circuits, board.fedFrom);
    return feeder ? find(installation.boards, feeder->board) : nullptr;
}

class TreeMaker {
  public:
    explicit TreeMaker(const SiteView& view)
      : view_(view)
      , placed_(view.installation.boards.size(), false) {}

    std::unique_ptr<PlaceNode> make() {
        const Installation& installation = view_.installation;
        auto root = std::make_unique<PlaceNode>();
        PlaceNode& site =
            add(*root, {{RecordKind::Site, installation.site.id}, text(installation.site.name), Icon::Site});
        for (const Supply& supply : installation.supplies)
            addSupply(site, supply);
        addBoardsFedFrom(site, nullptr);
        // Boards that feed each other in a ring have no beginning; they are shown all the same.
        for (std::size_t i = 0; i < placed_.size(); ++i)
            if (!placed_[i]) addBoard(site, i);
        addInspection(site);
        addCounted(site, RecordKind::Instrument, tr("Instruments"), Icon::Instrument,
                   countOf(installation.instruments));
        addCounted(site, RecordKind::Observation, tr("Observations"), Icon::Observations,
                   countOf(installation.observations));
        return root;
    }

  private:
    template <class Record>
    int countOf(const std::vector<Record>& rows) const {
        return static_cast<int>(std::ranges::count(rows, view_.visit, &Record::visit));
    }

    void addSupply(PlaceNode& site, const Supply& supply) {
        const std::string earthing(choiceKey(supply.earthing));
        const QString title = supply.earthing == Earthing::Unknown
                                  ? tr("Supply")
                                  : tr("Supply, %1").arg(text(earthing).toUpper());
        PlaceNode& node = add(site, {{RecordKind::Supply, supply.id}, title, Icon::Supply});
        Tally tally;
        for (const Finding* finding : view_.assessment.about(supply.id))
            tally.add(finding->verdict);
        setWorst(node, tally);
    }

    /// Counts the items nobody has looked at or could, because they are what is left to do. What was observed
    /// is marked where the observations are.
    void addInspection(PlaceNode& site) {
        PlaceNode& node =
            add(site, {{RecordKind::InspectionOutcome, {}}, tr("Inspection"), Icon::Inspection});
        if (view_.visit.isNone()) return;
        const ResultCounts counts(inspectionRows(view_.installation, view_.visit, *view_.tables));
        node.count = counts.unseen();
        if (node.count > 0)
            node.worst = Verdict::CannotTell;
        else if (counts.of(InspectionResult::Observed) == 0)
            node.worst = Verdict::Holds;
    }

    static void addCounted(PlaceNode& site, RecordKind kind, const QString& title, Icon icon, int count) {
        add(site, {{kind, {}}, title, icon, std::nullopt, count});
    }

    void addBoardsFedFrom(PlaceNode& parent, const Board* feeder) {
        const auto& boards = view_.installation.boards;
        for (std::size_t i = 0; i < boards.size(); ++i)
            if (!placed_[i] && feedingBoard(view_.installation, boards[i]) == feeder) addBoard(parent, i);
    }

    void addBoard(PlaceNode& parent, std::size_t at) {
        const Board& board = view_.installation.boards[at];
        placed_[at] = true;
        PlaceNode& node = add(parent, {{RecordKind::Board, board.id}, boardTitle(board), Icon::Board});
        Tally tally = view_.assessment.circuits(view_.installation, board.id);
        for (const Finding* finding : view_.assessment.about(board.id))
            if (isLoud(finding->verdict)) tally.add(finding->verdict);
        setWorst(node, tally);
        addBoardsFedFrom(node, &board);
    }

    const SiteView& view_;
    std::vector<bool> placed_; ///< by board; a board stands in the tree once
};

} // namespace

std::unique_ptr<PlaceNode> placesOf(const SiteView& view) {
    return TreeMaker(view).make();
}

PlacesModel::PlacesModel(const Appearance& appearance, QObject* parent)
  : QAbstractItemModel(parent)
  , appearance_(appearance)
  , root_(std::make_unique<PlaceNode>()) {}

void PlacesModel::show(const SiteViewPtr& view) {
    beginResetModel();
    view_ = view;
    root_ = view ? placesOf(*view) : std::make_unique<PlaceNode>();
    endResetModel();
}

const PlaceNode* PlacesModel::nodeAt(const QModelIndex& index) const {
    return index.isValid() ? static_cast<const PlaceNode*>(index.constInternalPointer()) : root_.get();
}

Subject PlacesModel::subjectAt(const QModelIndex& index) const {
    return nodeAt(index)->subject;
}

QModelIndex PlacesModel::indexOf(const Subject& subject) const {
    if (!view_) return {};
    Subject wanted = subject;
    if (const Id board = boardOf(view_->installation, wanted.id); !board.isNone())
        wanted = {RecordKind::Board, board};
    const std::function<QModelIndex(const QModelIndex&)> search = [&](const QModelIndex& at) -> QModelIndex {
        for (int row = 0; row < rowCount(at); ++row) {
            const QModelIndex child = index(row, 0, at);
            if (subjectAt(child) == wanted) return child;
            if (const QModelIndex found = search(child); found.isValid()) return found;
        }
        return {};
    };
    return search({});
}

QModelIndex PlacesModel::index(int row, int column, const QModelIndex& parent) const {
    if (!hasIndex(row, column, parent)) return {};
    return createIndex(row, column, nodeAt(parent)->children[static_cast<std::size_t>(row)].get());
}

QModelIndex PlacesModel::parent(const QModelIndex& index) const {
    if (!index.isValid()) return {};
    const PlaceNode* above = nodeAt(index)->parent;
    if (!above || !above->parent) return {};
    const auto& siblings = above->parent->children;
    const auto at = std::ranges::find(siblings, above, &std::unique_ptr<PlaceNode>::get);
    return createIndex(static_cast<int>(at - siblings.begin()), 0, above);
}

int PlacesModel::rowCount(const QModelIndex& parent) const {
    return parent.column() > 0 ? 0 : static_cast<int>(nodeAt(parent)->children.size());
}

int PlacesModel::columnCount(const QModelIndex&) const {
    return 1;
}

QVariant PlacesModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const PlaceNode& node = *nodeAt(index);
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
        return node.title;
    case NamesRole:
        return names(node);
    case Qt::AccessibleTextRole:
        return spoken(node);
    case WorstRole:
        return node.worst ? QVariant(static_cast<int>(*node.worst)) : QVariant();
    case CountRole:
        return node.count;
    case IconRole:
        return static_cast<int>(node.icon);
    default:
        return {};
    }
}

QStringList PlacesModel::names(const PlaceNode& node) const {
    if (node.subject.kind != RecordKind::Board) return {node.title};
    const QString kind = appearance_.words.word("record.board") + u' ';
    const bool iconSaysKind = node.title.startsWith(kind, Qt::CaseInsensitive);
    const QString whole = iconSaysKind ? node.title.mid(kind.size()) : node.title;
    QString brief = whole.section(u':', 0, 0).section(u',', 0, 1);
    if (iconSaysKind)
        brief.replace(QStringLiteral(", "), QStringLiteral(" ")); // "C kiln range": a letter needs no comma
    return {whole, brief, node.title.section(u',', 0, 0)};
}

QString PlacesModel::spoken(const PlaceNode& node) const {
    QStringList parts{node.title};
    if (node.count > 0) parts << appearance_.words.number(std::int64_t{node.count});
    if (node.worst) parts << appearance_.words.word(wordKey(*node.worst));
    return parts.join(QStringLiteral(", "));
}

} // namespace loopwright
