// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/help.h"

#include <CLI/CLI.hpp>

#include <QCoreApplication>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace loopwright {
namespace {

std::string words(const char* source) {
    return QCoreApplication::translate("CommandLine", source).toStdString();
}
std::string words(const char* source, const std::string& argument) {
    return QCoreApplication::translate("CommandLine", source)
        .arg(QString::fromStdString(argument))
        .toStdString();
}

/// "FILE", "--pdf PDF", "--json": as it is typed.
std::string typed(const CLI::Option& option) {
    if (option.get_positional())
        return option.get_type_name() + (option.get_items_expected_max() > 1 ? " ..." : "");
    const bool takesWord = option.get_items_expected_max() > 0;
    return takesWord ? option.get_name() + " " + option.get_type_name() : option.get_name();
}

bool isAside(const CLI::App& app, const CLI::Option& option) {
    return &option == app.get_help_ptr() || &option == app.get_version_ptr();
}

/// What a person has to give, in the order in which it is given, then what may be left out.
std::vector<const CLI::Option*> optionsOf(const CLI::App& app) {
    std::vector<const CLI::Option*> options = app.get_options();
    const auto rank = [&](const CLI::Option* option) {
        return option->get_positional() ? 0 : option->get_required() ? 1 : isAside(app, *option) ? 3 : 2;
    };
    std::ranges::stable_sort(options, {}, rank);
    return options;
}

/// "loopwright report FILE --pdf PDF [--visit NAME]".
std::string callOf(const CLI::App& app) {
    std::string call = app.get_parent() ? "loopwright " + app.get_name() : "loopwright";
    for (const CLI::Option* option : optionsOf(app))
        if (!isAside(app, *option))
            call += option->get_required() ? " " + typed(*option) : " [" + typed(*option) + "]";
    return call;
}

/// Words at the left, what they mean at the right.
class Rows {
  public:
    void add(std::string word, std::string meaning) {
        rows_.emplace_back(std::move(word), std::move(meaning));
    }
    std::string text() const {
        constexpr std::size_t gap = 3;
        std::size_t width = 0;
        for (const auto& [word, meaning] : rows_)
            width = std::max(width, word.size() + gap);
        std::string text;
        for (const auto& [word, meaning] : rows_)
            text.append("  ").append(word).append(width - word.size(), ' ').append(meaning).append("\n");
        return text;
    }

  private:
    std::vector<std::pair<std::string, std::string>> rows_;
};

std::string helpOf(const CLI::App* app, const std::string&, CLI::AppFormatMode) {
    const auto commands = app->get_subcommands([](const CLI::App*) { return true; });
    std::string page = app->get_description() + "\n\n  " + callOf(*app) + "\n";
    if (!commands.empty()) page += "  " + words("loopwright COMMAND ...") + "\n";
    Rows options;
    for (const CLI::Option* option : optionsOf(*app))
        options.add(typed(*option), option->get_description());
    page += "\n" + options.text();
    if (commands.empty()) return page;
    Rows rows;
    for (const CLI::App* command : commands)
        rows.add(command->get_name(), command->get_description());
    return page + "\n" + words("Commands:") + "\n" + rows.text() + "\n" +
           words("\"loopwright COMMAND --help\" says what a command takes.\n"
                 "A command ends with 0 when it has done what was asked, with 1 when it has not and says why "
                 "on\nstandard error, and with 2 when it was not understood.") +
           "\n";
}

std::string joined(const std::vector<std::string>& all, const std::string& last) {
    std::string text;
    for (std::size_t at = 0; at < all.size(); ++at)
        text += (at == 0 ? "" : at + 1 == all.size() ? " " + last + " " : ", ") + all[at];
    return text;
}

std::string missingOf(const CLI::App& command) {
    std::vector<std::string> missing;
    std::vector<std::string> oneOf;
    for (const CLI::Option* option : optionsOf(command)) {
        if (option->get_required() && option->count() == 0) missing.push_back(typed(*option));
        if (!option->get_excludes().empty()) oneOf.push_back(typed(*option));
    }
    return missing.empty() ? joined(oneOf, words("or")) : joined(missing, words("and"));
}

std::string clashOf(const CLI::App& command) {
    std::vector<std::string> given;
    for (const CLI::Option* option : optionsOf(command))
        if (!option->get_excludes().empty() && option->count() > 0) given.push_back(typed(*option));
    return joined(given, words("and"));
}

/// What was not understood. The library's own text is left for what nobody can type wrong here.
std::string reasonOf(const CLI::App& app, const CLI::App& command, const CLI::Error& fault) {
    const auto kind = static_cast<CLI::ExitCodes>(fault.get_exit_code());
    if (kind == CLI::ExitCodes::RequiredError) return words("Something is missing: %1.", missingOf(command));
    if (kind == CLI::ExitCodes::ExtrasError)
        return words("This is not understood: %1.", joined(app.remaining(true), words("and")));
    if (kind == CLI::ExitCodes::ExcludesError)
        return words("These do not go together: %1.", clashOf(command));
    const std::string said = fault.what();
    const CLI::Option* option = command.get_option_no_throw(said.substr(0, said.find(':')));
    return option ? words("This takes one word after it: %1.", typed(*option)) : said;
}

std::string failureOf(const CLI::App* app, const CLI::Error& fault) {
    const auto parsed = app->get_subcommands();
    const CLI::App& command = parsed.empty() ? *app : *parsed.front();
    return reasonOf(*app, command, fault) + "\n" +
           words("\"%1 --help\" says what it takes.",
                 command.get_parent() ? "loopwright " + command.get_name() : "loopwright") +
           "\n";
}

} // namespace

void speakPlainly(CLI::App& app) {
    app.set_help_flag("-h,--help", words("Show this page"));
    app.formatter_fn(helpOf);
    app.failure_message(failureOf);
}

} // namespace loopwright
