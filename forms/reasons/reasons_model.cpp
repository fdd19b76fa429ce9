// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/reasons/reasons_model.h"

#include "forms/look/mark.h"
#include "forms/words/notation.h"
#include "forms/words/working_text.h"

#include <algorithm>

namespace loopwright {

ReasonsModel::ReasonsModel(const Appearance& appearance, QObject* parent)
  : QAbstractListModel(parent)
  , appearance_(appearance) {}

void ReasonsModel::show(SiteViewPtr view, Subject subject) {
    const bool sameSubject = subject == subject_;
    beginResetModel();
    view_ = std::move(view);
    subject_ = subject;
    if (!sameSubject) {
        open_ = {};
        folded_ = true;
    }
    arrange();
    endResetModel();
}

void ReasonsModel::arrange() {
    findings_.clear();
    holding_ = notApplying_ = 0;
    if (!view_) return;
    for (const Finding& finding : view_->assessment.findings) {
        if (finding.subject != subject_) continue;
        holding_ += finding.verdict == Verdict::Holds;
        notApplying_ += finding.verdict == Verdict::DoesNotApply;
        if (isLoud(finding.verdict) || !folded_) findings_.push_back(&finding);
    }
    std::ranges::stable_sort(findings_, {}, &Finding::verdict);
}

int ReasonsModel::rowCount(const QModelIndex& parent) const {
    if (parent.isValid()) return 0;
    return static_cast<int>(findings_.size()) + (holding_ + notApplying_ > 0 ? 1 : 0);
}

const Finding* ReasonsModel::findingAt(int row) const {
    return row < 0 || row >= static_cast<int>(findings_.size()) ? nullptr
                                                                : findings_[static_cast<std::size_t>(row)];
}

QString ReasonsModel::foldText() const {
    if (!folded_) return tr("Fold what holds");
    QStringList parts;
    const bool others = !findings_.empty();
    if (holding_ == 1) parts << (others ? tr("1 more check holds") : tr("1 check holds"));
    if (holding_ > 1) parts << (others ? tr("%1 more checks hold") : tr("%1 checks hold")).arg(holding_);
    if (notApplying_ == 1) parts << tr("1 doesn’t apply");
    if (notApplying_ > 1) parts << tr("%1 don’t apply").arg(notApplying_);
    return parts.join(QStringLiteral(", "));
}

QVariant ReasonsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole) return {};
    const Finding* finding = findingAt(index.row());
    if (!finding) return foldText();
    const Words& words = appearance_.words;
    const QString sentence = plainNotation(findingText(*finding, words));
    if (role == Qt::DisplayRole) return sentence;
    const QString margin = marginText(*finding, words);
    return words.word(wordKey(finding->verdict)) + QStringLiteral(": ") + sentence +
           (margin.isEmpty() ? QString() : QStringLiteral(" ") + tr("Margin %1.").arg(margin));
}

void ReasonsModel::setFolded(bool folded) {
    if (folded == folded_) return;
    beginResetModel();
    folded_ = folded;
    arrange();
    endResetModel();
}

bool ReasonsModel::isOpen(int row) const {
    const Finding* finding = findingAt(row);
    return finding && finding->check == open_;
}

void ReasonsModel::toggle(int row) {
    const Finding* finding = findingAt(row);
    if (!finding) return setFolded(!folded_);
    open_ = finding->check == open_ ? std::string_view() : finding->check;
    emit dataChanged(index(0), index(rowCount() - 1));
}

} // namespace loopwright
