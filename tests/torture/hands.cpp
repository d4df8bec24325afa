#include "tests/torture/hands.h"

#include <QAbstractButton>
#include <QApplication>
#include <QMainWindow>
#include <QTest>

namespace roundwright::torture {
namespace {

QString words_on(const QAbstractButton& button) { return button.text().remove(u'&').replace(u'’', u'\''); }

QString name_of(const QAbstractButton& button) {
    return button.objectName().isEmpty() || button.objectName().startsWith(QStringLiteral("qt_"))
               ? words_on(button)
               : button.objectName();
}

QList<QAbstractButton*> buttons_of(const QDialog& dialog) {
    QList<QAbstractButton*> list;
    for (auto* button : dialog.findChildren<QAbstractButton*>()) {
        if (button->isVisible() && button->isEnabled() && !words_on(*button).isEmpty()) list << button;
    }
    return list;
}

/// Windows in memory lose the keyboard when a popup closes; on a display the system gives it back.
void take_keyboard_back() {
    if (QGuiApplication::platformName() != QLatin1String("offscreen")) return;
    if (QApplication::activePopupWidget() || QApplication::activeWindow()) return;
    QWidget* window = QApplication::activeModalWidget();
    for (QWidget* other : QApplication::topLevelWidgets()) {
        if (!window && other->isVisible() && qobject_cast<QMainWindow*>(other)) window = other;
    }
    if (!window) return;
    window->activateWindow();
    QCoreApplication::processEvents(QEventLoop::ExcludeUserInputEvents);
}

}  // namespace

QWidget* Hands::under_the_keys() {
    take_keyboard_back();
    if (QWidget* popup = QApplication::activePopupWidget()) return popup;
    if (QWidget* focus = QApplication::focusWidget()) return focus;
    return QApplication::activeWindow();
}

void Hands::press(Qt::Key key, Qt::KeyboardModifiers modifiers) const {
    pressing();
    if (QWidget* target = under_the_keys()) QTest::keyClick(target, key, modifiers);
}

void Hands::type(QChar letter) const {
    pressing();
    if (QWidget* target = under_the_keys()) QTest::keyClick(target, letter.toLatin1());
}

void Hands::click(QWidget* widget, const QPoint& place) {
    QTest::mouseClick(widget, Qt::LeftButton, {}, place);
}

Question question_of(const QDialog& dialog) {
    Question question{QString::fromLatin1(dialog.metaObject()->className()), {}, {}};
    if (!dialog.objectName().isEmpty()) question.kind += u' ' + dialog.objectName();
    for (const char* property : {"text", "informativeText"}) {
        const QString words = dialog.property(property).toString();
        if (!words.isEmpty()) question.words += words + u' ';
    }
    for (const auto* button : buttons_of(dialog)) question.answers << name_of(*button);
    return question;
}

bool give_answer(const QDialog& dialog, const QString& answer) {
    for (auto* button : buttons_of(dialog)) {
        const bool meant = button->objectName().contains(answer, Qt::CaseInsensitive) ||
                           words_on(*button).contains(answer, Qt::CaseInsensitive);
        if (!meant) continue;
        QTest::mouseClick(button, Qt::LeftButton);
        return true;
    }
    return false;
}

}  // namespace roundwright::torture
