// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/current_log.h"
#include "forms/frame/site_view.h"

#include <QWidget>

#include <map>
#include <vector>

class QPushButton;
class QVBoxLayout;

namespace loopwright {

class Appearance;
class LogCard;
class RoleLabel;

/// The logs of one circuit's current that are kept with the visit, one below the other. It asks for another
/// to be taken in; who does so says here why one was not.
class LoggedPart final : public QWidget {
    Q_OBJECT
  public:
    /// `appearance` outlives the part.
    LoggedPart(const Appearance& appearance, ChangeDoor door, QWidget* parent = nullptr);

    void show(const SiteViewPtr& view, Id circuit);
    /// Until the next show().
    void refuse(const QString& sentence);
    const std::vector<LogCard*>& cards() const { return cards_; }
    QPushButton& takeInButton() { return *takeIn_; }

  signals:
    void logWanted(const loopwright::Id& circuit); ///< a file is to be chosen and kept with its readings
    void openWanted(const loopwright::Id& log);    ///< the form of a log is to be shown

  private:
    using Read = tl::expected<overload::LoggedCurrents, Message>;
    void add(const CurrentLog& log, QVBoxLayout& column);
    const Read& readingOf(const CurrentLog& log);
    void chooseChannel(Id log, const std::string& channel);
    void remove(Id log);
    void carryOut(const Change& change);
    bool isSealed() const;

    const Appearance& appearance_;
    ChangeDoor door_;
    SiteViewPtr view_;
    Id circuit_;
    QPushButton* takeIn_;
    RoleLabel* refusal_;
    QWidget* body_ = nullptr;
    std::vector<LogCard*> cards_;
    std::map<std::string, Read> read_; ///< a cache of what is shown: a digest stays the same log
};

} // namespace loopwright
