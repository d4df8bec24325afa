#include "app/kit/field_widgets.h"

#include <QCoreApplication>
#include <QLocale>

namespace roundwright::app {

QLabel* words_label(const QString& name) {
    auto* label = new QLabel;
    label->setAccessibleName(name);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    return label;
}

QSpinBox* whole_box(int least, int most) {
    auto* box = new QSpinBox;
    box->setRange(least, most);
    box->setKeyboardTracking(false);
    box->setAlignment(Qt::AlignRight);
    return box;
}

QString grams_text(double grams) {
    return QCoreApplication::translate("FieldWidgets", "%1 g")
        .arg(QLocale().toString(grams, 'f', grams < 10 ? 1 : 0));
}

QFont larger_font(QFont font, double factor, QFont::Weight weight) {
    font.setPointSizeF(font.pointSizeF() * factor);
    font.setWeight(weight);
    return font;
}

}  // namespace roundwright::app
