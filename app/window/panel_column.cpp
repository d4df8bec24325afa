#include "app/window/panel_column.h"

#include <algorithm>
#include <utility>

#include <QEvent>
#include <QScrollBar>
#include <QSettings>

#include "app/window/icons.h"

namespace roundwright::app {
namespace {

constexpr int margins = 12;  // left and right
const auto open_setting = QStringLiteral("window/open-panel");

/// The first field of a panel that the Tab key goes to; null if there is none.
QWidget* first_field(QWidget* panel) {
    for (QWidget* field = panel->nextInFocusChain(); field != panel; field = field->nextInFocusChain()) {
        const bool takes_tab = field->focusPolicy() & Qt::TabFocus;
        if (takes_tab && panel->isAncestorOf(field) && field->isVisibleTo(panel) && field->isEnabled())
            return field;
    }
    return nullptr;
}

/// What a section needs so that nothing in it is cut off at the side.
int room_of(const QScrollArea& body) {
    return body.widget()->minimumSizeHint().width() + body.verticalScrollBar()->sizeHint().width();
}

}  // namespace

PanelColumn::PanelColumn(QWidget* parent) : QWidget(parent), layout_(new QVBoxLayout(this)) {
    layout_->setContentsMargins(6, 6, 6, 6);
    layout_->setSpacing(2);
    layout_->addStretch(1);
    setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
}

void PanelColumn::add_section(const QString& key, const QString& title, const QString& icon_name,
                              QWidget* panel) {
    Section section{key, icon_name, new QToolButton(this), new QScrollArea(this)};
    section.title->setText(title);
    section.title->setIcon(icon(icon_name));
    section.title->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    section.title->setCheckable(true);
    section.title->setFocusPolicy(Qt::TabFocus);
    section.title->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    section.title->setObjectName(QStringLiteral("panel-title"));
    section.body->setAccessibleName(title);
    section.body->setWidget(panel);
    panel->installEventFilter(this);
    section.body->setWidgetResizable(true);
    section.body->setFrameShape(QFrame::NoFrame);
    section.body->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    section.body->hide();
    const int end = layout_->count() - 1;
    layout_->insertWidget(end, section.title);
    layout_->insertWidget(end + 1, section.body, 1);
    connect(section.title, &QToolButton::clicked, this, [this, key] {
        folded_for_room_.clear();
        show_open(open_key_ == key ? QString() : key);
        remember();
    });
    sections_.push_back(section);
    show_open(open_key_);
}

void PanelColumn::show_open(const QString& key) {
    open_key_ = key;
    for (const auto& section : sections_) {
        const bool open = section.key == key;
        section.title->setChecked(open);
        section.title->setAccessibleDescription(open ? tr("open") : tr("folded"));
        section.body->setVisible(open);
    }
    layout_->setStretch(layout_->count() - 1, key.isEmpty() ? 1 : 0);
    updateGeometry();
    Q_EMIT section_opened(key);
}

int PanelColumn::folded_width() const {
    int widest = 0;
    for (const auto& section : sections_) widest = std::max(widest, section.title->sizeHint().width());
    return widest + margins;
}

int PanelColumn::wanted_width() const {
    int width = folded_width();
    for (const auto& section : sections_) {
        if (section.key != open_key_) continue;
        width = std::max({width, fontMetrics().averageCharWidth() * 40, room_of(*section.body) + margins});
    }
    return width;
}

QSize PanelColumn::sizeHint() const { return {wanted_width(), QWidget::sizeHint().height()}; }

/// In a wide window the column may be pressed together while the window gets narrower, until it folds.
QSize PanelColumn::minimumSizeHint() const {
    return {room_enough_ ? folded_width() : wanted_width(), QWidget::minimumSizeHint().height()};
}

/// A panel whose words got longer may need more room.
bool PanelColumn::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::LayoutRequest) updateGeometry();
    return QWidget::eventFilter(watched, event);
}

void PanelColumn::remember() const { QSettings().setValue(open_setting, open_key_); }

void PanelColumn::open_section(const QString& key) {
    if (!keys().contains(key)) return;
    folded_for_room_.clear();
    show_open(key);
    remember();
}

void PanelColumn::go_to_section(const QString& key) {
    open_section(key);
    const auto found = std::ranges::find(sections_, key, &Section::key);
    if (found == sections_.end()) return;
    QWidget* field = first_field(found->body->widget());
    (field ? field : found->title)->setFocus(Qt::ShortcutFocusReason);
}

void PanelColumn::fold_all() {
    show_open({});
    remember();
}

QStringList PanelColumn::keys() const {
    QStringList keys;
    for (const auto& section : sections_) keys << section.key;
    return keys;
}

QString PanelColumn::title(const QString& key) const {
    const auto found = std::ranges::find(sections_, key, &Section::key);
    return found == sections_.end() ? QString() : found->title->text();
}

void PanelColumn::restore(bool room_enough) {
    room_enough_ = room_enough;
    if (sections_.empty()) return;
    const QString last = QSettings().value(open_setting, sections_.front().key).toString();
    if (room_enough) {
        show_open(last);
    } else {
        folded_for_room_ = last;
        show_open({});
    }
}

void PanelColumn::fit_room(bool room_enough) {
    if (std::exchange(room_enough_, room_enough) == room_enough) return;
    if (!room_enough && !open_key_.isEmpty()) {
        folded_for_room_ = open_key_;
        show_open({});
    } else if (room_enough && open_key_.isEmpty() && !folded_for_room_.isEmpty()) {
        show_open(std::exchange(folded_for_room_, QString()));
    }
}

}  // namespace roundwright::app
