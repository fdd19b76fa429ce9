// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

namespace loopwright {

/// A value that is kept apart, so that what holds it stays small: it costs one pointer, and nothing is
/// allocated until it is written to. Until then it reads as an empty one. Copies are copies of the value.
template <class Value>
class Boxed {
  public:
    Boxed() = default;
    Boxed(const Boxed& other)
      : value_(other.value_ ? std::make_unique<Value>(*other.value_) : nullptr) {}
    Boxed(Boxed&&) noexcept = default;
    Boxed& operator=(const Boxed& other) {
        if (this != &other) *this = Boxed(other);
        return *this;
    }
    Boxed& operator=(Boxed&&) noexcept = default;
    ~Boxed() = default;

    const Value& operator*() const {
        static const Value empty;
        return value_ ? *value_ : empty;
    }
    const Value* operator->() const { return &**this; }
    Value& write() {
        if (!value_) value_ = std::make_unique<Value>();
        return *value_;
    }

    friend bool operator==(const Boxed& a, const Boxed& b) { return *a == *b; }

  private:
    std::unique_ptr<Value> value_;
};

} // namespace loopwright
