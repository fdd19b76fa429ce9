// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/assess/allocations.h"

#include <cstdlib>
#include <new>

// These replace the library's for the whole program. They stand apart from the tests: where g++ inlines one
// of the pair it warns of the other.
namespace {
thread_local std::size_t counted = 0;
}

void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
    ++counted;
    return std::malloc(size > 0 ? size : 1);
}
void* operator new(std::size_t size) {
    if (void* memory = operator new(size, std::nothrow)) return memory;
    throw std::bad_alloc();
}
void operator delete(void* memory) noexcept {
    std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
    std::free(memory);
}

namespace loopwright::test {

std::size_t allocations() {
    return counted;
}

} // namespace loopwright::test
