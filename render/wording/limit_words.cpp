#include "render/wording/limit_words.h"

#include <QCoreApplication>

namespace roundwright {
namespace {

struct LimitsText {
    Q_DECLARE_TR_FUNCTIONS(Limits)
};

}  // namespace

QString most_rounds_words(int most) {
    return LimitsText::tr("A piece has at most %Ln round(s).", nullptr, most);
}

QString most_stitches_words(int most) {
    return LimitsText::tr("A piece has at most %Ln stitch(es).", nullptr, most);
}

QString most_pieces_words(int most) {
    return LimitsText::tr("A toy has at most %Ln piece(s).", nullptr, most);
}

QString most_joins_words(int most) { return LimitsText::tr("A toy has at most %Ln join(s).", nullptr, most); }

}  // namespace roundwright
