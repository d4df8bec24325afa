#include "app/toy/toy_details.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Toy told_toy() {
    Toy toy = toy_of({6, 12, 18, 12, 6});
    toy.designer = "Lantern Quay (invented)";
    toy.notes = "Notes.\n\nMore.";
    toy.private_notes = "Try a smaller nose.";
    toy.text = {Level::intermediate, "Hello.", "Needle\nPins", "Sew.\nTurn.", "Steam.", "Share it."};
    return toy;
}

/// The field whose label holds some words.
template <class Field>
Field* field(const QDialog& dialog, const QString& words) {
    for (auto* label : dialog.findChildren<QLabel*>()) {
        if (label->text().remove(u'&') == words) return qobject_cast<Field*>(label->buddy());
    }
    return nullptr;
}

TEST(ToyDetails, WhatIsNotChangedStays) {
    const Toy toy = told_toy();
    EXPECT_EQ(ToyDetailsDialog(toy).applied_to(toy), toy);
    const Toy untold = toy_of({6, 12});
    EXPECT_EQ(ToyDetailsDialog(untold).applied_to(untold), untold);
}

TEST(ToyDetails, EveryWordCanBeSaid) {
    const Toy wanted = told_toy();
    const Toy untold = toy_of({6, 12, 18, 12, 6});
    ToyDetailsDialog dialog(untold);
    field<QLineEdit>(dialog, QStringLiteral("Designer"))->setText(QStringLiteral("Lantern Quay (invented)"));
    field<QComboBox>(dialog, QStringLiteral("Level"))->setCurrentText(QStringLiteral("Intermediate"));
    for (const auto& [name, text] : {std::pair{"Printed notes", wanted.notes},
                                     {"Notes to yourself", wanted.private_notes},
                                     {"Introduction", wanted.text.introduction},
                                     {"Notions", wanted.text.notions},
                                     {"Assembly", wanted.text.assembly},
                                     {"Finishing", wanted.text.finishing},
                                     {"Copyright", wanted.text.copyright}}) {
        auto* box = field<QPlainTextEdit>(dialog, QLatin1String(name));
        ASSERT_NE(box, nullptr) << name;
        box->setPlainText(QString::fromStdString(text));
    }
    EXPECT_EQ(dialog.applied_to(untold), wanted);
}

TEST(ToyDetails, IsOneStepThatCanBeTakenBack) {
    DocumentSession session;
    const Toy before = toy_of({6, 12, 18, 12, 6});
    session.start(before);
    QTimer::singleShot(0, [] {
        auto* dialog = qobject_cast<ToyDetailsDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        field<QPlainTextEdit>(*dialog, QStringLiteral("Assembly"))->setPlainText(QStringLiteral("Sew."));
        field<QLineEdit>(*dialog, QStringLiteral("Title"))->setText(QStringLiteral("Pup"));
        dialog->accept();
    });
    ask_toy_details(session, nullptr);
    EXPECT_EQ(session.toy().text.assembly, "Sew.");
    EXPECT_EQ(session.toy().title, "Pup");
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), before);
}

TEST(ToyDetails, CancelChangesNothing) {
    DocumentSession session;
    session.start(told_toy());
    QTimer::singleShot(0, [] {
        auto* dialog = qobject_cast<ToyDetailsDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        field<QLineEdit>(*dialog, QStringLiteral("Title"))->setText(QStringLiteral("Pup"));
        dialog->reject();
    });
    ask_toy_details(session, nullptr);
    EXPECT_EQ(session.toy(), told_toy());
    EXPECT_FALSE(session.undo_stack().canUndo());
}

/// A head with a pair of ears.
Toy joined_toy() {
    Toy toy = toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6});
    toy.pieces[0].name = "Head";
    toy.pieces[0].end = End::drawn_closed;
    Piece ear = std::as_const(toy).pieces[0];
    ear.name = "Ear";
    ear.rounds.resize(2);
    ear.end = End::left_open;
    ear.make = 2;
    toy.pieces.push_back(ear);
    toy.joins = {{.piece = {toy.pieces.id(1), 0},
                  .onto = {toy.pieces.id(0), 0},
                  .pair = true,
                  .at = {.round = 3, .stitches_right = 4}}};
    return toy;
}

TEST(ToyDetails, StepsOfTheJoinsCanBeWrittenOutAndChanged) {
    const Toy toy = joined_toy();
    ToyDetailsDialog dialog(toy);
    auto* box = field<QPlainTextEdit>(dialog, QStringLiteral("Assembly"));
    ASSERT_NE(box, nullptr);
    EXPECT_TRUE(box->toPlainText().isEmpty());
    QPushButton* write_out = nullptr;
    for (auto* button : dialog.findChildren<QPushButton*>())
        if (button->text().remove(u'&') == QStringLiteral("Write the steps out")) write_out = button;
    ASSERT_NE(write_out, nullptr);
    write_out->click();
    EXPECT_TRUE(box->toPlainText().startsWith(QStringLiteral("Ear (2): Pin the open edges to Head")))
        << box->toPlainText().toStdString();
    EXPECT_NE(dialog.applied_to(toy).text.assembly, "");
    box->undo();
    EXPECT_TRUE(box->toPlainText().isEmpty());
}

TEST(ToyDetails, JoinsThatChangedUnderTheMakersWordsAreNamed) {
    Toy toy = joined_toy();
    toy.text.assembly = "Sew on the ears between rounds 4 and 5.";
    toy.text.assembly_then = toy.joins;
    const auto changes = [](const ToyDetailsDialog& dialog) {
        for (auto* label : dialog.findChildren<QLabel*>())
            if (!label->isHidden() && label->text().contains(QStringLiteral("your assembly steps")))
                return label->text();
        return QString();
    };
    EXPECT_TRUE(changes(ToyDetailsDialog(toy)).isEmpty());
    toy.joins[0].at.round = 5;
    EXPECT_EQ(
        changes(ToyDetailsDialog(toy)).toStdString(),
        "Ear: It was on Head after round 4 when your assembly steps were written; now it is after round 6.");
}

TEST(ToyDetails, TheJoinsThatWordsWereWrittenForAreKeptWithThem) {
    DocumentSession session;
    const Toy toy = joined_toy();
    session.start(toy);
    session.edit(QStringLiteral("words"), [](Toy said) {
        said.text.assembly = "Sew on the ears.";
        return said;
    });
    EXPECT_EQ(session.toy().text.assembly_then, toy.joins);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), toy);
}

}  // namespace
}  // namespace roundwright::app
