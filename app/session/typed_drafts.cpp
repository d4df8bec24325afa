#include "app/session/typed_drafts.h"

#include <algorithm>

#include <QLineEdit>
#include <QPlainTextEdit>

namespace roundwright::app {

void TypedDrafts::bring_back(std::vector<TypedText> texts) {
    texts_ = std::move(texts);
    Q_EMIT changed();
}

std::optional<QString> TypedDrafts::text_in(const QString& dialog, const QString& field) const {
    const auto found = std::ranges::find_if(
        texts_, [&](const TypedText& text) { return text.dialog == dialog && text.field == field; });
    return found == texts_.end() ? std::nullopt : std::optional(found->text);
}

void TypedDrafts::set(const QString& dialog, const QString& field, const QString& text) {
    const auto found = std::ranges::find_if(
        texts_, [&](const TypedText& each) { return each.dialog == dialog && each.field == field; });
    if (found == texts_.end())
        texts_.push_back({dialog, field, text});
    else
        found->text = text;
    Q_EMIT changed();
}

void TypedDrafts::forget(const QString& dialog) {
    if (std::erase_if(texts_, [&](const TypedText& text) { return text.dialog == dialog; }) > 0)
        Q_EMIT changed();
}

void DialogDraft::follow(QLineEdit& line, const QString& field) {
    if (const auto text = drafts_.text_in(dialog_, field)) line.setText(*text);
    QObject::connect(&line, &QLineEdit::textChanged, &drafts_,
                     [&drafts = drafts_, dialog = dialog_, field](const QString& text) {
                         drafts.set(dialog, field, text);
                     });
}

void DialogDraft::follow(QPlainTextEdit& box, const QString& field) {
    if (const auto text = drafts_.text_in(dialog_, field)) box.setPlainText(*text);
    QObject::connect(
        &box, &QPlainTextEdit::textChanged, &drafts_,
        [&drafts = drafts_, dialog = dialog_, field, &box] { drafts.set(dialog, field, box.toPlainText()); });
}

}  // namespace roundwright::app
