#include "app/window/panel_column.h"

#include <algorithm>

#include <QEvent>
#include <QSettings>
#include <QStyle>

#include "app/kit/first_stop.h"
#include "app/kit/icons.h"
#include "app/kit/spoken_roles.h"

namespace roundwright::app {
namespace {

constexpr int margins = 12;      // left and right
constexpr int strip_margin = 2;  // on each side, where room is scarce
constexpr int panel_characters = 44;
const auto open_setting = QStringLiteral("window/open-panel");

}  // namespace

PanelColumn::PanelColumn(QWidget* parent)
    : QWidget(parent), signs_(new FlowLayout), layout_(new QVBoxLayout(this)) {
    signs_->setSpacing(2);
    layout_->setContentsMargins(6, 6, 6, 6);
    layout_->setSpacing(2);
    layout_->addLayout(signs_);
    layout_->addStretch(1);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Preferred);
}

void PanelColumn::add_section(const QString& key, const QString& title, const QString& icon_name,
                              QWidget* panel) {
    Section section{key, icon_name, new QToolButton(this), new QScrollArea(this)};
    speak_as_fold(*section.title);
    section.title->setText(title);
    section.title->setIcon(icon(icon_name));
    section.title->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    section.title->setCheckable(true);
    section.title->setFocusPolicy(Qt::TabFocus);
    section.title->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    section.title->setObjectName(QStringLiteral("panel-title"));
    speak_as(*section.body, QAccessible::Grouping);
    section.body->setAccessibleName(title);
    section.body->setWidget(panel);
    section.body->setWidgetResizable(true);
    section.body->setFrameShape(QFrame::NoFrame);
    section.body->setFocusPolicy(Qt::NoFocus);  // its fields take the keyboard, and it follows them
    section.body->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    section.body->hide();
    const int end = layout_->count() - 1;
    layout_->insertWidget(end, section.title);
    layout_->insertWidget(end + 1, section.body, 1);
    connect(section.title, &QToolButton::clicked, this, [this, key] {
        show_open(open_key_ == key ? QString() : key);
        remember();
    });
    sections_.push_back(section);
    fix_width();
    show_open(open_key_);
}

void PanelColumn::show_open(const QString& key) {
    open_key_ = key;
    for (const auto& section : sections_) {
        const bool open = section.key == key;
        section.title->setChecked(open);
        section.body->setVisible(open);
    }
    layout_->setStretch(layout_->count() - 1, key.isEmpty() ? 1 : 0);
    place_titles();
    fix_width();
    Q_EMIT section_opened(key);
}

/// Over their panels, each in its row; of a strip with a panel open, in one row over that.
void PanelColumn::place_titles() {
    const bool in_a_row = strip_ && !open_key_.isEmpty();
    for (std::size_t at = 0; at < sections_.size(); ++at) {
        const Section& section = sections_[at];
        const bool sign = strip_ && section.key != open_key_;
        section.title->setToolButtonStyle(sign ? Qt::ToolButtonIconOnly : Qt::ToolButtonTextBesideIcon);
        section.title->setToolTip(sign ? section.title->text() : QString());
        if ((signs_->indexOf(section.title) >= 0) == in_a_row) continue;
        if (in_a_row) {
            layout_->removeWidget(section.title);
            signs_->addWidget(section.title);
        } else {
            signs_->removeWidget(section.title);
            layout_->insertWidget(layout_->indexOf(section.body), section.title);
        }
    }
}

void PanelColumn::set_strip(bool strip) {
    if (strip == strip_) return;
    strip_ = strip;
    strip ? show_open({}) : restore();
}

int PanelColumn::column_width() const {
    return panel_width() + style()->pixelMetric(QStyle::PM_ScrollBarExtent) + margins;
}

int PanelColumn::strip_width() const {
    int widest = 0;
    for (const auto& section : sections_) {
        // What the theme's rules and the style put around a sign: padding, a border, room for a press.
        constexpr int around = 14;
        widest = std::max(widest, section.title->iconSize().width() + around);
    }
    return widest + 2 * strip_margin;
}

int PanelColumn::panel_width() const { return fontMetrics().averageCharWidth() * panel_characters; }

void PanelColumn::fix_width() {
    for (const auto& section : sections_) section.body->widget()->setMaximumWidth(panel_width());
    const int side = strip_ && open_key_.isEmpty() ? strip_margin : margins / 2;
    layout_->setContentsMargins(side, margins / 2, side, margins / 2);
    setFixedWidth(strip_ && open_key_.isEmpty() ? strip_width() : column_width());
}

void PanelColumn::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) fix_width();
}

void PanelColumn::remember() const {
    if (!strip_) QSettings().setValue(open_setting, open_key_);
}

void PanelColumn::open_section(const QString& key) {
    if (!keys().contains(key)) return;
    show_open(key);
    remember();
}

void PanelColumn::go_to_section(const QString& key) {
    open_section(key);
    const auto found = std::ranges::find(sections_, key, &Section::key);
    if (found == sections_.end()) return;
    QWidget* field = first_stop(found->body->widget());
    (field ? field : found->title)->setFocus(Qt::ShortcutFocusReason);
}

bool PanelColumn::take_keyboard() {
    const auto open = std::ranges::find(sections_, open_key_, &Section::key);
    if (open != sections_.end()) return go_to_section(open_key_), true;
    if (sections_.empty()) return false;
    sections_.front().title->setFocus(Qt::ShortcutFocusReason);
    return true;
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

void PanelColumn::restore() {
    if (sections_.empty() || strip_) return;
    const QString last = QSettings().value(open_setting, sections_.front().key).toString();
    show_open(keys().contains(last) ? last : QString());
}

}  // namespace roundwright::app
