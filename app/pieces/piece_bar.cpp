#include "app/pieces/piece_bar.h"

#include <algorithm>

#include <QAction>
#include <QHBoxLayout>
#include <QMouseEvent>
#include <QScopedValueRollback>

#include "app/pieces/piece_edits.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

constexpr int toy_tab = 0;
constexpr int first_piece = 1;  // its tab

/// Rather than cutting names to a letter or two, the tabs scroll.
class PieceTabs : public QTabBar {
  public:
    using QTabBar::QTabBar;

  protected:
    [[nodiscard]] QSize minimumTabSizeHint(int index) const override {
        constexpr int readable_characters = 16;
        const QSize whole = tabSizeHint(index);
        return {std::min(whole.width(), readable_characters * fontMetrics().averageCharWidth()),
                whole.height()};
    }
};

}  // namespace

QString piece_title(const Piece& piece) {
    const QString name = piece.name.empty() ? PieceBar::tr("Unnamed") : name_in_words(piece.name);
    return piece.make > 1 ? QStringLiteral("%1 \u00D7%2").arg(name, QString::number(piece.make)) : name;
}

PieceBar::PieceBar(DocumentSession& session, QAction* new_piece, QAction* rename, QWidget* parent)
    : QWidget(parent), session_(session), tabs_(new PieceTabs(this)) {
    tabs_->setExpanding(false);
    tabs_->setDocumentMode(true);
    tabs_->setDrawBase(false);
    tabs_->setMovable(true);
    tabs_->setUsesScrollButtons(true);
    tabs_->setElideMode(Qt::ElideRight);
    tabs_->setAccessibleName(tr("Whole toy and pieces"));
    tabs_->installEventFilter(this);
    auto* add = new QToolButton(this);
    add->setDefaultAction(new_piece);
    add->setFocusPolicy(Qt::TabFocus);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(tabs_, 1);
    layout->addWidget(add);
    connect(tabs_, &QTabBar::currentChanged, this, &PieceBar::choose);
    connect(tabs_, &QTabBar::tabBarDoubleClicked, rename, [rename](int tab) {
        if (tab >= first_piece) rename->trigger();
    });
    connect(tabs_, &QTabBar::tabMoved, this, &PieceBar::moved);
    connect(&session_, &DocumentSession::toy_changed, this, &PieceBar::follow);
    connect(&session_, &DocumentSession::current_piece_changed, this, &PieceBar::show_current);
    connect(&session_, &DocumentSession::whole_toy_shown, this, &PieceBar::show_current);
    refill();
}

/// The toy's own tab is not to be dragged.
bool PieceBar::eventFilter(QObject* watched, QEvent* event) {
    if (watched == tabs_ && event->type() == QEvent::MouseButtonPress)
        tabs_->setMovable(tabs_->tabAt(static_cast<QMouseEvent*>(event)->pos()) != toy_tab);
    return QWidget::eventFilter(watched, event);
}

void PieceBar::choose(int tab) {
    if (refilling_) return;
    if (tab == toy_tab) return session_.show_whole_toy(true);
    session_.show_whole_toy(false);
    session_.set_current_piece(tab - first_piece);
}

void PieceBar::refill() {
    const QScopedValueRollback guard(refilling_, true);
    const auto& pieces = session_.toy().pieces;
    QStringList titles{tr("Whole toy")};
    for (const Piece& piece : pieces) titles << piece_title(piece).replace(u'&', QStringLiteral("&&"));
    while (tabs_->count() > titles.size()) tabs_->removeTab(tabs_->count() - 1);
    for (int tab = 0; tab < titles.size(); ++tab) {
        if (tab < tabs_->count())
            tabs_->setTabText(tab, titles[tab]);
        else
            tabs_->addTab(titles[tab]);
    }
    show_current();
    if (tabs_->count() > 0) setMinimumHeight(std::max(minimumHeight(), tabs_->sizeHint().height()));
}

void PieceBar::follow(const ChangeSet& changes) {
    if (changes.piece_list() || changes.piece_settings) refill();
}

void PieceBar::show_current() {
    const QScopedValueRollback guard(refilling_, true);
    const bool whole = session_.shows_whole_toy() || session_.current_piece() < 0;
    tabs_->setCurrentIndex(whole ? toy_tab : first_piece + session_.current_piece());
}

void PieceBar::moved(int from, int to) {
    if (refilling_) return;
    if (std::min(from, to) == toy_tab || !PieceEdits(session_).move(from - first_piece, to - first_piece))
        refill();
}

}  // namespace roundwright::app
