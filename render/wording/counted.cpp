#include "render/wording/counted.h"

#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "render/wording/plurals.h"

namespace roundwright {
namespace {

struct CountedText {
    Q_DECLARE_TR_FUNCTIONS(Counted)
};

void speak_english() {
    QCoreApplication::installTranslator(new EnglishPlurals(QCoreApplication::instance()));
}

}  // namespace

Q_COREAPP_STARTUP_FUNCTION(speak_english)

QString stitches_words(int count) { return CountedText::tr("%Ln stitch(es)", nullptr, count); }

QString rounds_words(int count) { return CountedText::tr("%Ln round(s)", nullptr, count); }

QString lines_words(int count) { return CountedText::tr("%Ln line(s)", nullptr, count); }

QString pages_words(int count) { return CountedText::tr("%Ln page(s)", nullptr, count); }

QString about_stitches(double count, int beside) {
    const auto whole = std::llround(count);
    return whole == beside ? QLocale().toString(count, 'f', 1) : QLocale().toString(whole);
}

}  // namespace roundwright
