// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/records.h"
#include "core/phrases/message.h"
#include "core/units/entry.h"

#include <QLocale>
#include <QString>

#include <string_view>

namespace loopwright {

/// Puts what core says into the reader's words: phrases by the translation that is installed, numbers and
/// dates by the locale it was made with. Screen and report may each have their own.
class Words {
  public:
    explicit Words(const QLocale& locale)
      : locale_(locale) {}

    /// The phrase with its places filled. A key that no phrase has is shown as it is.
    /// Where the first whole number among the arguments is 1 and a phrase "<key>.one" exists, that phrase is
    /// used.
    QString sentence(const Message& message) const;

    /// A phrase without places.
    QString word(std::string_view phraseKey) const;

    /// Value, no-break space, unit: "41.7 A". Minus is U+2212, thousands are parted by U+2009, decimals are
    /// the locale's. A bound has its sign before it: ">999 MΩ".
    QString measure(const Measure& measure) const;

    /// The number alone. Decimals below 0 choose three significant digits and drop zeros at the end.
    QString number(double value, int decimals) const;
    QString number(std::int64_t value) const;

    /// What stands in a cell: as many decimals as were typed, ">" or "<" before a bound, "LIM: reason",
    /// "N/A"; empty while missing. The unit stands in the head and is not written.
    QString figure(const EntryText& entry) const;

    /// "10 March 2026" in the locale's own order; a date that does not exist gives an empty text.
    QString date(const Date& date) const;

    /// How numbers are typed here, for parseEntry.
    NumberFormat numberFormat() const;

    const QLocale& locale() const { return locale_; }

  private:
    QLocale locale_;
};

/// Between UTF-8 of core and QString.
QString text(std::string_view utf8);
std::string utf8(const QString& text);

} // namespace loopwright
