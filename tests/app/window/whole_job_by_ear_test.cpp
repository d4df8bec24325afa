// The whole job by somebody who sees nothing: with the keys alone, and with nothing but what assistive
// technology is told. Controls are found by the role and name that a focus event tells, results by what is
// said. Keys go where the keyboard is, as on any desktop.

#include <gtest/gtest.h>

#include <QAccessible>
#include <QFile>
#include <QRegularExpression>

#include "app/print/pattern_preview.h"
#include "tests/app/listener.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

/// The menu of a button and the dialog for files keep loops of their own: what is done there waits for them.
void once(const std::function<bool()>& holds, const std::function<void()>& act) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, holds, act] {
        if (!holds()) return;
        timer->stop();
        act();
        timer->deleteLater();
    });
    timer->start(20);
}

class WholeJobByEar : public ::testing::Test {
  public:
    void SetUp() override {
        if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
    }

    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        maker.press(key, modifiers);
        QTest::qWait(15);
    }
    void type(const QString& text) { maker.type(text); }

    [[nodiscard]] const Listener::Place& place() const { return listener.place(); }
    [[nodiscard]] bool at(QAccessible::Role role, const QString& name) const {
        return place().role == role && place().name.startsWith(name);
    }

    /// Until it is told of a control of this role whose name begins so.
    void go_to(QAccessible::Role role, const QString& name, Qt::Key key = Qt::Key_Tab) {
        QStringList heard{place().name};
        for (int k = 0; k < 80 && !at(role, name); ++k) {
            press(key);
            heard << place().name;
        }
        ASSERT_TRUE(at(role, name)) << name.toStdString() << " was not among: "
                                    << heard.join(QStringLiteral(" | ")).toStdString();
    }

    /// By the mnemonic that the menu bar tells, and down to the item by what is heard.
    void choose(const QString& menu, const QStringList& items) {
        const QKeySequence opens(mnemonic(menu));
        ASSERT_FALSE(opens.isEmpty()) << menu.toStdString();
        press(opens[0].key(), opens[0].keyboardModifiers());
        for (const QString& item : items) {
            ASSERT_NO_FATAL_FAILURE(go_to(QAccessible::MenuItem, item, Qt::Key_Down));
            press(item == items.back() ? Qt::Key_Return : Qt::Key_Right);
        }
    }

    static QString mnemonic(const QString& menu) {
        auto* window = QAccessible::queryAccessibleInterface(QApplication::activeWindow());
        for (int k = 0; window != nullptr && k < window->childCount(); ++k) {
            auto* bar = window->child(k);
            for (int item = 0; bar->role() == QAccessible::MenuBar && item < bar->childCount(); ++item)
                if (bar->child(item)->text(QAccessible::Name) == menu)
                    return bar->child(item)->text(QAccessible::Accelerator);
        }
        return {};
    }

    /// What is said until nothing more is, once something was, with these words in it.
    [[nodiscard]] QString hear(const QString& words = {}) {
        QStringList heard;
        EXPECT_TRUE(wait_until([&] {
            heard << listener.take_said();
            return !heard.isEmpty() && heard.join(u' ').contains(words);
        })) << "was not said: "
            << words.toStdString();
        for (QStringList more{QString()}; !more.isEmpty(); heard << more) {
            QTest::qWait(900);
            more = listener.take_said();
        }
        return heard.join(u' ');
    }
    void forget() {
        QTest::qWait(900);
        (void)listener.take_said();
    }

    /// As a window manager does when another window goes, and the windows in memory do not.
    void come_back() {
        maker.window->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(maker.window.get()));
    }

    static int width_in(const QString& said) {
        static const QRegularExpression width(QStringLiteral("(\\d+)\\W+mm wide"));
        const auto found = width.match(said);
        EXPECT_TRUE(found.hasMatch()) << said.toStdString();
        return found.captured(1).toInt();
    }

    void make_the_head();
    void place_the_eyes();
    void make_it_smaller();
    void print_it();
    void work_along();

    Listener listener;
    MakerAtTheWindow maker{toy_of({6, 12})};
    int width_mm = 0;
};

void WholeJobByEar::make_the_head() {
    choose(QStringLiteral("File"), {QStringLiteral("New toy")});
    EXPECT_TRUE(hear().contains(QStringLiteral("New toy.")));
    ASSERT_NO_FATAL_FAILURE(go_to(QAccessible::EditableText, QStringLiteral("Next rounds")));
    type(QStringLiteral("6, 12, 18, 24, 30, 36x5, 30, 24, 18, 12, 6"));
    const QString understood = hear(QStringLiteral("mm wide"));
    EXPECT_TRUE(understood.contains(QStringLiteral("Rounds 1 to 15: 6, 12, 18, 24, 30, 5 rounds of 36")))
        << understood.toStdString();
    width_mm = width_in(understood);
    press(Qt::Key_Return);
    EXPECT_TRUE(hear().contains(QStringLiteral("Added: Rounds 1 to 15")));
}

void WholeJobByEar::place_the_eyes() {
    choose(QStringLiteral("Go"), {QStringLiteral("Go to a panel"), QStringLiteral("Face")});
    ASSERT_NO_FATAL_FAILURE(go_to(QAccessible::ButtonMenu, QStringLiteral("Add")));
    once([] { return QApplication::activePopupWidget() != nullptr; },
         [this] {
             go_to(QAccessible::MenuItem, QStringLiteral("Safety eyes"), Qt::Key_Down);
             press(Qt::Key_Return);
         });
    press(Qt::Key_Space);
    const QString placed = hear();
    EXPECT_TRUE(placed.contains(QStringLiteral("between rounds"))) << placed.toStdString();
    press(Qt::Key_Up, Qt::ControlModifier);
    const QString moved = hear();
    EXPECT_TRUE(moved.contains(QStringLiteral("between rounds"))) << moved.toStdString();
    EXPECT_NE(moved, placed);
}

void WholeJobByEar::make_it_smaller() {
    choose(QStringLiteral("Shape"), {QStringLiteral("Reshape")});
    ASSERT_NO_FATAL_FAILURE(go_to(QAccessible::SpinBox, QStringLiteral("Width")));
    EXPECT_TRUE(place().value.contains(QString::number(width_mm))) << place().value.toStdString();
    forget();
    press(Qt::Key_A, Qt::ControlModifier);
    const int wanted = width_mm - 12;
    type(QString::number(wanted));
    press(Qt::Key_Tab);
    const QString answer = hear(QStringLiteral("mm wide"));
    EXPECT_NEAR(width_in(answer), wanted, 4) << answer.toStdString();
    ASSERT_NO_FATAL_FAILURE(go_to(QAccessible::Button, QStringLiteral("Use these rounds")));
    press(Qt::Key_Space);
    come_back();
    const QString now = hear(QStringLiteral("mm wide"));
    EXPECT_NEAR(width_in(now), wanted, 4) << now.toStdString();
}

void WholeJobByEar::print_it() {
    const QString path = maker.folder.filePath(QStringLiteral("head.pdf"));
    choose(QStringLiteral("Pattern"), {QStringLiteral("Preview and print")});
    EXPECT_TRUE(hear().contains(QStringLiteral("pages")));
    ASSERT_NO_FATAL_FAILURE(go_to(QAccessible::Button, QStringLiteral("Save as PDF")));
    once([this] { return at(QAccessible::EditableText, QStringLiteral("File name")); },
         [this, path] {
             press(Qt::Key_A, Qt::ControlModifier);
             type(path);
             press(Qt::Key_Return);
         });
    press(Qt::Key_Space);
    QWidget* preview = maker.window->findChild<PatternPreview*>();
    preview->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(preview));
    forget();
    press(Qt::Key_F7);  // where no window manager gave the keyboard back, it was said to nobody
    const QString saved = hear();
    EXPECT_TRUE(saved.contains(QStringLiteral("The pattern is saved."))) << saved.toStdString();
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.read(4), "%PDF");
    press(Qt::Key_Escape);
    come_back();
}

void WholeJobByEar::work_along() {
    choose(QStringLiteral("Pattern"), {QStringLiteral("Work along")});
    ASSERT_NO_FATAL_FAILURE(go_to(QAccessible::Button, QStringLiteral("Round done (Page Down)")));
    press(Qt::Key_Home);
    const QString where = hear();
    EXPECT_TRUE(where.contains(QStringLiteral("round 1: 6 sc in magic ring, 6 stitches")))
        << where.toStdString();
    press(Qt::Key_PageDown);
    const QString done = hear();
    EXPECT_TRUE(done.startsWith(QStringLiteral("Round 1 done. Next, round 2: "))) << done.toStdString();
    press(Qt::Key_Right);
    const QString counted = hear();
    EXPECT_TRUE(counted.startsWith(QStringLiteral("1 of "))) << counted.toStdString();
    press(Qt::Key_PageUp);
    EXPECT_TRUE(hear().startsWith(QStringLiteral("Back to round")));
    press(Qt::Key_Escape);
}

TEST_F(WholeJobByEar, FromTheFirstRoundToWorkingAlong) {
    for (const auto step : {&WholeJobByEar::make_the_head, &WholeJobByEar::place_the_eyes,
                            &WholeJobByEar::make_it_smaller, &WholeJobByEar::print_it,
                            &WholeJobByEar::work_along})
        ASSERT_NO_FATAL_FAILURE((this->*step)());
    QStringList phantoms = listener.phantoms();
    phantoms.removeIf([](const QString& each) { return each.startsWith(QStringLiteral("QSidebar")); });  // Qt's
    EXPECT_EQ(phantoms.join(QStringLiteral("; ")).toStdString(), "");
}

}  // namespace
}  // namespace roundwright::app
