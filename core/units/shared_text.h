// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <ostream>
#include <string>
#include <string_view>

namespace loopwright {

/// A text that never changes and that its copies share.
class SharedText {
  public:
    SharedText() = default;
    SharedText(std::string text)
      : text_(text.empty() ? nullptr : std::make_shared<const std::string>(std::move(text))) {}
    SharedText(std::string_view text)
      : SharedText(std::string(text)) {}
    SharedText(const char* text)
      : SharedText(std::string(text)) {}

    bool empty() const { return text_ == nullptr; }
    std::string_view view() const { return text_ ? std::string_view(*text_) : std::string_view(); }
    operator std::string_view() const { return view(); }

    friend bool operator==(const SharedText& a, const SharedText& b) {
        return a.text_ == b.text_ || a.view() == b.view();
    }
    friend bool operator==(const SharedText& a, std::string_view b) { return a.view() == b; }
    friend bool operator==(const SharedText& a, const char* b) { return a.view() == b; }
    friend std::ostream& operator<<(std::ostream& out, const SharedText& text) { return out << text.view(); }

  private:
    std::shared_ptr<const std::string> text_; ///< nullptr: empty
};

} // namespace loopwright
