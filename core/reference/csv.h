// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/reference/embedded.h"
#include "core/reference/source.h"

#include <array>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

// Tables are read once, from memory; a reader thread would only cost. The library cuts the file names of its
// complaints to length on purpose, and GCC remarks on it wherever that is inlined.
#define CSV_IO_NO_THREAD
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wstringop-truncation"
#include <libfccp/csv.h>
#pragma GCC diagnostic pop

/// Reading of the built-in tables, for the rooms of ReferenceTables only.
namespace loopwright::csv {

/// One row: its cells by column name. Complaints are std::runtime_error and name file, line and column.
class Row {
  public:
    Row(const char* file, unsigned line, std::span<const char* const> columns,
        std::span<const char* const> cells)
      : file_(file)
      , line_(line)
      , columns_(columns)
      , cells_(cells) {}

    /// The cell as it stands; valid while the row is.
    std::string_view text(std::string_view column) const;
    /// The number in the cell; nothing when it is empty. A cell that is neither is a complaint.
    std::optional<double> optionalNumber(std::string_view column) const;
    double number(std::string_view column) const;
    /// The parts of a cell that holds a list, divided by ';'.
    std::vector<std::string> list(std::string_view column) const;

    [[noreturn]] void complain(std::string_view column, std::string_view what) const;

  private:
    const char* file_;
    unsigned line_;
    std::span<const char* const> columns_;
    std::span<const char* const> cells_;
};

/// What the row says of its own source. `weight` names the column that says how much it bears: "confidence"
/// or "basis". The short title is `title` where the table has one of its own, otherwise the first part of the
/// source.
Source sourceOf(const Row& row, std::string_view weight, std::string title = {});

/// Reads reference/<name> and hands over each row. Columns that are not asked for are skipped.
template <std::size_t N, class Take>
void read(const char* name, const std::array<const char*, N>& columns, Take&& take) {
    const std::string_view bytes = embeddedFile(std::string("reference/") + name);
    try {
        io::CSVReader<N, io::trim_chars<' '>, io::double_quote_escape<',', '"'>> reader(
            name, bytes.data(), bytes.data() + bytes.size());
        [&]<std::size_t... I>(std::index_sequence<I...>) {
            reader.read_header(io::ignore_extra_column, columns[I]...);
            std::array<const char*, N> cells{};
            while (reader.read_row(cells[I]...))
                take(Row(name, reader.get_file_line(), columns, cells));
        }
        (std::make_index_sequence<N>{});
    } catch (const io::error::base& complaint) {
        throw std::runtime_error(complaint.what());
    }
}

} // namespace loopwright::csv
