// SPDX-License-Identifier: GPL-3.0-or-later
// What is said about phrases as a whole: every key in use exists, and its places agree with its arguments.
#include "core/phrases/phrases.h"

#include "core/model/choices.h"
#include "forms/words/words.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

namespace loopwright {
namespace {

namespace fs = std::filesystem;

template <class E>
void expectWords() {
    const ChoiceList& list = choicesOf<E>();
    for (const Choice& choice : list.choices) {
        const std::string key = "choice." + std::string(list.name) + "." + std::string(choice.key);
        EXPECT_TRUE(phrase(key)) << key;
    }
}

TEST(Phrases, EveryChoiceHasAWord) {
    expectWords<Earthing>();
    expectWords<BoardEarthing>();
    expectWords<Phases>();
    expectWords<CircuitUse>();
    expectWords<Topology>();
    expectWords<Material>();
    expectWords<Insulation>();
    expectWords<ProtectiveConductor>();
    expectWords<InstallationMethod>();
    expectWords<ResidualType>();
    expectWords<ResidualDelay>();
    expectWords<VisitKind>();
    expectWords<VisitState>();
    expectWords<TestOutcome>();
    expectWords<InspectionResult>();
    expectWords<Grade>();
}

TEST(Phrases, NoKeyStandsTwice) {
    for (std::size_t i = 1; i < phrases().size(); ++i)
        EXPECT_NE(phrases()[i - 1].key, phrases()[i].key);
}

/// "current, current" names two.
std::size_t argumentCount(std::string_view names) {
    return names.empty() ? 0 : static_cast<std::size_t>(std::ranges::count(names, ',')) + 1;
}

TEST(Phrases, PlacesAgreeWithTheNamedArguments) {
    const std::regex place(R"(\{(\d+)\})");
    for (const Phrase& phrase : phrases()) {
        const std::string text(phrase.text);
        std::set<std::size_t> used;
        for (auto found = std::sregex_iterator(text.begin(), text.end(), place);
             found != std::sregex_iterator(); ++found)
            used.insert(std::stoul((*found)[1]));
        const std::size_t count = argumentCount(phrase.arguments);
        const bool mayLeaveOut = phrase.key.ends_with(".one"); // a singular need not say its count
        EXPECT_TRUE(mayLeaveOut || used.size() == count) << phrase.key << ": " << text;
        EXPECT_LT(used.empty() ? -1 : static_cast<int>(*used.rbegin()), static_cast<int>(count))
            << phrase.key << ": " << text;
    }
}

TEST(Phrases, AreWrittenForPeople) {
    for (const Phrase& phrase : phrases()) {
        EXPECT_FALSE(phrase.text.empty()) << phrase.key;
        EXPECT_EQ(phrase.text.find('\''), std::string_view::npos) << phrase.key << ": use ’";
        EXPECT_EQ(phrase.text.find('!'), std::string_view::npos) << phrase.key;
        EXPECT_FALSE(
            std::regex_search(std::string(phrase.text), std::regex("\\berror\\b", std::regex::icase)))
            << phrase.key << ": say what is so";
    }
}

/// Keys that the sources name in full. Keys that are put together (choices, fields, verdicts) are tested by
/// their lists.
TEST(Phrases, EveryKeyThatTheSourcesNameExists) {
    const std::regex use(
        R"rx((?:Message\{|Word\{|refusal\(|sentence\(\{|word\()\s*"([a-z]+(?:[.-][A-Za-z0-9_-]+)*\.[A-Za-z0-9_-]+)")rx");
    int found = 0;
    for (const char* room : {"core", "db", "forms", "app"})
        for (const auto& file : fs::recursive_directory_iterator(fs::path(LOOPWRIGHT_SOURCE_DIR) / room)) {
            if (file.path().extension() != ".cpp" && file.path().extension() != ".h") continue;
            std::stringstream source;
            source << std::ifstream(file.path()).rdbuf();
            const std::string text = source.str();
            for (auto key = std::sregex_iterator(text.begin(), text.end(), use);
                 key != std::sregex_iterator(); ++key) {
                ++found;
                EXPECT_TRUE(phrase((*key)[1].str())) << (*key)[1] << " in " << file.path().filename();
            }
        }
    EXPECT_GT(found, 0);
}

} // namespace
} // namespace loopwright
