#include "app/wording/counted.h"

#include <cmath>

#include <QCoreApplication>
#include <QLocale>

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Counted", text); }

QString counted(int count, const char* one, const char* many) {
    return tr(count == 1 ? one : many).arg(QLocale().toString(count));
}

}  // namespace

QString stitches_words(int count) {
    return counted(count, QT_TRANSLATE_NOOP("Counted", "%1 stitch"),
                   QT_TRANSLATE_NOOP("Counted", "%1 stitches"));
}

QString rounds_words(int count) {
    return counted(count, QT_TRANSLATE_NOOP("Counted", "%1 round"),
                   QT_TRANSLATE_NOOP("Counted", "%1 rounds"));
}

QString about_stitches(double count) {
    const auto halves = std::llround(2 * count);
    const QString whole = halves >= 2 ? QLocale().toString(halves / 2) : QString();
    return halves % 2 == 0 ? QLocale().toString(halves / 2) : whole + QChar(u'\u00BD');
}

}  // namespace roundwright::app
