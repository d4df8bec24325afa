#include "app/rounds/round_actions.h"

#include <algorithm>
#include <numeric>

#include <QApplication>
#include <QClipboard>
#include <QInputDialog>

#include "app/kit/action_maker.h"
#include "app/kit/plain_texts.h"
#include "app/rounds/rounds_clipboard.h"
#include "app/rounds/rounds_view.h"
#include "core/language/round/write.h"
#include "core/language/words/terms.h"
#include "render/wording/diagnostic_sentence.h"
#include "render/wording/plain_text.h"
#include "render/wording/round_phrases.h"

namespace roundwright::app {

RoundActions::RoundActions(DocumentSession& session, RoundsView& view, QWidget* window)
    : QObject(window), session_(session), edits_(session), view_(view), window_(window) {
    make_row_actions(window);
    make_clipboard_actions(window);
    make_working_actions(window);
    view_.addActions(
        {words_, mend_, count_, evenly_, note_, add_after_, repeat_, remove_, cut_, copy_, paste_});
    view_.setContextMenuPolicy(Qt::ActionsContextMenu);
    of_rounds_ = {repeat_, remove_, up_, down_, cut_, copy_, evenly_, flat_, note_};
    connect(&session_, &DocumentSession::selection_changed, this, &RoundActions::update_enabled);
    connect(&session_, &DocumentSession::toy_changed, this, &RoundActions::update_enabled);
    connect(&session_, &DocumentSession::current_piece_changed, this, &RoundActions::update_enabled);
    update_enabled();
}

int RoundActions::place_after_selection() const {
    if (!selected().empty()) return selected().back() + 1;
    return session_.piece() ? static_cast<int>(session_.piece()->rounds.size()) : 0;
}

void RoundActions::make_row_actions(QWidget* window) {
    add_after_ = make_action(window, "round.add-after");
    add_before_ = make_action(window, "round.add-before");
    repeat_ = make_action(window, "round.repeat");
    remove_ = make_action(window, "round.delete");
    up_ = make_action(window, "round.earlier");
    down_ = make_action(window, "round.later");
    connect(add_after_, &QAction::triggered, this, [this] { edits_.insert_even(place_after_selection()); });
    connect(add_before_, &QAction::triggered, this,
            [this] { edits_.insert_even(selected().empty() ? 0 : selected().front()); });
    connect(repeat_, &QAction::triggered, this, [this] { edits_.repeat(selected()); });
    connect(remove_, &QAction::triggered, this, [this] { edits_.remove(selected()); });
    connect(up_, &QAction::triggered, this, [this] { edits_.move(selected(), -1); });
    connect(down_, &QAction::triggered, this, [this] { edits_.move(selected(), +1); });
}

void RoundActions::make_clipboard_actions(QWidget* window) {
    cut_ = make_action(window, "edit.cut");
    copy_ = make_action(window, "edit.copy");
    paste_ = make_action(window, "edit.paste");
    select_all_ = make_action(window, "edit.select-all");
    connect(cut_, &QAction::triggered, this, [this] {
        copy_rounds();
        edits_.remove(selected());
    });
    connect(copy_, &QAction::triggered, this, &RoundActions::copy_rounds);
    connect(paste_, &QAction::triggered, this, &RoundActions::paste_rounds);
    connect(select_all_, &QAction::triggered, this, [this] {
        if (!session_.piece()) return;
        std::vector<int> all(session_.piece()->rounds.size());
        std::iota(all.begin(), all.end(), 0);
        session_.select_rounds(std::move(all));
        view_.setFocus();
    });
}

void RoundActions::make_working_actions(QWidget* window) {
    count_ = make_action(window, "round.count");
    words_ = make_action(window, "round.words");
    evenly_ = make_action(window, "round.evenly");
    flat_ = make_choice(window, "round.flat");
    note_ = make_action(window, "round.note");
    mend_ = make_action(window, "round.fix-words");
    stagger_ = make_action(window, "round.stagger");
    connect(stagger_, &QAction::triggered, this, &RoundActions::stagger);
    connect(mend_, &QAction::triggered, this, &RoundActions::mend);
    connect(count_, &QAction::triggered, &view_, &RoundsView::edit_count);
    connect(words_, &QAction::triggered, &view_, &RoundsView::edit_words);
    connect(evenly_, &QAction::triggered, this, [this] { edits_.work_evenly(selected()); });
    connect(flat_, &QAction::triggered, this, [this](bool on) { edits_.set_flat_mark(selected(), on); });
    connect(note_, &QAction::triggered, this, &RoundActions::edit_note);
}

void RoundActions::fill(QMenu* menu) {
    menu->addActions({add_after_, add_before_, repeat_, remove_});
    menu->addSeparator();
    menu->addActions({up_, down_});
    menu->addSeparator();
    menu->addActions({count_, words_, mend_, evenly_, stagger_});
    for (const auto& [title, fill_it] : {std::pair{tr("&Stitch"), &RoundActions::fill_stitches},
                                         std::pair{tr("&Into"), &RoundActions::fill_loops},
                                         std::pair{tr("Incre&ases"), &RoundActions::fill_spacing},
                                         std::pair{tr("&Yarn"), &RoundActions::fill_yarns}}) {
        auto* submenu = menu->addMenu(title);
        connect(submenu, &QMenu::aboutToShow, this, [this, submenu, fill_it = fill_it] {
            submenu->clear();
            (this->*fill_it)(submenu);
        });
        (this->*fill_it)(submenu);
    }
    menu->addSeparator();
    menu->addActions({flat_, note_});
}

/// Of the rounds chosen, or of the whole piece; words stay as they were written.
void RoundActions::stagger() {
    if (!session_.piece()) return;
    const auto& rounds = session_.piece()->rounds;
    std::vector<int> chosen = selected();
    if (chosen.size() < 2) {
        chosen.resize(rounds.size());
        std::iota(chosen.begin(), chosen.end(), 0);
    }
    std::erase_if(chosen, [&](int round) {
        return !std::holds_alternative<WorkedEvenly>(rounds[static_cast<std::size_t>(round)].working);
    });
    if (!chosen.empty()) edits_.set_spacing(chosen, Spacing::staggered);
}

void RoundActions::fill_stitches(QMenu* menu) {
    for (const auto kind : {StitchKind::single_crochet, StitchKind::half_double_crochet,
                            StitchKind::double_crochet, StitchKind::treble_crochet}) {
        const auto name = full_name(kind, session_.preferences().terms());
        const auto text = QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
        menu->addAction(text, this, [this, kind, text] { edits_.set_stitch(selected(), kind, text); })
            ->setEnabled(!selected().empty());
    }
}

void RoundActions::fill_loops(QMenu* menu) {
    const std::pair<LoopPart, QString> parts[] = {{LoopPart::both, tr("both loops")},
                                                  {LoopPart::front, tr("front loops only")},
                                                  {LoopPart::back, tr("back loops only")}};
    for (const auto& [part, text] : parts) {
        menu->addAction(text, this,
                        [this, part = part, text = text] { edits_.set_loops(selected(), part, text); })
            ->setEnabled(!selected().empty());
    }
}

void RoundActions::fill_spacing(QMenu* menu) {
    const std::pair<Spacing, QString> spacings[] = {{Spacing::stacked, tr("one above the other")},
                                                    {Spacing::staggered, tr("between those below")}};
    for (const auto& [spacing, text] : spacings) {
        menu->addAction(text, this, [this, spacing = spacing] { edits_.set_spacing(selected(), spacing); })
            ->setEnabled(!selected().empty());
    }
}

void RoundActions::fill_yarns(QMenu* menu) {
    const auto& yarns = session_.toy().yarns;
    for (std::size_t yarn = 0; yarn < yarns.size(); ++yarn) {
        QPixmap patch(16, 16);
        patch.fill(QColor(yarns[yarn].colour.red, yarns[yarn].colour.green, yarns[yarn].colour.blue));
        const auto text =
            QStringLiteral("%1  %2").arg(QString::fromStdString(yarn_letter(static_cast<int>(yarn))),
                                         without_mnemonics(name_in_words(yarns[yarn].name)));
        menu->addAction(QIcon(patch), text, this, [this, yarn] { edits_.set_yarn(selected(), yarn); })
            ->setEnabled(!selected().empty());
    }
}

void RoundActions::copy_rounds() {
    if (selected().empty()) return;
    QApplication::clipboard()->setMimeData(rounds_to_clipboard(session_, selected()));
}

void RoundActions::paste_rounds() {
    const auto* data = QApplication::clipboard()->mimeData();
    if (!data) return;
    const auto rounds = rounds_from_clipboard(*data, session_.toy().yarns.size());
    if (rounds.empty()) {
        if (data->hasText()) Q_EMIT text_pasted(data->text());
        return;
    }
    const QString text = rounds.size() == 1
                             ? tr("Paste a round")
                             : tr("Paste %n round(s)", nullptr, static_cast<int>(rounds.size()));
    edits_.insert(place_after_selection(), rounds, text);
}

void RoundActions::edit_note() {
    if (selected().empty()) return;
    const int round = selected().front();
    const auto& note = session_.piece()->rounds[static_cast<std::size_t>(round)].note;
    bool accepted = false;
    const QString text = QInputDialog::getMultiLineText(
        window_, tr("Note"), tr("Note on round %1, printed with it:").arg(round + 1),
        QString::fromStdString(note), &accepted);
    if (accepted) edits_.set_note(round, text);
}

void RoundActions::mend() {
    if (!selected().empty()) edits_.mend(selected().front());
}

/// The action says what it would do: "Fix the words: 6 times".
void RoundActions::update_mend() {
    const bool can = !selected().empty() && !session_.read_only();
    const auto fault = can ? edits_.mendable(selected().front()) : std::nullopt;
    mend_->setEnabled(fault.has_value());
    mend_->setText(fault ? tr("Fi&x the words: %1").arg(mend_label(fault->mends.front()))
                         : tr("Fi&x the words"));
}

void RoundActions::update_enabled() {
    const bool some = !selected().empty() && !session_.read_only();
    for (QAction* action : std::as_const(of_rounds_)) action->setEnabled(some);
    update_mend();
    copy_->setEnabled(!selected().empty());
    for (QAction* action : {add_after_, add_before_, paste_}) {
        action->setEnabled(session_.piece() && !session_.read_only());
    }
    const auto* piece = session_.piece();
    flat_->setChecked(!selected().empty() && std::ranges::all_of(selected(), [&](int round) {
        return piece->rounds[static_cast<std::size_t>(round)].lies_flat;
    }));
}

}  // namespace roundwright::app
