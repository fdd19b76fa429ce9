// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/demo/demo_file.h"
#include "tests/support/temporary_folder.h"

#include <gmock/gmock.h>

#include <QProcess>

/// The program as it is started where there is no display.
namespace loopwright {
namespace {

struct Ended {
    int code = -1;
    std::string out, err;
};

Ended started(const QStringList& arguments, const QString& outputFile = {}) {
    QProcess program;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "XDG_RUNTIME_DIR"})
        environment.remove(QString::fromLatin1(name));
    program.setProcessEnvironment(environment);
    if (!outputFile.isEmpty()) program.setStandardOutputFile(outputFile);
    program.start(QStringLiteral(LOOPWRIGHT_PROGRAM), arguments);
    EXPECT_TRUE(program.waitForFinished(120000)) << arguments.join(u' ').toStdString();
    EXPECT_EQ(program.exitStatus(), QProcess::NormalExit) << arguments.join(u' ').toStdString();
    return {program.exitCode(), program.readAllStandardOutput().toStdString(),
            program.readAllStandardError().toStdString()};
}

QString demoSite() {
    return QString::fromStdString((test::demoFolder / "oakum-row.site.json").string());
}

TEST(Program, SaysNothingOnStandardErrorWhenAllIsWell) {
    const TemporaryFolder folder;
    const QString pdf = QString::fromStdString((folder / "report.pdf").string());
    const QString demo = QString::fromStdString((folder / "demo").string());
    for (const QStringList& arguments : {QStringList{"--help"},
                                         {"--version"},
                                         {"assess", demoSite()},
                                         {"report", demoSite(), "--pdf", pdf},
                                         {"demo", "--folder", demo}}) {
        const Ended ended = started(arguments);
        EXPECT_EQ(ended.code, 0) << arguments.join(u' ').toStdString();
        EXPECT_EQ(ended.err, "") << arguments.join(u' ').toStdString();
        EXPECT_NE(ended.out, "") << arguments.join(u' ').toStdString();
    }
}

TEST(Program, TellsWrongWordsFromARefusal) {
    const Ended misunderstood = started({"report", "x"});
    EXPECT_EQ(misunderstood.code, 2);
    EXPECT_EQ(misunderstood.out, "");
    EXPECT_NE(misunderstood.err, "");
    const Ended refused = started({"assess", "not there.loopwright"});
    EXPECT_EQ(refused.code, 1);
    EXPECT_EQ(refused.out, "");
    EXPECT_EQ(refused.err, "not there.loopwright is not there. Check the name and the folder.\n");
}

TEST(Program, DoesNotWaitBehindAWindowThatNobodySees) {
    const Ended ended = started({demoSite()});
    EXPECT_EQ(ended.code, 1);
    EXPECT_THAT(ended.err, testing::HasSubstr("no display"));
}

TEST(Program, SaysThatItsResultFoundNoRoom) {
    const Ended ended = started({"assess", demoSite(), "--json"}, QStringLiteral("/dev/full"));
    EXPECT_EQ(ended.code, 1);
    EXPECT_THAT(ended.err, testing::HasSubstr("cannot be written"));
}

} // namespace
} // namespace loopwright
