#include "render/wording/terms_words.h"

#include <QCoreApplication>

namespace roundwright {
namespace {

class TermsWords {
    Q_DECLARE_TR_FUNCTIONS(TermsWords)
};

}  // namespace

QString terms_name(Terms terms) {
    switch (terms) {
        case Terms::us:
            return TermsWords::tr("US");
        case Terms::uk:
            return TermsWords::tr("UK");
        case Terms::german:
            return TermsWords::tr("German");
        case Terms::french:
            return TermsWords::tr("French");
        case Terms::spanish:
            return TermsWords::tr("Spanish");
        case Terms::dutch:
            return TermsWords::tr("Dutch");
        case Terms::danish:
            return TermsWords::tr("Danish");
        case Terms::portuguese:
            return TermsWords::tr("Portuguese");
        case Terms::italian:
            return TermsWords::tr("Italian");
    }
    return {};
}

QStringList terms_names() {
    QStringList names;
    for (const Terms terms : all_terms) names << terms_name(terms);
    return names;
}

QString terms_in_words(Terms terms) {
    switch (terms) {
        case Terms::us:
            return TermsWords::tr("US terms");
        case Terms::uk:
            return TermsWords::tr("UK terms");
        case Terms::german:
            return TermsWords::tr("German terms");
        case Terms::french:
            return TermsWords::tr("French terms");
        case Terms::spanish:
            return TermsWords::tr("Spanish terms");
        case Terms::dutch:
            return TermsWords::tr("Dutch terms");
        case Terms::danish:
            return TermsWords::tr("Danish terms");
        case Terms::portuguese:
            return TermsWords::tr("Portuguese terms");
        case Terms::italian:
            return TermsWords::tr("Italian terms");
    }
    return {};
}

}  // namespace roundwright
