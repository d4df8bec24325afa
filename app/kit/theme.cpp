#include "app/kit/theme.h"

#include <algorithm>
#include <cmath>

#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QListView>
#include <QPainter>
#include <QProxyStyle>
#include <QStyleOption>

#include "app/kit/focus_ring.h"
#include "app/kit/icons.h"
#include "app/kit/look.h"
#include "app/kit/system_wishes.h"

namespace roundwright::app {
namespace {

ThemeColours current_colours;
bool current_more_contrast = false;
bool current_less_motion = false;

constexpr int least_target_px = 24;  // WCAG 2.2, 2.5.8
constexpr int least_thumb_px = 32;
constexpr int least_row_px = 28;  // words stand clear of a ring within the row

bool is_target(QStyle::ContentsType type) {
    switch (type) {
        case QStyle::CT_PushButton:
        case QStyle::CT_ToolButton:
        case QStyle::CT_CheckBox:
        case QStyle::CT_RadioButton:
        case QStyle::CT_ComboBox:
        case QStyle::CT_SpinBox:
        case QStyle::CT_LineEdit:
        case QStyle::CT_TabBarTab:
        case QStyle::CT_Slider:
        case QStyle::CT_MenuBarItem:
        case QStyle::CT_MenuItem:
        case QStyle::CT_ItemViewItem:
            return true;
        default:
            return false;
    }
}

bool is_separator(const QStyleOption* option) {
    const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
    return item != nullptr && item->menuItemType == QStyleOptionMenuItem::Separator;
}

/// Fusion with dialogs' buttons by their words alone, since the style's own pictures are not ours; with rims
/// around what is filled in or ticked that show on dark ground too (its own are a darker shade of the
/// window); with room for a finger or an unsteady hand; and without its mark of focus, which FocusRing draws.
class ProgramStyle : public QProxyStyle {
  public:
    ProgramStyle() : QProxyStyle(QStringLiteral("Fusion")) {}
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* answer) const override {
        if (hint == SH_DialogButtonBox_ButtonsHaveIcons) return 0;
        if (hint == SH_Widget_Animation_Duration && current_less_motion) return 0;
        return QProxyStyle::styleHint(hint, option, widget, answer);
    }
    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override {
        // FocusRing takes up so much of a cell, and of a row that is one item.
        constexpr int beside_text_of_cells = 4, beside_text_of_rows = 7;
        if (metric == PM_ScrollBarSliderMin) return least_thumb_px;
        if (metric == PM_TabBarScrollButtonWidth) return least_target_px;
        if (metric == PM_FocusFrameHMargin && qobject_cast<const QListView*>(widget))
            return beside_text_of_rows;
        if (metric == PM_FocusFrameHMargin && qobject_cast<const QAbstractItemView*>(widget))
            return beside_text_of_cells;
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
    /// A scroll bar is all track and thumb: arrows at its ends would be smaller than a finger.
    QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                         const QWidget* widget) const override {
        const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
        if (control == CC_ScrollBar && bar != nullptr) return scroll_bar_part(*bar, part);
        return QProxyStyle::subControlRect(control, option, part, widget);
    }
    QIcon standardIcon(StandardPixmap which, const QStyleOption* option,
                       const QWidget* widget) const override {
        switch (which) {
            case SP_MessageBoxInformation:
            case SP_MessageBoxQuestion:
                return icon(QStringLiteral("notice"));
            case SP_MessageBoxWarning:
                return icon(QStringLiteral("warning"));
            case SP_MessageBoxCritical:
                return icon(QStringLiteral("error"));
            default:
                return QProxyStyle::standardIcon(which, option, widget);
        }
    }
    using QProxyStyle::polish;
    /// Fields of numbers in small type are lower than the style would have them; others keep their own least.
    void polish(QWidget* widget) override {
        QProxyStyle::polish(widget);
        const auto* field = qobject_cast<QAbstractSpinBox*>(widget);
        if (field != nullptr && field->minimumHeight() == 0 && field->sizeHint().height() < least_target_px)
            widget->setMinimumHeight(least_target_px);
    }
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                           const QWidget* widget) const override {
        const QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
        if (!is_target(type) || is_separator(option)) return size;
        // What stands between a bare box to tick and the next control makes up for its width, as 2.5.8
        // allows.
        const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
        const bool bare = type == CT_CheckBox && button != nullptr && button->text.isEmpty();
        const bool row = type == CT_ItemViewItem && qobject_cast<const QListView*>(widget) != nullptr;
        const int letter = option->fontMetrics.averageCharWidth();
        const int beside_words = type == CT_PushButton ? 3 * letter / 2 : type == CT_ComboBox ? letter : 0;
        return QSize(size.width() + beside_words, size.height())
            .expandedTo({bare ? 0 : least_target_px, row ? least_row_px : least_target_px});
    }
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override {
        if (element == PE_FrameFocusRect) return;
        QProxyStyle::drawPrimitive(element, option, painter, widget);
        const QRectF rim = QRectF(option->rect).adjusted(0.5, 0.5, -0.5, -0.5);
        if (element == PE_IndicatorCheckBox) {
            const Pen pen(*painter, current_colours.rim);
            painter->drawRect(rim);
        } else if (element == PE_IndicatorRadioButton) {
            const Pen pen(*painter, current_colours.rim);
            painter->setRenderHint(QPainter::Antialiasing);
            painter->drawEllipse(rim);
        }
    }
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                            const QWidget* widget) const override {
        if (control == CC_ScrollBar) return draw_scroll_bar(*option, *painter);
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        const bool has_rim = control == CC_SpinBox || control == CC_ComboBox;
        if (!has_rim || option->state.testFlag(State_HasFocus)) return;  // Fusion marks the focus there
        const Pen pen(*painter, current_colours.rim);
        painter->setRenderHint(QPainter::Antialiasing);
        constexpr double corner = 2;
        painter->drawRoundedRect(QRectF(option->rect).adjusted(0.5, 0.5, -0.5, -0.5), corner, corner);
    }

  private:
    [[nodiscard]] static QRect scroll_bar_part(const QStyleOptionSlider& bar, SubControl part) {
        const bool across = bar.orientation == Qt::Horizontal;
        const int length = across ? bar.rect.width() : bar.rect.height();
        const double steps = std::max(1.0, static_cast<double>(bar.maximum) - bar.minimum + bar.pageStep);
        const int thumb = std::min(
            length, std::max(least_thumb_px, static_cast<int>(std::lround(length * bar.pageStep / steps))));
        const int start = sliderPositionFromValue(bar.minimum, bar.maximum, bar.sliderPosition,
                                                  length - thumb, bar.upsideDown);
        const auto stretch = [&](int from, int to) {
            const QRect place = across ? QRect(from, 0, to - from, bar.rect.height())
                                       : QRect(0, from, bar.rect.width(), to - from);
            return visualRect(bar.direction, bar.rect, place.translated(bar.rect.topLeft()));
        };
        switch (part) {
            case SC_ScrollBarSlider:
                return stretch(start, start + thumb);
            case SC_ScrollBarSubPage:
                return stretch(0, start);
            case SC_ScrollBarAddPage:
                return stretch(start + thumb, length);
            case SC_ScrollBarGroove:
                return bar.rect;
            default:
                return {};
        }
    }
    static void draw_scroll_bar(const QStyleOptionComplex& option, QPainter& painter) {
        const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(&option);
        if (bar == nullptr) return;
        const bool all_is_seen = bar->maximum <= bar->minimum;
        painter.fillRect(bar->rect, bar->palette.color(all_is_seen ? QPalette::Base : QPalette::Window));
        if (all_is_seen) return;
        constexpr double beside = 3;
        const QRectF thumb = QRectF(scroll_bar_part(*bar, SC_ScrollBarSlider));
        const bool across = bar->orientation == Qt::Horizontal;
        const QRectF shown =
            across ? thumb.adjusted(1, beside, -1, -beside) : thumb.adjusted(beside, 1, -beside, -1);
        const bool held = (bar->activeSubControls & SC_ScrollBarSlider) != 0 &&
                          (bar->state & (State_MouseOver | State_Sunken)) != 0;
        const double round = std::min(shown.width(), shown.height()) / 2;
        const Pen pen(painter, Qt::transparent);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        painter.setBrush(held ? current_colours.accent : current_colours.rim);
        painter.drawRoundedRect(shown, round, round);
    }
    /// A hollow pen until the end of the block.
    class Pen {
      public:
        Pen(QPainter& painter, const QColor& colour) : painter_(painter) {
            painter_.save();
            painter_.setPen(colour);
            painter_.setBrush(Qt::NoBrush);
        }
        ~Pen() { painter_.restore(); }
        Pen(const Pen&) = delete;
        Pen& operator=(const Pen&) = delete;

      private:
        QPainter& painter_;
    };
};

struct Greys {
    QRgb window, base, alternate, button, text, disabled, line, highlight, highlighted_text, tip, tip_text,
        link;
};
constexpr Greys light_greys{0xfff4f2ee, 0xffffffff, 0xfffaf9f6, 0xfffbfaf8, 0xff21262b, 0xff8b9096,
                            0xffd8d4cc, 0xff1c6b76, 0xffffffff, 0xff2a3036, 0xfff3f1ed, 0xff17606a};
constexpr Greys dark_greys{0xff25292d, 0xff1c1f22, 0xff212529, 0xff30353a, 0xffe9e6e1, 0xff7d848b,
                           0xff3d4349, 0xff63bcc6, 0xff0c1b1d, 0xffe9e6e1, 0xff21262b, 0xff7fd0d9};
// Text at 7 to 1 and more (WCAG 2.2, 1.4.6), all lines at 4.5.
constexpr Greys light_contrast_greys{0xffffffff, 0xffffffff, 0xfff5f5f5, 0xffffffff, 0xff000000, 0xff595959,
                                     0xff4a4a4a, 0xff0a4a52, 0xffffffff, 0xff000000, 0xffffffff, 0xff0a4a52};
constexpr Greys dark_contrast_greys{0xff000000, 0xff000000, 0xff141414, 0xff000000, 0xffffffff, 0xffa6a6a6,
                                    0xffb8b8b8, 0xff8fe6ef, 0xff000000, 0xffffffff, 0xff000000, 0xff8fe6ef};

const Greys& greys(bool dark, bool more_contrast) {
    if (more_contrast) return dark ? dark_contrast_greys : light_contrast_greys;
    return dark ? dark_greys : light_greys;
}

QString style_rules(const ThemeColours& colours) {
    return QStringLiteral(
               "QToolTip { padding: 4px 6px; border: 1px solid %1; }"
               "QSplitter::handle { background: %1; }"
               "QSplitter::handle:horizontal { width: 1px; } QSplitter::handle:vertical { height: 1px; }"
               "QHeaderView::section { background: transparent; color: %2; border: none;"
               "  border-bottom: 1px solid %1; padding: 5px 7px; }"
               "QAbstractItemView { border: none; outline: none; }"
               "QToolButton { border: 1px solid transparent; border-radius: 5px; padding: 4px; }"
               "QToolButton:hover { background: %3; }"
               "QToolButton:checked { background: %3; border-color: %4; }"
               "QToolButton::menu-indicator { image: none; }"
               "QLineEdit { border: 1px solid %5; border-radius: 6px; padding: 5px 8px; }"
               "QLineEdit:focus { border: 1px solid %4; }"
               "QTableView QLineEdit { border: none; border-radius: 0; padding: 0 5px; }"
               "QStatusBar::item { border: none; }"
               "QMenu { padding: 4px 0; border: 1px solid %1; }")
        .arg(colours.line.name(), colours.quiet_text.name(), colours.soft_accent.name(),
             colours.accent.name(), colours.rim.name());
}

bool wants_dark(Appearance appearance) {
    if (appearance == Appearance::system) return SystemWishes::instance().prefers_dark();
    return appearance == Appearance::dark;
}

}  // namespace

namespace {

QPalette palette_of(bool dark, bool more_contrast) {
    const Greys& grey = greys(dark, more_contrast);
    const ThemeColours colours = more_contrast ? contrast_colours(dark) : theme_colours(dark);
    QPalette palette;
    const auto set = [&](QPalette::ColorRole role, QRgb colour) { palette.setColor(role, QColor(colour)); };
    set(QPalette::Window, grey.window);
    set(QPalette::WindowText, grey.text);
    set(QPalette::Base, grey.base);
    set(QPalette::AlternateBase, grey.alternate);
    set(QPalette::Text, grey.text);
    set(QPalette::Button, grey.button);
    set(QPalette::ButtonText, grey.text);
    set(QPalette::BrightText, colours.error_text.rgba());
    set(QPalette::Highlight, grey.highlight);
    set(QPalette::HighlightedText, grey.highlighted_text);
    set(QPalette::ToolTipBase, grey.tip);
    set(QPalette::ToolTipText, grey.tip_text);
    set(QPalette::Link, grey.link);
    set(QPalette::LinkVisited, grey.link);
    set(QPalette::PlaceholderText, more_contrast ? colours.quiet_text.rgba()
                                   : dark        ? 0xff9aa1a8
                                                 : 0xff646a71);
    set(QPalette::Light, dark ? 0xff3a4046 : 0xffffffff);
    set(QPalette::Midlight, dark ? 0xff343a3f : 0xfff0ede8);
    set(QPalette::Mid, grey.line);
    set(QPalette::Dark, dark ? 0xff15181a : 0xffb9b4ab);
    set(QPalette::Shadow, dark ? 0xff0b0d0e : 0xff8e8a83);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, QColor(grey.disabled));
    }
    palette.setColor(QPalette::Disabled, QPalette::Highlight, QColor(grey.line));
    return palette;
}

/// From the font that the system gave at the start. It is left alone until another size is wanted, so that Qt
/// goes on following the system's font where it can.
void apply_text_size() {
    static const QFont given = QApplication::font();
    static bool was_changed = false;
    const double factor =
        ReadingAids::instance().text_percent() / 100.0 * SystemWishes::instance().text_growth();
    was_changed = was_changed || factor != 1;
    if (!was_changed) return;
    QFont wanted = given;
    if (given.pointSizeF() > 0) {
        wanted.setPointSizeF(given.pointSizeF() * factor);
    } else {
        wanted.setPixelSize(std::max(1, static_cast<int>(std::lround(given.pixelSize() * factor))));
    }
    if (wanted != QApplication::font()) QApplication::setFont(wanted);
}

}  // namespace

QPalette theme_palette(bool dark) { return palette_of(dark, false); }
QPalette contrast_palette(bool dark) { return palette_of(dark, true); }

ThemeColours theme_colours(bool dark) {
    if (dark) {
        return {QColor(0xffa9b0b7), QColor(0xff3d4349), QColor(0xff7d848b), QColor(0xff2c474b),
                QColor(0xff63bcc6), QColor(0xfff0bd6a), QColor(0xfff59a8c), QColor(0xff2a2f34)};
    }
    return {QColor(0xff5b6168), QColor(0xffd8d4cc), QColor(0xff80868c), QColor(0xffd7e9ea),
            QColor(0xff1c6b76), QColor(0xff8a5200), QColor(0xffa32a1e), QColor(0xffeceae5)};
}

ThemeColours contrast_colours(bool dark) {
    if (dark) {
        return {QColor(0xffe6e6e6), QColor(0xffb8b8b8), QColor(0xffd0d0d0), QColor(0xff0d3a40),
                QColor(0xff8fe6ef), QColor(0xffffd48a), QColor(0xffffb4a8), QColor(0xff000000)};
    }
    return {QColor(0xff2b2b2b), QColor(0xff4a4a4a), QColor(0xff3a3a3a), QColor(0xffd3ebed),
            QColor(0xff0a4a52), QColor(0xff573300), QColor(0xff7a1109), QColor(0xffffffff)};
}

const ThemeColours& Theme::colours() { return current_colours; }

int ring_width() { return current_more_contrast ? 3 : 2; }

bool less_motion() { return current_less_motion; }

Theme::Theme(Preferences& preferences, QObject* parent) : QObject(parent), preferences_(preferences) {
    QApplication::setStyle(new ProgramStyle);
    connect(&preferences_, &Preferences::appearance_changed, this, &Theme::apply);
    connect(&ReadingAids::instance(), &ReadingAids::changed, this, &Theme::apply);
    connect(&preferences_, &Preferences::reduced_motion_changed, this, &Theme::apply);
    connect(&SystemWishes::instance(), &SystemWishes::changed, this, &Theme::apply);
    apply();
    FocusRing::follow_focus();
}

void Theme::apply() {
    const SystemWishes& wishes = SystemWishes::instance();
    dark_ = wants_dark(preferences_.appearance());
    current_more_contrast = ReadingAids::instance().more_contrast() || wishes.prefers_more_contrast();
    current_less_motion = preferences_.reduced_motion() || wishes.prefers_less_motion();
    current_colours = current_more_contrast ? contrast_colours(dark_) : theme_colours(dark_);
    apply_text_size();
    QApplication::setPalette(palette_of(dark_, current_more_contrast));
    qApp->setStyleSheet(style_rules(current_colours));
    Q_EMIT changed();
}

}  // namespace roundwright::app
