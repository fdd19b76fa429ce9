// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/nearest.h"
#include "core/sitefile/place.h"
#include "core/sitefile/site_file.h"

namespace loopwright::sitefile {

/// What was found wrong with a file so far; keeps the first screenful.
class Problems {
  public:
    void add(const Place& where, std::string_view key, std::vector<Argument> arguments = {}) {
        if (!full()) add(where.text(), {key, std::move(arguments)});
    }
    void add(std::string where, Message what) {
        if (!full()) found_.push_back({std::move(where), std::move(what)});
    }
    bool empty() const { return found_.empty(); }
    bool full() const { return found_.size() == most; }
    std::vector<SiteFileProblem> take() { return std::move(found_); }

  private:
    static constexpr std::size_t most = 20;
    std::vector<SiteFileProblem> found_;
};

} // namespace loopwright::sitefile
