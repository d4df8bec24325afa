#include "app/pieces/piece_bar.h"

#include <algorithm>

#include <QAction>
#include <QHBoxLayout>
#include <QScopedValueRollback>

#include "app/pieces/piece_edits.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {

QString piece_title(const Piece& piece) {
    const QString name = piece.name.empty() ? PieceBar::tr("Unnamed") : name_in_words(piece.name);
    return piece.make > 1 ? QStringLiteral("%1 \u00D7%2").arg(name, QString::number(piece.make)) : name;
}

PieceBar::PieceBar(DocumentSession& session, QAction* new_piece, QAction* rename, QWidget* parent)
    : QWidget(parent), session_(session), tabs_(new QTabBar(this)) {
    tabs_->setExpanding(false);
    tabs_->setDocumentMode(true);
    tabs_->setDrawBase(false);
    tabs_->setMovable(true);
    tabs_->setUsesScrollButtons(true);
    tabs_->setElideMode(Qt::ElideRight);
    tabs_->setAccessibleName(tr("Pieces"));
    auto* add = new QToolButton(this);
    add->setDefaultAction(new_piece);
    add->setFocusPolicy(Qt::TabFocus);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(tabs_, 1);
    layout->addWidget(add);
    connect(tabs_, &QTabBar::currentChanged, this, [this](int piece) {
        if (!refilling_) session_.set_current_piece(piece);
    });
    connect(tabs_, &QTabBar::tabBarDoubleClicked, rename, &QAction::trigger);
    connect(tabs_, &QTabBar::tabMoved, this, &PieceBar::moved);
    connect(&session_, &DocumentSession::toy_changed, this, &PieceBar::follow);
    connect(&session_, &DocumentSession::current_piece_changed, this, &PieceBar::show_current);
    refill();
}

void PieceBar::refill() {
    const QScopedValueRollback guard(refilling_, true);
    const auto& pieces = session_.toy().pieces;
    while (tabs_->count() > static_cast<int>(pieces.size())) tabs_->removeTab(tabs_->count() - 1);
    for (int piece = 0; piece < static_cast<int>(pieces.size()); ++piece) {
        const QString title =
            piece_title(pieces[static_cast<std::size_t>(piece)]).replace(u'&', QStringLiteral("&&"));
        if (piece < tabs_->count()) {
            tabs_->setTabText(piece, title);
        } else {
            tabs_->addTab(title);
        }
    }
    tabs_->setCurrentIndex(session_.current_piece());
    if (tabs_->count() > 0) setMinimumHeight(std::max(minimumHeight(), tabs_->sizeHint().height()));
}

void PieceBar::follow(const ChangeSet& changes) {
    if (changes.piece_list() || changes.piece_settings) refill();
}

void PieceBar::show_current(int piece) {
    const QScopedValueRollback guard(refilling_, true);
    tabs_->setCurrentIndex(piece);
}

void PieceBar::moved(int from, int to) {
    if (!refilling_) PieceEdits(session_).move(from, to);
}

}  // namespace roundwright::app
