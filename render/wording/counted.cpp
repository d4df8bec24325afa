#include "render/wording/counted.h"

#include <cmath>

#include <QCoreApplication>
#include <QLocale>

namespace roundwright {
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

QString lines_words(int count) {
    return counted(count, QT_TRANSLATE_NOOP("Counted", "%1 line"), QT_TRANSLATE_NOOP("Counted", "%1 lines"));
}

QString pages_words(int count) {
    return counted(count, QT_TRANSLATE_NOOP("Counted", "%1 page"), QT_TRANSLATE_NOOP("Counted", "%1 pages"));
}

QString about_stitches(double count, int beside) {
    const auto whole = std::llround(count);
    return whole == beside ? QLocale().toString(count, 'f', 1) : QLocale().toString(whole);
}

}  // namespace roundwright
