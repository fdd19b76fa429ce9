// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/command_line.h"

#include "app/command_line/help.h"
#include "app/command_line/sum_commands.h"

#include <CLI/CLI.hpp>

namespace loopwright {
namespace {

template <class... Visitors>
struct Overloaded : Visitors... {
    using Visitors::operator()...;
};
template <class... Visitors>
Overloaded(Visitors...) -> Overloaded<Visitors...>;

constexpr const char* defaultDemoFolder = "loopwright-demo";

void addChoice(CLI::App& command, SiteChoice& choice, bool withVisit) {
    command.add_option("file", choice.file, "Workbook or site file")->required()->type_name("FILE");
    command.add_option("--site", choice.site, "Name or id of the site, where a workbook holds several")
        ->type_name("NAME");
    if (withVisit)
        command.add_option("--visit", choice.visit, "Name or id of the visit; the newest when left out")
            ->type_name("NAME");
}

void addRules(CLI::App& command, std::string& ruleSet) {
    command.add_option("--rules", ruleSet, "Rule set that defaults come from: bs-7671-2018, iec-60364")
        ->type_name("KEY");
}

/// `sum NAME key=value ...` or `sum --batch FILE`.
CLI::App* addSum(CLI::App& app, SumRequest& sum) {
    CLI::App* command = app.add_subcommand("sum", "Answer one sum with its working, or a file of them");
    CLI::Option* name =
        command->add_option("name", sum.name, "Which sum; \"loopwright sums\" lists them")->type_name("NAME");
    command
        ->add_option("inputs", sum.assignments,
                     "Its inputs: length_m=30 \"power_W=9.6 kW\" ratedCurrent_A=6,10,16")
        ->type_name("KEY=VALUE");
    CLI::Option* batch =
        command->add_option("--batch", sum.batch, "File with one sum a line, as JSON; - reads what comes in")
            ->type_name("FILE")
            ->excludes(name);
    command->add_flag("--json", sum.asJson, "Print JSON as sums.schema.json describes it");
    addRules(*command, sum.ruleSet);
    command->callback([=] {
        if (name->empty() && batch->empty()) throw CLI::RequiredError("name or --batch");
    });
    return command;
}

} // namespace

Request parseCommandLine(int argc, const char* const* argv, std::ostream& out, std::ostream& err) {
    CLI::App app("Decides, circuit by circuit, whether device, wiring and load still belong together.",
                 "loopwright");
    speakPlainly(app);
    app.set_version_flag("--version", "loopwright " LOOPWRIGHT_VERSION, "Say which version this is");
    app.require_subcommand(0, 1);
    OpenRequest open;
    app.add_option("workbook", open.workbook, "Workbook to open in the window; the start page when left out")
        ->type_name("WORKBOOK");

    DemoRequest demo{defaultDemoFolder};
    CLI::App* demoApp = app.add_subcommand(
        "demo", "Write the demo workbook and its report, say what is found, open the window");
    demoApp->add_option("--folder", demo.folder, "Where to write them; ./loopwright-demo when left out")
        ->type_name("FOLDER");

    AssessRequest assess;
    CLI::App* assessApp = app.add_subcommand("assess", "Judge a visit and say what is found");
    addChoice(*assessApp, assess.choice, true);
    assessApp->add_flag("--json", assess.asJson, "Print JSON as assessment.schema.json describes it");

    ReportRequest report;
    CLI::App* reportApp = app.add_subcommand("report", "Write the report of a visit as PDF");
    addChoice(*reportApp, report.choice, true);
    reportApp->add_option("--pdf", report.pdf, "PDF file to write; one that is there is replaced")
        ->required()
        ->type_name("PDF");
    reportApp
        ->add_option("--label", report.labels,
                     "What your local scheme calls a grade, printed beside it: put-right=TEXT; once for each")
        ->type_name("GRADE=TEXT")
        ->allow_extra_args(false);

    ImportRequest import;
    CLI::App* importApp = app.add_subcommand("import", "Take a site file into a workbook");
    importApp->add_option("site_file", import.siteFile, "Site file, as site.schema.json describes it")
        ->required()
        ->type_name("SITE-FILE");
    importApp
        ->add_option("workbook", import.workbook, "Workbook to add the site to; made when it is not there")
        ->required()
        ->type_name("WORKBOOK");

    ExportRequest exportRequest;
    CLI::App* exportApp = app.add_subcommand("export", "Write a site as a site file");
    addChoice(*exportApp, exportRequest.choice, false);
    exportApp->add_option("out", exportRequest.siteFile, "Site file to write; one that is there is replaced")
        ->required()
        ->type_name("SITE-FILE");

    SumsRequest sums;
    CLI::App* sumsApp = app.add_subcommand("sums", "List the sums with their inputs and results");
    sumsApp->add_flag("--json", sums.asJson, "Print JSON as sums.schema.json describes it");
    addRules(*sumsApp, sums.ruleSet);

    SumRequest sum;
    CLI::App* sumApp = addSum(app, sum);

    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& stop) {
        return Answered{app.exit(stop, out, err) == 0 ? exitDone : exitUsage};
    }
    if (demoApp->parsed()) return demo;
    if (assessApp->parsed()) return assess;
    if (reportApp->parsed()) return report;
    if (importApp->parsed()) return import;
    if (exportApp->parsed()) return exportRequest;
    if (sumsApp->parsed()) return sums;
    if (sumApp->parsed()) return sum;
    return open;
}

int carryOut(const Request& request, const CommandSurroundings& around) {
    return std::visit(
        Overloaded{
            [&](const OpenRequest&) { return exitDone; },
            [&](const DemoRequest& demo) { return demoCommand(around, demo.folder); },
            [&](const AssessRequest& assess) { return assessCommand(around, assess.choice, assess.asJson); },
            [&](const ReportRequest& report) {
                return reportCommand(around, report.choice, report.pdf, report.labels);
            },
            [&](const ImportRequest& import) {
                return importCommand(around, import.siteFile, import.workbook);
            },
            [&](const ExportRequest& request_) {
                return exportCommand(around, request_.choice, request_.siteFile);
            },
            [&](const SumsRequest& sums) { return listSumsCommand(around, sums.ruleSet, sums.asJson); },
            [&](const SumRequest& sum) {
                return sum.batch.empty()
                           ? sumCommand(around, sum.ruleSet, sum.name, sum.assignments, sum.asJson)
                           : batchCommand(around, sum.ruleSet, sum.batch);
            },
            [&](const Answered& answered) { return answered.exitCode; },
        },
        request);
}

std::optional<std::filesystem::path> windowAfter(const Request& request) {
    if (const auto* open = std::get_if<OpenRequest>(&request)) return open->workbook;
    if (const auto* demo = std::get_if<DemoRequest>(&request)) return demoFiles(demo->folder).workbook;
    return std::nullopt;
}

} // namespace loopwright
