// A toy from a stranger, whose every name tries to be more than a name.

#include <gtest/gtest.h>

#include <QFileDialog>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QPainter>
#include <QStatusBar>
#include <QTextBrowser>

#include "render/wording/unprintable.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

constexpr QRgb loud = qRgb(255, 0, 255);

/// Markup with a local picture, a link, an entity, a terminal's commands, an override that is never ended, an
/// isolate that was never begun, and an "&".
std::string hostile_name(const std::string& picture) {
    return "<img src=\"" + picture + "\"><a href=\"http://harbour.example\">x</a>&amp;\x1B]8;;http://a\x07" +
           "\xE2\x80\xAE"
           "nip\xE2\x81\xA9 %1 %2";
}

std::string long_name() { return std::string(10'000, 'W'); }

Toy hostile_toy(const std::string& name) {
    Toy toy = toy_of({6, 12, 18, 24, 60, 24, 18});
    toy.title = name;
    toy.yarns[0].name = name;
    toy.yarns[1].name = name;
    toy.designer = name;
    toy.notes = name;
    toy.private_notes = name;
    toy.text.introduction = name;
    toy.pieces[0].name = name;
    toy.pieces[0].rounds[1].note = name;
    toy.pieces[0].rounds[2].yarn = 1;
    toy.pieces[0].rounds[6].working = AsWritten{name};
    Feature eyes;
    eyes.kind = FeatureKind::safety_eye;
    eyes.pair = true;
    eyes.round = 2;
    eyes.stitches_apart = 4;
    eyes.name = name;
    toy.pieces[0].features.push_back(eyes);
    toy.pieces.push_back(piece_of({6, 12, 12, 12}, name.c_str()));
    return toy;
}

/// What a label or title says: without an override, an end of nothing, or a control character.
void expect_calm(const QString& text, const std::string& where) {
    int open = 0;
    for (const QChar c : text) {
        const char16_t u = c.unicode();
        if (c == u'\n' || c == QChar::LineSeparator) continue;
        if (u == 0x2068) ++open;
        const bool ends_its_own = u == 0x2069 && --open >= 0;
        const bool calm = u == 0x2068 || ends_its_own || !is_unprintable(u);
        ASSERT_TRUE(calm) << where << ": U+" << std::hex << int{u};
    }
    EXPECT_EQ(open, 0) << where;
}

bool shows_the_picture(QWidget& widget) {
    const QImage image = widget.grab().toImage();
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (image.pixel(x, y) == loud) return true;
    return false;
}

void expect_texts_calm(const QWidget& window, const std::string& where) {
    expect_calm(window.windowTitle(), where);
    for (const auto* widget : window.findChildren<QWidget*>()) {
        if (!widget->isVisible()) continue;
        const std::string who = where + ", " + widget->metaObject()->className();
        if (const auto* label = qobject_cast<const QLabel*>(widget)) expect_calm(label->text(), who);
        if (const auto* button = qobject_cast<const QAbstractButton*>(widget))
            expect_calm(button->text(), who);
        if (const auto* tabs = qobject_cast<const QTabBar*>(widget))
            for (int tab = 0; tab < tabs->count(); ++tab) expect_calm(tabs->tabText(tab), who);
        if (const auto* view = qobject_cast<const QAbstractItemView*>(widget); view && view->model()) {
            const auto& model = *view->model();
            for (int row = 0; row < std::min(model.rowCount(view->rootIndex()), 50); ++row)
                for (int column = 0; column < model.columnCount(view->rootIndex()); ++column)
                    expect_calm(model.index(row, column, view->rootIndex()).data().toString(), who);
        }
        expect_calm(widget->accessibleName(), who + " (name)");
    }
}

void expect_labels_plain(const QWidget& window, const std::string& where) {
    for (const auto* label : window.findChildren<QLabel*>()) {
        if (label->isVisible()) {
            EXPECT_EQ(label->textFormat(), Qt::PlainText) << where;
        }
    }
}

class HostileNames : public ::testing::TestWithParam<bool> {
  protected:
    HostileNames() {
        QImage picture(30, 30, QImage::Format_RGB32);
        picture.fill(loud);
        EXPECT_TRUE(picture.save(path));
        const std::string name = GetParam() ? long_name() : hostile_name(path.toStdString());
        maker = std::make_unique<MakerAtTheWindow>(hostile_toy(name));
    }

    void look_at(QWidget& window, const std::string& where) {
        expect_texts_calm(window, where);
        if (window.windowTitle() != QStringLiteral("About Roundwright")) expect_labels_plain(window, where);
        EXPECT_FALSE(shows_the_picture(window)) << where;
        EXPECT_LE(window.width(), 1280) << where;
    }

    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("loud.png"));
    std::unique_ptr<MakerAtTheWindow> maker;
};

TEST_P(HostileNames, AreTextInTheWindow) {
    const QSize before = maker->window->size();
    for (const int piece : {0, 1}) {
        maker->session.set_current_piece(piece);
        ASSERT_TRUE(wait_for_shape(maker->session));
        maker->session.select_rounds({1, 2});
        QTest::qWait(50);
        look_at(*maker->window, "piece " + std::to_string(piece));
        EXPECT_EQ(maker->window->size(), before);
    }
    for (const QString& key : maker->window->panels().keys()) {
        maker->window->panels().go_to_section(key);
        QTest::qWait(20);
        look_at(*maker->window, key.toStdString());
    }
}

TEST_P(HostileNames, AreTextInEveryDialog) {
    std::vector<QAction*> asking;
    for (const QMenu* menu : maker->window->findChildren<QMenu*>())
        for (QAction* action : menu->actions())
            if (action->isEnabled() && (action->text().contains(QStringLiteral("…")) ||
                                        action->shortcut() == QKeySequence(Qt::Key_F1)))
                asking.push_back(action);
    EXPECT_GT(asking.size(), 8U);
    int dialogs = 0;
    for (QAction* action : asking) {
        const std::string name = action->text().toStdString();
        QTimer closer;
        QObject::connect(&closer, &QTimer::timeout, [&] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            if (!qobject_cast<QFileDialog*>(dialog)) {
                ++dialogs;
                look_at(*dialog, name);
            }
            dialog->reject();
        });
        closer.start(100);
        action->trigger();
        QTest::qWait(20);
        for (QWidget* top : QApplication::topLevelWidgets()) {
            if (!top->isVisible() || top == maker->window.get()) continue;
            ++dialogs;
            look_at(*top, name);
            top->close();
        }
    }
    EXPECT_GT(dialogs, 6);
}

TEST_P(HostileNames, AreTextInMenus) {
    maker->session.edit(QStringLiteral("Rename Salt & Tide"), [](Toy toy) {
        toy.pieces[0].name = "Salt & Tide";
        return toy;
    });
    bool undo_seen = false;
    for (const QMenu* menu : maker->window->findChildren<QMenu*>()) {
        Q_EMIT const_cast<QMenu*>(menu)->aboutToShow();
        for (const QAction* action : menu->actions()) {
            expect_calm(action->text(), "a menu");
            expect_calm(action->toolTip(), "a menu's tip");
            undo_seen = undo_seen || action->text().endsWith(QStringLiteral("Rename Salt && Tide"));
        }
    }
    EXPECT_TRUE(undo_seen);
}

TEST_P(HostileNames, AreTextInMessages) {
    maker->session.edit(QStringLiteral("Another price"), [](Toy toy) {
        toy.hook_mm += 0.5;
        return toy;
    });
    bool asked = false;
    QTimer closer;
    QObject::connect(&closer, &QTimer::timeout, [&] {
        auto* dialog = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
        if (!dialog) return;
        asked = true;
        look_at(*dialog, "closing");
        dialog->reject();
    });
    closer.start(50);
    maker->window->close();
    EXPECT_TRUE(asked);
}

INSTANTIATE_TEST_SUITE_P(Names, HostileNames, ::testing::Bool(),
                         [](const auto& each) { return each.param ? "OfTenThousandLetters" : "WithMarkup"; });

/// A window title that ends in "[*]" marks a change; one in a name does not.
TEST(HostileTitles, AStarInBracketsIsPartOfTheName) {
    MakerAtTheWindow maker(toy_of({6, 12}));
    EXPECT_FALSE(maker.session.save(maker.folder.filePath(QStringLiteral("pup[*].roundwright"))));
    EXPECT_TRUE(maker.window->windowTitle().startsWith(QStringLiteral("pup[*][*]")))
        << maker.window->windowTitle().toStdString();
}

}  // namespace
}  // namespace roundwright::app
