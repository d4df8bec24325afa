#include "tests/app/translation/marked_texts.h"

#include <gtest/gtest.h>
#include <set>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QAction>
#include <QComboBox>
#include <QCoreApplication>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QRegularExpression>
#include <QTabWidget>

#include "app/kit/read_out.h"
#include "render/wording/plurals.h"
#include "tests/app/translation/found_texts.h"

namespace roundwright::test {
namespace {

/// The trade's own language of rounds, which core writes and reads in US or UK terms, and what is written
/// alike everywhere: names of files, of keys and of the program.
const char* const rounds_language =
    "sc inc dec invdec ch sl st hdc dc tr tog sk rnd rnds in next each around magic ring single half double "
    "treble crochet chain slip stitch skip bobble";
const char* const alike = "mm PDF PNG SVG US UK Esc Del Roundwright roundwright";

std::set<QString> same_everywhere() {
    const QStringList words =
        (QLatin1String(rounds_language) + QLatin1Char(' ') + QLatin1String(alike)).split(u' ');
    return {words.begin(), words.end()};
}

/// Qt's own texts, marked as they are asked for.
class MarkedQt : public QTranslator {
  public:
    [[nodiscard]] QString translate(const char* context, const char* source, const char*,
                                    int n) const override {
        if (context == nullptr || source == nullptr || *context != 'Q') return {};
        const QString text = QString::fromUtf8(source);
        return opening_mark + (n < 0 ? text : english_plural(text, n)) + closing_mark;
    }
    [[nodiscard]] bool isEmpty() const override { return false; }
};

class Listener {
  public:
    explicit Listener(QStringList& found) : found_(found) {}

    void hear(const QObject& who, const char* what, const QString& text) {
        if (!says_english(text)) return;
        const QString line = QStringLiteral("%1 %2, %3: %4")
                                 .arg(QLatin1String(who.metaObject()->className()), who.objectName(),
                                      QLatin1String(what), text);
        if (!found_.contains(line)) found_ += line;
    }

    void hear_action(const QAction& action) {
        hear(action, "text", action.text());
        hear(action, "tip", action.toolTip());
        hear(action, "status", action.statusTip());
    }

    void hear_cells(const QAbstractItemView& view) {
        const QAbstractItemModel* model = view.model();
        if (model == nullptr) return;
        for (int column = 0; column < model->columnCount(); ++column) {
            hear(view, "head", model->headerData(column, Qt::Horizontal).toString());
            hear(view, "tip of a head",
                 model->headerData(column, Qt::Horizontal, Qt::ToolTipRole).toString());
            for (int row = 0; row < model->rowCount(); ++row) {
                const QModelIndex index = model->index(row, column);
                for (const int role :
                     {int{Qt::DisplayRole}, int{Qt::ToolTipRole}, int{Qt::AccessibleTextRole}})
                    hear(view, "cell", index.data(role).toString());
            }
        }
    }

    void hear_widget(const QWidget& widget) {
        hear(widget, "title", widget.windowTitle());
        hear(widget, "tip", widget.toolTip());
        hear(widget, "status", widget.statusTip());
        hear(widget, "help", widget.whatsThis());
        hear(widget, "name", widget.accessibleName());
        hear(widget, "description", widget.accessibleDescription());
        for (const QAction* action : widget.actions()) hear_action(*action);
        hear_parts(widget);
    }

  private:
    void hear_parts(const QWidget& widget) {
        if (const auto* label = qobject_cast<const QLabel*>(&widget)) hear(widget, "label", label->text());
        if (const auto* read_out = qobject_cast<const app::ReadOut*>(&widget))
            hear(widget, "read-out", read_out->name());
        if (const auto* button = qobject_cast<const QAbstractButton*>(&widget))
            hear(widget, "button", button->text());
        if (const auto* group = qobject_cast<const QGroupBox*>(&widget))
            hear(widget, "group", group->title());
        if (const auto* menu = qobject_cast<const QMenu*>(&widget)) hear(widget, "menu", menu->title());
        if (const auto* bar = qobject_cast<const QProgressBar*>(&widget))
            hear(widget, "format", bar->format());
        if (const auto* line = qobject_cast<const QLineEdit*>(&widget))
            hear(widget, "hint", line->placeholderText());
        if (const auto* text = qobject_cast<const QPlainTextEdit*>(&widget))
            hear(widget, "hint", text->placeholderText());
        if (const auto* box = qobject_cast<const QAbstractSpinBox*>(&widget))
            hear(widget, "field", box->text());
        if (const auto* tabs = qobject_cast<const QTabWidget*>(&widget))
            for (int i = 0; i < tabs->count(); ++i) hear(widget, "tab", tabs->tabText(i));
        if (const auto* box = qobject_cast<const QComboBox*>(&widget))
            for (int i = 0; i < box->count(); ++i) hear(widget, "choice", box->itemText(i));
        if (const auto* view = qobject_cast<const QAbstractItemView*>(&widget)) hear_cells(*view);
    }

    QStringList& found_;
};

}  // namespace

QString outside_marks(const QString& text) {
    static const QRegularExpression key(QStringLiteral("\\b(Ctrl|Shift|Alt|Meta)\\+\\S*|<[^<>]*>"));
    QString rest;
    int depth = 0;
    for (const QChar letter : text) {
        if (letter == opening_mark) ++depth;
        if (depth == 0) rest += letter;
        if (letter == closing_mark) --depth;
    }
    return rest.remove(key);
}

bool says_english(const QString& text) {
    static const QRegularExpression word(QStringLiteral("[A-Za-z]{2,}"));
    static const std::set<QString> same = same_everywhere();
    const QString rest = outside_marks(text);
    for (auto words = word.globalMatch(rest); words.hasNext();)
        if (same.count(words.next().captured()) == 0) return true;
    return false;
}

QStringList english_texts(const QWidget& window) {
    QStringList found;
    Listener listener(found);
    listener.hear_widget(window);
    for (const QWidget* widget : window.findChildren<QWidget*>()) listener.hear_widget(*widget);
    return found;
}

MarkedLanguage::MarkedLanguage() : qt_(std::make_unique<MarkedQt>()) {
    write_marked_translation(folder_.path());
    EXPECT_TRUE(program_.load(folder_.filePath(QStringLiteral("roundwright_de.qm"))));
    QCoreApplication::installTranslator(qt_.get());
    QCoreApplication::installTranslator(&program_);
}

MarkedLanguage::~MarkedLanguage() {
    QCoreApplication::removeTranslator(&program_);
    QCoreApplication::removeTranslator(qt_.get());
}

}  // namespace roundwright::test
