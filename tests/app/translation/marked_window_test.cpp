#include <gtest/gtest.h>
#include <memory>

#include <QFileDialog>
#include <QMenuBar>

#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "tests/app/app_testing.h"
#include "tests/app/translation/marked_texts.h"
#include "tests/app/translation/nameless_toy.h"
#include "tests/app/window/mnemonics.h"

namespace roundwright::app {
namespace {

class MarkedWindow : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        session = std::make_unique<DocumentSession>();
        session->preferences().set_units(LengthUnit::millimetres);
        window = std::make_unique<MainWindow>(*session, folder.filePath(QStringLiteral("state")));
        window->resize(1280, 760);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        ASSERT_TRUE(wait_until([&] { return window->shape().scene() != nullptr; }));
        session->start(nameless_toy());
        ASSERT_TRUE(wait_for_shape(*session));
    }

    static std::string english_in(const QWidget& widget) {
        return test::english_texts(widget).join(QLatin1Char('\n')).toStdString();
    }

    test::MarkedLanguage language;
    QTemporaryDir folder;
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
};

TEST_F(MarkedWindow, SaysNothingOutsideTheTranslation) {
    for (const int piece : {0, 1}) {
        session->set_current_piece(piece);
        ASSERT_TRUE(wait_for_shape(*session));
        session->select_rounds({1, 2});
        QTest::qWait(50);
        EXPECT_EQ(english_in(*window), "") << "piece " << piece;
    }
}

TEST_F(MarkedWindow, HasNoMnemonicTwice) {
    session->select_rounds({1, 2});
    test::expect_own_mnemonics_in_menus(*window);
    for (const QString& key : window->panels().keys()) {
        window->panels().go_to_section(key);
        test::expect_own_mnemonics(*window, key.toStdString());
    }
    test::expect_own_mnemonics_in_dialogs(*window);
}

/// Every action of the menus that asks something, with whatever window it opens.
TEST_F(MarkedWindow, NorDoesAnyDialog) {
    std::vector<QAction*> asking;
    for (const QMenu* menu : window->findChildren<QMenu*>())
        for (QAction* action : menu->actions())
            if (action->isEnabled() && action->text().contains(QStringLiteral("…"))) asking.push_back(action);
    EXPECT_GT(asking.size(), 8U);
    int dialogs = 0;
    for (QAction* action : asking) {
        const std::string name = action->text().toStdString();
        QTimer closer;
        QObject::connect(&closer, &QTimer::timeout, [&] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            if (qobject_cast<QFileDialog*>(dialog) == nullptr) {
                ++dialogs;
                EXPECT_EQ(english_in(*dialog), "") << name;
            }
            dialog->reject();
        });
        closer.start(100);
        action->trigger();
        QTest::qWait(20);
        for (QWidget* top : QApplication::topLevelWidgets()) {
            if (!top->isVisible() || top == window.get()) continue;
            ++dialogs;
            EXPECT_EQ(english_in(*top), "") << name;
            top->close();
        }
    }
    EXPECT_GT(dialogs, 6);
}

}  // namespace
}  // namespace roundwright::app
