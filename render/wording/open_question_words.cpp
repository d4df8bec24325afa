#include "render/wording/open_question_words.h"

#include <QCoreApplication>

#include "render/wording/piece_name.h"
#include "render/wording/plain_text.h"

namespace roundwright {
namespace {

struct OpenQuestionWords {
    Q_DECLARE_TR_FUNCTIONS(OpenQuestionWords)
};

}  // namespace

QString open_question_words(const OpenQuestion& question, const Toy& toy) {
    switch (question.kind) {
        case OpenQuestionKind::title:
            return OpenQuestionWords::tr("what the toy is called");
        case OpenQuestionKind::gauge:
            return OpenQuestionWords::tr("your gauge: without it every size is a guess");
        case OpenQuestionKind::yarn_length:
            return OpenQuestionWords::tr("the length of 100 g of %1")
                .arg(name_in_words(toy.yarns[question.index].name));
        case OpenQuestionKind::no_rounds:
            return OpenQuestionWords::tr("how %1 is worked: it has no rounds")
                .arg(piece_name(toy, question.index));
        case OpenQuestionKind::rounds:
            return OpenQuestionWords::tr("what to do in the rounds of %1 that do not work out")
                .arg(piece_name(toy, question.index));
        case OpenQuestionKind::assembly:
            return OpenQuestionWords::tr("how the parts go together: there are no assembly steps");
    }
    return {};
}

}  // namespace roundwright
