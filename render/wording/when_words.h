#pragma once

#include <QDateTime>
#include <QString>

namespace roundwright {

/// A moment as one says it: "today 14:05", "yesterday 09:30", and longer ago by its date, all in local time
/// and as the maker's system writes them.
[[nodiscard]] QString when_words(const QDateTime& moment,
                                 const QDateTime& now = QDateTime::currentDateTime());

}  // namespace roundwright
