#include "app/versions/versions_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <memory>

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTableView>
#include <QTemporaryDir>

#include "app/versions/then_and_now.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class VersionsDialogTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.preferences().set_units(LengthUnit::millimetres);
        keeper = std::make_unique<VersionKeeper>(session, VersionStore(state_.path()));
    }
    [[nodiscard]] QString file() const { return toys_.filePath(QStringLiteral("pup.roundwright")); }
    void save(std::initializer_list<int> counts) {
        if (session.path().isEmpty()) session.start(toy_of(counts));
        session.edit(QStringLiteral("Other rounds"), [&](Toy toy) {
            toy.pieces[0].rounds = piece_of(counts).rounds;
            return toy;
        });
        ASSERT_FALSE(session.save(file()));
        keeper->settle();
    }
    void open() {
        dialog = std::make_unique<VersionsDialog>(session, *keeper);
        tester = std::make_unique<QAbstractItemModelTester>(&dialog->model());
        dialog->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
        settle();
    }
    void settle() {
        ASSERT_TRUE(wait_until([&] { return !dialog->busy(); }));
        QCoreApplication::processEvents();
    }
    [[nodiscard]] QTableView* list() const { return dialog->findChild<QTableView*>(); }
    [[nodiscard]] QPushButton* button(const QString& words) const {
        for (auto* found : dialog->findChildren<QPushButton*>())
            if (found->text().remove(u'&') == words) return found;
        return nullptr;
    }
    [[nodiscard]] QString cell(int row, VersionColumn column) const {
        return dialog->model().index(row, static_cast<int>(column)).data().toString();
    }
    void key(Qt::Key which, Qt::KeyboardModifiers modifiers = {}) {
        QWidget* here = dialog->focusWidget() != nullptr ? dialog->focusWidget() : dialog.get();
        QTest::keyClick(here, which, modifiers);
        settle();
    }
    QTemporaryDir toys_;
    QTemporaryDir state_;
    DocumentSession session;
    std::unique_ptr<VersionKeeper> keeper;
    std::unique_ptr<VersionsDialog> dialog;
    std::unique_ptr<QAbstractItemModelTester> tester;
};

TEST_F(VersionsDialogTest, AToyWithoutAFileSaysSo) {
    session.start(toy_of({6, 12}));
    open();
    EXPECT_THAT(dialog->empty_words().toStdString(), HasSubstr("has no file yet"));
    EXPECT_FALSE(button(QStringLiteral("Take it back"))->isVisible());
    key(Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(VersionsDialogTest, SaysWhenHowLargeAndWhatHasChanged) {
    save({6, 12, 18, 24, 36, 36, 36});
    save({6, 12, 18, 24, 30, 30, 30});
    open();
    ASSERT_EQ(dialog->model().rowCount(), 2);
    EXPECT_THAT(cell(1, VersionColumn::when).toStdString(), HasSubstr("today"));
    EXPECT_EQ(cell(1, VersionColumn::kind), QStringLiteral("saved"));
    EXPECT_EQ(cell(1, VersionColumn::pieces), QStringLiteral("1"));
    EXPECT_EQ(cell(1, VersionColumn::rounds), QStringLiteral("7"));
    EXPECT_EQ(cell(1, VersionColumn::stitches), QStringLiteral("168"));
    EXPECT_EQ(dialog->changes(), QStringLiteral("Nothing: the toy in the window is the same."));
    EXPECT_FALSE(button(QStringLiteral("Take it back"))->isEnabled());
    key(Qt::Key_Down);
    EXPECT_EQ(dialog->changes(), QStringLiteral("Head: rounds 5 to 7 differ (30 instead of 36)"));
    EXPECT_TRUE(button(QStringLiteral("Take it back"))->isEnabled());
}

TEST_F(VersionsDialogTest, TakenBackByKeysAloneInOneStep) {
    save({6, 12, 18});
    save({6, 12, 18, 24});
    open();
    EXPECT_TRUE(list()->hasFocus());
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_THAT(counts_of(*session.piece()), ElementsAre(6, 12, 18));
    EXPECT_TRUE(session.modified());
    EXPECT_THAT(session.undo_stack().undoText().toStdString(), HasSubstr("Take back the version of today"));
    session.undo_stack().undo();
    EXPECT_THAT(counts_of(*session.piece()), ElementsAre(6, 12, 18, 24));
    EXPECT_FALSE(session.modified());
}

TEST_F(VersionsDialogTest, PiecesCanBeLookedAtOneByOne) {
    save({6, 12, 18});
    session.edit(QStringLiteral("A second piece"), [](Toy toy) {
        toy.pieces.push_back(piece_of({6, 9, 9}, "Left ear"));
        return toy;
    });
    ASSERT_FALSE(session.save(file()));
    open();
    key(Qt::Key_Down);
    EXPECT_EQ(dialog->changes(), QStringLiteral("Left ear is new (3 rounds)"));
    auto* pieces = dialog->findChild<QComboBox*>();
    EXPECT_EQ(pieces->currentText(), QStringLiteral("Left ear (new since then)"));
    auto* tables = dialog->findChild<ThenAndNow*>()->findChild<QTableView*>();
    QAbstractItemModelTester rounds(tables->model());
    ASSERT_EQ(tables->model()->rowCount(), 3);
    EXPECT_EQ(tables->model()->index(0, 4).data().toString(), QStringLiteral("new"));
    pieces->setFocus();
    QTest::keyClick(pieces, Qt::Key_Up);
    settle();
    EXPECT_EQ(pieces->currentText(), QStringLiteral("Head"));
    EXPECT_EQ(tables->model()->index(0, 4).data().toString(), QStringLiteral("same"));
    EXPECT_EQ(dialog->findChild<ThenAndNow*>()->legend(), QStringLiteral("Filled: then. Dashed: now."));
}

TEST_F(VersionsDialogTest, RoundsStandBesideThemselves) {
    const auto rounds = rounds_then_and_now(piece_of({6, 12, 18, 24}), piece_of({6, 12, 15, 18, 27}));
    ASSERT_EQ(rounds.size(), 5u);
    EXPECT_TRUE(rounds[1].same);
    EXPECT_FALSE(rounds[2].then);
    EXPECT_EQ(rounds[2].stitches_now, 15);
    EXPECT_EQ(rounds[3].then, 2);
    EXPECT_EQ(rounds[3].now, 3);
    EXPECT_EQ(rounds[4].stitches_then, 24);
    EXPECT_EQ(rounds[4].stitches_now, 27);
}

TEST_F(VersionsDialogTest, OneThatCannotBeReadIsListedAsSuch) {
    save({6, 12});
    const QString kept = keeper->store().versions_of(file()).front().file;
    save({6, 12, 18});
    for (const QByteArray& damage : {QByteArray(), QByteArray("{\"pieces\": ["), QByteArray("\0\xff", 2)}) {
        QFile broken(kept);
        ASSERT_TRUE(broken.open(QIODevice::WriteOnly | QIODevice::Truncate));
        broken.write(damage);
        broken.close();
        open();
        key(Qt::Key_Down);
        EXPECT_EQ(cell(1, VersionColumn::kind), QStringLiteral("unreadable"));
        EXPECT_THAT(dialog->changes().toStdString(), HasSubstr("This version cannot be read. "));
        EXPECT_FALSE(button(QStringLiteral("Take it back"))->isEnabled());
        EXPECT_FALSE(button(QStringLiteral("Save a copy…"))->isEnabled());
        key(Qt::Key_Return);
        EXPECT_TRUE(dialog->isVisible()) << "Enter takes nothing back";
    }
}

TEST_F(VersionsDialogTest, OneOfANewerProgramIsNotTakenBack) {
    save({6, 12});
    QByteArray newer = QByteArray::fromStdString(write_document(toy_of({6, 12, 18})));
    const QByteArray version = "\"version\": " + QByteArray::number(document_version);
    ASSERT_TRUE(newer.contains(version));
    newer.replace(version, "\"version\": 99");
    keeper->keep(file(), newer, VersionKind::found);
    keeper->settle();
    open();
    EXPECT_THAT(dialog->changes().toStdString(), HasSubstr("A newer version of Roundwright wrote this."));
    EXPECT_FALSE(button(QStringLiteral("Take it back"))->isEnabled());
    EXPECT_TRUE(button(QStringLiteral("Save a copy…"))->isEnabled());
}

TEST_F(VersionsDialogTest, ForgetAsksFirst) {
    save({6, 12});
    open();
    QString asked;
    answer_next_dialog(QStringLiteral("Keep them"), &asked);
    button(QStringLiteral("Forget earlier versions…"))->click();
    EXPECT_THAT(asked.toStdString(), HasSubstr("Forget all earlier versions of this toy?"));
    EXPECT_EQ(keeper->store().versions_of(file()).size(), 1u);
    answer_next_dialog(QStringLiteral("Forget them"));
    button(QStringLiteral("Forget earlier versions…"))->click();
    EXPECT_TRUE(keeper->store().versions_of(file()).empty());
    EXPECT_THAT(dialog->empty_words().toStdString(), HasSubstr("are forgotten"));
    EXPECT_TRUE(QFile::exists(file()));
}

TEST_F(VersionsDialogTest, OfAReadOnlyToyACopyCanBeSavedButNothingTakenBack) {
    save({6, 12});
    save({6, 12, 18});
    session.happened(FileEvent::opened_elsewhere);
    ASSERT_TRUE(session.read_only());
    open();
    key(Qt::Key_Down);
    EXPECT_FALSE(button(QStringLiteral("Take it back"))->isEnabled());
    EXPECT_TRUE(button(QStringLiteral("Save a copy…"))->isEnabled());
}

/// Types a name into the next dialog that asks for a file.
void name_next_file(const QString& name) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, name] {
        auto* asking = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
        if (asking == nullptr) return;
        timer->stop();
        timer->deleteLater();
        asking->findChild<QLineEdit*>()->setText(name);
        QTimer::singleShot(0, asking->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Save),
                           &QPushButton::click);
    });
    timer->start(20);
}

TEST_F(VersionsDialogTest, ACopyIsSavedByteForByte) {
    save({6, 12});
    const QByteArray then = keeper->store().read(keeper->store().versions_of(file()).front()).bytes;
    save({6, 12, 18});
    open();
    key(Qt::Key_Down);
    name_next_file(QStringLiteral("copy"));
    button(QStringLiteral("Save a copy…"))->click();
    QFile copy(toys_.filePath(QStringLiteral("copy.roundwright")));
    ASSERT_TRUE(copy.open(QIODevice::ReadOnly));
    EXPECT_EQ(copy.readAll(), then);
    EXPECT_FALSE(session.modified());
    EXPECT_EQ(session.path(), file());
}

TEST_F(VersionsDialogTest, FitsASmallScreen) {
    save({6, 12});
    open();
    EXPECT_LE(dialog->minimumSizeHint().width(), 980);
    EXPECT_LE(dialog->minimumSizeHint().height(), 600);
}

TEST_F(VersionsDialogTest, ATitleWithMarkupIsText) {
    save({6, 12});
    session.edit(QStringLiteral("Rename"), [](Toy toy) {
        toy.pieces[0].name = "<b>Head</b>";
        return toy;
    });
    open();
    EXPECT_EQ(dialog->changes(), QStringLiteral("<b>Head</b> was called Head"));
}

}  // namespace
}  // namespace roundwright::app
