#include "app/kit/field_widgets.h"

#include "app/kit/read_out.h"

namespace roundwright::app {

QLabel* words_label(const QString& name) {
    auto* label = new ReadOut(name);
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

QFont larger_font(QFont font, double factor, QFont::Weight weight) {
    font.setPointSizeF(font.pointSizeF() * factor);
    font.setWeight(weight);
    return font;
}

}  // namespace roundwright::app
