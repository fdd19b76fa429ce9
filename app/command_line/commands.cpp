// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/commands.h"

#include "app/assessment_json.h"
#include "app/command_line/loaded_site.h"
#include "app/command_line/summary.h"
#include "app/demo/demo_site.h"
#include "app/files/files.h"
#include "app/report/report.h"
#include "db/workbook.h"

#include <QCoreApplication>

#include <algorithm>
#include <span>

namespace loopwright {
namespace {

QString sentence(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

/// Reads GRADE=TEXT, one for each grade that has a label.
tl::expected<OfficeLabels, QString> officeLabels(std::span<const std::string> told) {
    OfficeLabels labels;
    for (const std::string& each : told) {
        const auto equals = each.find('=');
        const auto choices = choicesOf<Grade>().choices;
        const auto grade = std::ranges::find(choices, each.substr(0, equals), &Choice::key);
        if (equals == std::string::npos || grade == choices.end())
            return tl::unexpected(sentence("\"%1\" labels no grade. Write make-safe=TEXT, put-right=TEXT, "
                                           "look-further=TEXT or worth-improving=TEXT.")
                                      .arg(text(each)));
        labels[grade->value] = text(each.substr(equals + 1));
    }
    return labels;
}

tl::expected<void, QString> writeReportOf(const CommandSurroundings& surroundings, const LoadedSite& site,
                                          const std::filesystem::path& pdf, const OfficeLabels& labels = {}) {
    const ReportInput input{.installation = site.installation,
                            .assessment = site.assessment,
                            .tables = surroundings.knowledge.tables,
                            .rules = *site.rules,
                            .words = surroundings.words,
                            .clock = surroundings.clock,
                            .attachments = site.attachments,
                            .officeLabels = labels};
    return writeReport(input, shown(pdf));
}

using Outcome = tl::expected<void, QString>;
namespace fs = std::filesystem;

/// Keeps the pictures, then adds the site in one transaction. A picture without a site does no harm: it is
/// found by its content when it comes again.
Outcome addTo(const CommandSurroundings& surroundings, tl::expected<Workbook, Message> workbook,
              const SiteImport& import) {
    const auto inWords = [&](const Message& message) {
        return tl::unexpected(surroundings.words.sentence(message));
    };
    if (!workbook) return inWords(workbook.error());
    for (const Attachment& each : import.attachments)
        if (auto kept = workbook->putAttachment(std::as_bytes(std::span(each.bytes)), each.mediaType); !kept)
            return inWords(kept.error());
    const auto added = workbook->add(import.installation, {"change.added", {import.installation.site.name}});
    if (!added) return inWords(added.error());
    return {};
}

/// A new workbook takes its name when it is whole, so that nothing half made is ever left.
Outcome addToNew(const CommandSurroundings& surroundings, const fs::path& path, const SiteImport& import) {
    const fs::path unfinished = path.string() + '.' + surroundings.ids.next().text();
    const Surroundings around{{surroundings.author}, surroundings.clock, surroundings.ids};
    Outcome made = addTo(surroundings, Workbook::create(unfinished, around), import);
    if (!made) made = tl::unexpected(QString(made.error()).replace(shown(unfinished), shown(path)));
    std::error_code problem;
    if (made) fs::rename(unfinished, path, problem);
    if (problem)
        made = tl::unexpected(sentence("%1 cannot be made: %2.").arg(shown(path), text(problem.message())));
    std::error_code gone;
    for (const char* ending : {"", "-wal", "-shm", "-journal"})
        fs::remove(unfinished.string() + ending, gone);
    return made;
}

Outcome addToWorkbook(const CommandSurroundings& surroundings, const fs::path& path,
                      const SiteImport& import) {
    std::error_code ignored;
    if (!fs::exists(path, ignored)) return addToNew(surroundings, path, import);
    const Surroundings around{{surroundings.author}, surroundings.clock, surroundings.ids};
    return addTo(surroundings, Workbook::open(path, around), import);
}

Outcome refuseOnto(const fs::path& read, const fs::path& written) {
    if (!isSameFile(read, written)) return {};
    return tl::unexpected(
        sentence("%1 is the file to be read. Choose another name to write to.").arg(shown(written)));
}

} // namespace

int assessCommand(const CommandSurroundings& surroundings, const SiteChoice& choice, bool asJson) {
    const auto site = loadSite(surroundings, choice.file, choice.site, choice.visit);
    if (!site) return refuse(surroundings, site.error());
    surroundings.out << (asJson ? assessmentJson(site->installation, site->assessment, surroundings.words)
                                : summary(*site, surroundings.words));
    surroundings.out.flush();
    return surroundings.out
               ? exitDone
               : refuse(surroundings, sentence("The result cannot be written. Is the disk full?"));
}

int reportCommand(const CommandSurroundings& surroundings, const SiteChoice& choice,
                  const std::filesystem::path& pdf, std::span<const std::string> told) {
    const auto labels = officeLabels(told);
    if (!labels) return refuse(surroundings, labels.error());
    if (const auto apart = refuseOnto(choice.file, pdf); !apart) return refuse(surroundings, apart.error());
    const auto site = loadSite(surroundings, choice.file, choice.site, choice.visit);
    if (!site) return refuse(surroundings, site.error());
    if (const auto written = writeReportOf(surroundings, *site, pdf, *labels); !written)
        return refuse(surroundings, written.error());
    surroundings.out << utf8(sentence("Report written to %1.").arg(shown(pdf))) << '\n';
    return exitDone;
}

int importCommand(const CommandSurroundings& surroundings, const std::filesystem::path& siteFile,
                  const std::filesystem::path& workbook) {
    const auto import = readSiteFile(surroundings, siteFile);
    if (!import) return refuse(surroundings, import.error());
    if (const auto added = addToWorkbook(surroundings, workbook, *import); !added)
        return refuse(surroundings, added.error());
    surroundings.out
        << utf8(sentence("%1 taken into %2.").arg(text(import->installation.site.name), shown(workbook)))
        << '\n';
    return exitDone;
}

int exportCommand(const CommandSurroundings& surroundings, const SiteChoice& choice,
                  const std::filesystem::path& siteFile) {
    if (const auto apart = refuseOnto(choice.file, siteFile); !apart)
        return refuse(surroundings, apart.error());
    const auto read = readSite(surroundings, choice.file, choice.site);
    if (!read) return refuse(surroundings, read.error());
    const std::string bytes = exportSite(read->first, read->second);
    if (bytes.size() > siteFileSizeLimit)
        return refuse(surroundings, sentence("With its pictures the site has more than %1 MB, which is the "
                                             "most that a site file may have.")
                                        .arg(siteFileSizeLimit / bytesPerMegabyte));
    if (const auto written = writeFile(siteFile, bytes); !written)
        return refuse(surroundings, written.error());
    surroundings.out << utf8(sentence("%1 written to %2.").arg(text(read->first.site.name), shown(siteFile)))
                     << '\n';
    return exitDone;
}

DemoFiles demoFiles(const std::filesystem::path& folder) {
    return {folder / "oakum-row.loopwright", folder / "oakum-row-report.pdf"};
}

int demoCommand(const CommandSurroundings& surroundings, const std::filesystem::path& folder) {
    std::error_code problem;
    const bool isNewFolder = fs::create_directories(folder, problem);
    if (problem)
        return refuse(surroundings,
                      sentence("The folder %1 cannot be made: %2. Choose another with --folder.")
                          .arg(shown(folder), text(problem.message())));
    const DemoFiles files = demoFiles(folder);
    if (fs::exists(files.workbook, problem)) {
        surroundings.out
            << utf8(sentence("%1 is there already and is used as it is.").arg(shown(files.workbook)))
            << "\n\n";
    } else if (const auto added = addToWorkbook(surroundings, files.workbook, demoSite(surroundings.ids));
               !added) {
        if (isNewFolder) fs::remove(folder, problem);
        return refuse(surroundings, added.error());
    }
    const auto site = loadSite(surroundings, files.workbook, {}, {});
    if (!site) return refuse(surroundings, site.error());
    if (const auto written = writeReportOf(surroundings, *site, files.report); !written)
        return refuse(surroundings, written.error());
    surroundings.out << summary(*site, surroundings.words) << '\n'
                     << utf8(sentence("Workbook: %1").arg(shown(files.workbook))) << '\n'
                     << utf8(sentence("Report:   %1").arg(shown(files.report))) << '\n';
    return exitDone;
}

} // namespace loopwright
