#include "app/kit/cell_words.h"

#include <QCoreApplication>

namespace roundwright::app {
namespace {

struct CellWords {
    Q_DECLARE_TR_FUNCTIONS(CellWords)
};

}  // namespace

QString cell_words(const QString& row, const QString& column, const QString& text) {
    const QString said = text.isEmpty() ? CellWords::tr("empty")
                         : text == u"–" ? CellWords::tr("none")
                                        : text;
    return CellWords::tr("%1, %2, %3").arg(row, column, said);
}

}  // namespace roundwright::app
