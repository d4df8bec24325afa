#include "app/kit/read_out.h"

#include <QAccessible>

#include "app/kit/spoken_roles.h"

namespace roundwright::app {
namespace {

constexpr QChar word_joiner(0x2060);  // keeps a line from breaking, and trips voices up

}  // namespace

ReadOut::ReadOut(const QString& name, QWidget* parent) : QLabel(parent), name_(name) {
    setTextFormat(Qt::PlainText);
    speak_as(*this, QAccessible::StaticText);
}

QString ReadOut::spoken() const {
    const QString words = text_spoken().remove(word_joiner).trimmed();
    if (name_.isEmpty() || words.isEmpty()) return name_ + words;
    return tr("%1: %2").arg(name_, words);
}

QString ReadOut::text_spoken() const { return text(); }

void ReadOut::tell_change() {
    QAccessibleEvent event(this, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&event);
}

}  // namespace roundwright::app
