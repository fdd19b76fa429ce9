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

#include <span>

namespace loopwright {
namespace {

QString sentence(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

tl::expected<void, QString> writeReportOf(const CommandSurroundings& surroundings, const LoadedSite& site,
                                          const std::filesystem::path& pdf) {
    const ReportInput input{.installation = site.installation,
                            .assessment = site.assessment,
                            .tables = surroundings.knowledge.tables,
                            .rules = *site.rules,
                            .words = surroundings.words,
                            .clock = surroundings.clock,
                            .photos = site.photos};
    const auto written = writeReport(input, shown(pdf));
    if (!written) return tl::unexpected(surroundings.words.sentence(written.error()));
    return {};
}

/// Keeps the pictures, then adds the site in one transaction. A picture without a site does no harm: it is
/// found by its content when it comes again.
tl::expected<void, QString> addTo(const CommandSurroundings& surroundings, const std::filesystem::path& path,
                                  const SiteImport& import) {
    const Surroundings around{{surroundings.author}, surroundings.clock, surroundings.ids};
    const auto inWords = [&](const Message& message) {
        return tl::unexpected(surroundings.words.sentence(message));
    };
    std::error_code ignored;
    const bool isThere = std::filesystem::exists(path, ignored);
    auto workbook = isThere ? Workbook::open(path, around) : Workbook::create(path, around);
    if (!workbook) return inWords(workbook.error());
    for (const SitePicture& picture : import.photos)
        if (auto kept = workbook->putPhoto(std::as_bytes(std::span(picture.bytes)), picture.mediaType); !kept)
            return inWords(kept.error());
    const auto added = workbook->add(import.installation, {"change.added", {import.installation.site.name}});
    if (!added) return inWords(added.error());
    return {};
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
                  const std::filesystem::path& pdf) {
    const auto site = loadSite(surroundings, choice.file, choice.site, choice.visit);
    if (!site) return refuse(surroundings, site.error());
    if (const auto written = writeReportOf(surroundings, *site, pdf); !written)
        return refuse(surroundings, written.error());
    surroundings.out << utf8(sentence("Report written to %1.").arg(shown(pdf))) << '\n';
    return exitDone;
}

int importCommand(const CommandSurroundings& surroundings, const std::filesystem::path& siteFile,
                  const std::filesystem::path& workbook) {
    const auto import = readSiteFile(surroundings, siteFile);
    if (!import) return refuse(surroundings, import.error());
    if (const auto added = addTo(surroundings, workbook, *import); !added)
        return refuse(surroundings, added.error());
    surroundings.out
        << utf8(sentence("%1 taken into %2.").arg(text(import->installation.site.name), shown(workbook)))
        << '\n';
    return exitDone;
}

int exportCommand(const CommandSurroundings& surroundings, const SiteChoice& choice,
                  const std::filesystem::path& siteFile) {
    const auto read = readSite(surroundings, choice.file, choice.site);
    if (!read) return refuse(surroundings, read.error());
    if (const auto written = writeFile(siteFile, exportSite(read->first, read->second)); !written)
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
    std::filesystem::create_directories(folder, problem);
    if (problem)
        return refuse(surroundings,
                      sentence("%1 cannot be made: %2.").arg(shown(folder), text(problem.message())));
    const DemoFiles files = demoFiles(folder);
    if (std::filesystem::exists(files.workbook, problem)) {
        surroundings.out
            << utf8(sentence("%1 is there already and is used as it is.").arg(shown(files.workbook)))
            << "\n\n";
    } else if (const auto added = addTo(surroundings, files.workbook, demoSite(surroundings.ids)); !added) {
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
