#include "app/kit/theme.h"

#include <QApplication>
#include <QPainter>
#include <QProxyStyle>
#include <QStyleOption>

#include "app/kit/system_wishes.h"

namespace roundwright::app {
namespace {

/// Fusion with dialogs' buttons by their words alone, since the style's own pictures are not ours, and with a
/// rim around boxes to tick that shows on dark ground too: its own is a darker shade of the window.
ThemeColours current_colours;

/// Fusion, with rims that show on dark ground too around what is filled in or ticked.
class ProgramStyle : public QProxyStyle {
  public:
    ProgramStyle() : QProxyStyle(QStringLiteral("Fusion")) {}
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* answer) const override {
        return hint == SH_DialogButtonBox_ButtonsHaveIcons
                   ? 0
                   : QProxyStyle::styleHint(hint, option, widget, answer);
    }
    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override {
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
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        const bool has_rim = control == CC_SpinBox || control == CC_ComboBox;
        if (!has_rim || option->state.testFlag(State_HasFocus)) return;  // Fusion marks the focus there
        const Pen pen(*painter, current_colours.rim);
        painter->setRenderHint(QPainter::Antialiasing);
        constexpr double corner = 2;
        painter->drawRoundedRect(QRectF(option->rect).adjusted(0.5, 0.5, -0.5, -0.5), corner, corner);
    }

  private:
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
               "QToolButton:focus { border: 1px solid %4; }"
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

QPalette theme_palette(bool dark) {
    const Greys& grey = dark ? dark_greys : light_greys;
    QPalette palette;
    const auto set = [&](QPalette::ColorRole role, QRgb colour) { palette.setColor(role, QColor(colour)); };
    set(QPalette::Window, grey.window);
    set(QPalette::WindowText, grey.text);
    set(QPalette::Base, grey.base);
    set(QPalette::AlternateBase, grey.alternate);
    set(QPalette::Text, grey.text);
    set(QPalette::Button, grey.button);
    set(QPalette::ButtonText, grey.text);
    set(QPalette::BrightText, theme_colours(dark).error_text.rgba());
    set(QPalette::Highlight, grey.highlight);
    set(QPalette::HighlightedText, grey.highlighted_text);
    set(QPalette::ToolTipBase, grey.tip);
    set(QPalette::ToolTipText, grey.tip_text);
    set(QPalette::Link, grey.link);
    set(QPalette::LinkVisited, grey.link);
    set(QPalette::PlaceholderText, dark ? 0xff9aa1a8 : 0xff646a71);
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

ThemeColours theme_colours(bool dark) {
    if (dark) {
        return {QColor(0xffa9b0b7), QColor(0xff3d4349), QColor(0xff7d848b), QColor(0xff2c474b),
                QColor(0xff63bcc6), QColor(0xfff0bd6a), QColor(0xfff59a8c), QColor(0xff2a2f34)};
    }
    return {QColor(0xff5b6168), QColor(0xffd8d4cc), QColor(0xff80868c), QColor(0xffd7e9ea),
            QColor(0xff1c6b76), QColor(0xff8a5200), QColor(0xffa32a1e), QColor(0xffeceae5)};
}

const ThemeColours& Theme::colours() { return current_colours; }

Theme::Theme(Preferences& preferences, QObject* parent) : QObject(parent), preferences_(preferences) {
    QApplication::setStyle(new ProgramStyle);
    connect(&preferences_, &Preferences::appearance_changed, this, &Theme::apply);
    connect(&SystemWishes::instance(), &SystemWishes::changed, this, &Theme::apply);
    apply();
}

void Theme::apply() {
    dark_ = wants_dark(preferences_.appearance());
    current_colours = theme_colours(dark_);
    QApplication::setPalette(theme_palette(dark_));
    qApp->setStyleSheet(style_rules(current_colours));
    Q_EMIT changed();
}

}  // namespace roundwright::app
