// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/document.h"

#include "core/sitefile/place.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>

namespace loopwright::sitefile {
namespace {

using nlohmann::json;

/// The schema nests seven deep; what lies deeper cannot be a site.
constexpr std::size_t depthLimit = 16;
/// About four thousand circuits over ten visits with every field filled; a value takes some 100 bytes while
/// it is read.
constexpr std::size_t valueLimit = 2'000'000;
constexpr std::size_t excerptLength = 12;

struct Position {
    std::int64_t line = 1;
    std::int64_t column = 1; ///< in characters, not bytes
};

bool continuesCharacter(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) == 0x80;
}

Position positionOf(std::string_view text, std::size_t byte) {
    const std::string_view before = text.substr(0, byte);
    const std::size_t lineBreak = before.rfind('\n');
    const std::string_view line = lineBreak == std::string_view::npos ? before : before.substr(lineBreak + 1);
    const auto characters = std::ranges::count_if(line, [](char c) { return !continuesCharacter(c); });
    return {std::ranges::count(before, '\n') + 1, characters + 1};
}

/// A few characters from `byte` on, up to the end of the line.
std::string excerpt(std::string_view text, std::size_t byte) {
    std::string_view rest = text.substr(byte, excerptLength);
    rest = rest.substr(0, rest.find_first_of("\r\n"));
    while (!rest.empty() && firstBadUtf8(rest))
        rest.remove_suffix(1);
    return std::string(rest);
}

SiteFileProblem whole(std::string_view key, std::vector<Argument> arguments = {}) {
    return {{}, {key, std::move(arguments)}};
}

/// The parser stops at the last byte of what it cannot place; a person looks for the first.
std::size_t startOfToken(std::string_view text, std::size_t last) {
    if (last >= text.size()) return text.size();
    if (text[last] != '"' || last == 0) return last;
    const std::size_t opening = text.find_last_of("\"\n", last - 1);
    return opening != std::string_view::npos && text[opening] == '"' ? opening : last;
}

SiteFileProblem notJson(std::string_view text, std::size_t byte) {
    const bool ended =
        text.substr(std::min(byte, text.size())).find_first_not_of(" \t\r\n") == std::string_view::npos;
    const Position position = positionOf(text, std::min(byte, text.size()));
    if (ended) return whole("sitefile.ends-early", {position.line, position.column});
    return whole("sitefile.not-json", {position.line, position.column, excerpt(text, byte)});
}

/// Follows the parser, keeps where it is, and stops it by throwing a SiteFileProblem at the first breach of a
/// limit.
class Guard {
  public:
    bool operator()(int, json::parse_event_t event, const json& parsed) {
        using Event = json::parse_event_t;
        switch (event) {
        case Event::key:
            enterKey(parsed.get_ref<const std::string&>());
            break;
        case Event::object_start:
            open(false);
            break;
        case Event::array_start:
            open(true);
            break;
        case Event::object_end:
        case Event::array_end:
            levels_.pop_back();
            break;
        case Event::value:
            countValue();
            break;
        }
        return true;
    }

    std::string place() const {
        std::string text;
        for (const Level& level : levels_) {
            const std::string step = level.isArray ? ordinal(level.count) : level.key;
            if (step.empty() || (level.isArray && level.count == 0)) continue;
            if (!text.empty()) text += ", ";
            text += step;
        }
        return text;
    }

  private:
    struct Level {
        bool isArray = false;
        std::size_t count = 0;
        std::string key;
        std::set<std::string> keys;
    };

    void countValue() {
        if (!levels_.empty() && levels_.back().isArray) ++levels_.back().count;
        if (++values_ > valueLimit)
            throw whole("sitefile.too-many-values", {static_cast<std::int64_t>(valueLimit)});
    }
    void open(bool isArray) {
        countValue();
        if (levels_.size() == depthLimit)
            throw SiteFileProblem{place(), {"sitefile.too-deep", {static_cast<std::int64_t>(depthLimit)}}};
        levels_.push_back({isArray, 0, {}, {}});
    }
    void enterKey(const std::string& key) {
        levels_.back().key.clear();
        if (!levels_.back().keys.insert(key).second)
            throw SiteFileProblem{place(), {"sitefile.key-twice", {key}}};
        levels_.back().key = key;
    }

    std::vector<Level> levels_;
    std::size_t values_ = 0;
};

/// How many bytes a character of UTF-8 has, by its first byte; 0 if none can start with it.
std::size_t lengthOfCharacter(unsigned char first) {
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return 2;
    if (first >= 0xE0 && first <= 0xEF) return 3;
    if (first >= 0xF0 && first <= 0xF4) return 4;
    return 0;
}

/// The range of the second byte, which keeps out overlong forms, surrogates and what lies past U+10FFFF.
bool mayFollow(unsigned char first, unsigned char second) {
    const unsigned low = first == 0xE0 ? 0xA0 : first == 0xF0 ? 0x90 : 0x80;
    const unsigned high = first == 0xED ? 0x9F : first == 0xF4 ? 0x8F : 0xBF;
    return second >= low && second <= high;
}

/// Whether the text ends in the middle of a character: it was cut off rather than written in another
/// encoding.
bool isCutCharacter(std::string_view rest) {
    return rest.size() < lengthOfCharacter(static_cast<unsigned char>(rest.front())) &&
           std::ranges::all_of(rest.substr(1), continuesCharacter);
}

} // namespace

std::optional<std::size_t> firstBadUtf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto first = static_cast<unsigned char>(text[i]);
        const std::size_t length = lengthOfCharacter(first);
        if (length == 0 || i + length > text.size()) return i;
        if (length > 1 && !mayFollow(first, static_cast<unsigned char>(text[i + 1]))) return i;
        for (std::size_t k = 2; k < length; ++k)
            if (!continuesCharacter(text[i + k])) return i;
        i += length;
    }
    return std::nullopt;
}

tl::expected<json, SiteFileProblem> parseDocument(std::string_view text) {
    if (text.size() > siteFileSizeLimit)
        return tl::unexpected(
            whole("sitefile.too-large",
                  {static_cast<std::int64_t>(siteFileSizeLimit / (std::size_t{1024} * 1024))}));
    if (const auto bad = firstBadUtf8(text); bad && !isCutCharacter(text.substr(*bad))) {
        const Position position = positionOf(text, *bad);
        return tl::unexpected(whole("sitefile.not-utf8", {position.line, position.column}));
    }
    Guard guard;
    try {
        return json::parse(text, std::ref(guard));
    } catch (const SiteFileProblem& problem) {
        return tl::unexpected(problem);
    } catch (const json::parse_error& problem) {
        return tl::unexpected(notJson(text, startOfToken(text, problem.byte == 0 ? 0 : problem.byte - 1)));
    } catch (const json::out_of_range&) {
        return tl::unexpected(SiteFileProblem{guard.place(), {"sitefile.number-too-large", {}}});
    }
}

} // namespace loopwright::sitefile
