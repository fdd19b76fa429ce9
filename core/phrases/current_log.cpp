// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phrases/tables.h"

#include <array>

/// Why a log of a current was not read, or says nothing about a circuit.
namespace loopwright::phrase_tables {
namespace {

constexpr std::array table{
    Phrase{"log.empty", LOOPWRIGHT_PHRASE("Phrases", "The file is empty. Export the log again."), ""},
    Phrase{"log.too-large",
           LOOPWRIGHT_PHRASE("Phrases", "The file is larger than 64 MiB. Export a shorter time, or fewer "
                                        "channels."),
           ""},
    Phrase{"log.not-text",
           LOOPWRIGHT_PHRASE("Phrases", "The file is not text. Export the log as CSV, in UTF-8."), ""},
    Phrase{"log.no-rows",
           LOOPWRIGHT_PHRASE("Phrases",
                             "No line holds a time and a current, parted by semicolon, tab or comma. "
                             "Export the log as CSV."),
           ""},
    Phrase{"log.no-current-column",
           LOOPWRIGHT_PHRASE("Phrases", "No column holds a current, by their heads. Export one in A, mA or "
                                        "kA."),
           ""},
    Phrase{"log.time-not-first",
           LOOPWRIGHT_PHRASE("Phrases", "The time does not stand in the first column. Export the log with "
                                        "the time first."),
           ""},
    Phrase{"log.commas",
           LOOPWRIGHT_PHRASE("Phrases", "Lines have more columns than their heads: commas may part columns, "
                                        "or decimals. Export the log with semicolons."),
           ""},
    Phrase{
        "log.too-short",
        LOOPWRIGHT_PHRASE("Phrases", "The log has a single line of figures. Two times are needed at least."),
        ""},
    Phrase{"log.bad-time",
           LOOPWRIGHT_PHRASE("Phrases", "Line {0} does not begin with a time like the lines before it."),
           "line"},
    Phrase{"log.time-backwards",
           LOOPWRIGHT_PHRASE("Phrases", "In line {0} time does not go on. Sort the log by time, and keep one "
                                        "line a moment."),
           "line"},
    Phrase{"log.bad-number",
           LOOPWRIGHT_PHRASE("Phrases",
                             "Line {0} holds no number in column {1}. Leave it empty where nothing "
                             "was logged."),
           "line, column"},
    Phrase{"log.no-current",
           LOOPWRIGHT_PHRASE("Phrases", "Line {0} holds a number in column {1} that no current can be. Give "
                                        "r.m.s. amperes, zero or more."),
           "line, column"},
    Phrase{
        "log.not-kept",
        LOOPWRIGHT_PHRASE("Phrases", "The log is not in the workbook. Remove it here and take it in again."),
        ""},
    Phrase{"log.no-such-channel",
           LOOPWRIGHT_PHRASE("Phrases", "The log has no column called “{0}”. Choose another channel."),
           "channel"},
    Phrase{"log.no-device",
           LOOPWRIGHT_PHRASE("Phrases", "What the current did depends on the device. Record the circuit’s "
                                        "device and its rated current."),
           ""},
};

} // namespace

std::span<const Phrase> currentLog() {
    return table;
}

} // namespace loopwright::phrase_tables
