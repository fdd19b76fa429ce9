// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"
#include "forms/frame/site_view.h"

#include <QString>

#include <functional>
#include <vector>

namespace loopwright {

/// A place to try forms on: a small site in memory, a door that applies changes to it, and four simple rules
/// that judge it. The rules are stand-ins: what the real checks say is tested with them.
class Bench {
  public:
    Bench();

    SiteViewPtr view() const { return view_; }
    ChangeDoor door();
    /// Called with the new view after each change.
    std::function<void(SiteViewPtr)> changed;

    Id circuit(const char* way) const;
    const CircuitReading* reading(const char* way) const;
    /// Looks at the installation again after a test has changed it.
    void refresh();

    Installation installation;
    Id visit, board;
    std::vector<Change> changes; ///< what came through the door
    SequentialIds ids{1000};
    Appearance appearance{QLocale::c()};

  private:
    void addCircuit(const char* way, const char* name, const char* family, double rating, double residual,
                    double line, double protective, const char* length, const char* load,
                    const char* continuity, const char* insulation, const char* loop,
                    const char* residualTime, const char* section);
    void addSpare(const char* way, const char* section);

    SequentialIds ownIds_;
    ReferenceTables tables_ = ReferenceTables::builtIn();
    std::vector<RuleSet> rules_ = builtInRuleSets();
    SiteViewPtr view_;
};

} // namespace loopwright
