#include "app/rounds/rounds_in_words.h"

#include <algorithm>

#include <QDialogButtonBox>
#include <QPushButton>
#include <QTextBlock>
#include <QTextCursor>
#include <QVBoxLayout>

#include "app/kit/room_on_screen.h"
#include "render/wording/as_sentence.h"
#include "render/wording/plain_text.h"
#include "render/wording/round_by_round.h"
#include "render/wording/shape_words.h"

namespace roundwright::app {

RoundsInWords::RoundsInWords(DocumentSession& session, QWidget* parent)
    : QDialog(parent, Qt::Window), session_(session), text_(new QPlainTextEdit) {
    setWindowTitle(tr("Round by round"));
    text_->setReadOnly(true);
    text_->setTabChangesFocus(true);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    text_->setAccessibleName(tr("The piece round by round"));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::close);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(text_);
    layout->addWidget(buttons);
    resize(room_on_screen(*this, {640, 480}));
    connect(&session_, &DocumentSession::study_ready, this, &RoundsInWords::show_words);
    connect(&session_, &DocumentSession::current_piece_changed, this, &RoundsInWords::show_words);
    connect(&session_.preferences(), &Preferences::units_changed, this, &RoundsInWords::show_words);
    connect(&session_.preferences(), &Preferences::terms_changed, this, &RoundsInWords::show_words);
    show_words();
}

/// The cursor stays in its line.
void RoundsInWords::show_words() {
    const auto study = session_.study(session_.current_piece());
    QStringList lines;
    if (session_.piece() != nullptr && study && study->measures().usable()) {
        const LengthUnit units = session_.preferences().units();
        lines << name_in_words(session_.piece()->name) << as_sentence(size_words(*study, units))
              << as_sentence(shape_words(*study, units)) << as_sentence(profile_words(*study, units))
              << tr("Growth: at 1 a round lies flat, at 0 it is even.")
              << round_by_round(*session_.piece(), *study, session_.preferences().terms(), units);
    } else {
        lines << tr("There is no shape yet.");
    }
    const QString words = lines.join(QLatin1Char('\n'));
    if (words == text_->toPlainText()) return;
    const int line = text_->textCursor().blockNumber();
    text_->setPlainText(words);
    const QTextBlock block = text_->document()->findBlockByNumber(std::min(line, text_->blockCount() - 1));
    text_->setTextCursor(QTextCursor(block));
}

void show_rounds_in_words(DocumentSession& session, QWidget* window) {
    auto* words = window->findChild<RoundsInWords*>(QString(), Qt::FindDirectChildrenOnly);
    if (words == nullptr) words = new RoundsInWords(session, window);
    words->show();
    words->raise();
    words->activateWindow();
}

}  // namespace roundwright::app
