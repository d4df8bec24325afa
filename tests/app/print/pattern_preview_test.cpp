#include "app/print/pattern_preview.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QFile>
#include <QLabel>

#include "app/kit/read_out.h"
#include "app/print/pages_view.h"
#include "app/print/pattern_files.h"
#include "app/print/thumbnails_model.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Toy small_toy() {
    Toy toy = toy_of({6, 12, 18, 18, 12, 6});
    toy.pieces[0].end = End::drawn_closed;
    return toy;
}

TEST(PatternPreview, ShowsThePagesAndFollowsEdits) {
    DocumentSession session;
    session.start(small_toy());
    PatternPreview preview(session);
    preview.show();
    ASSERT_TRUE(wait_until([&] { return preview.pages_view().page_count() > 1; }));
    const QImage before = preview.pages_view().grab().toImage();
    session.edit(QStringLiteral("Title"), [](Toy toy) {
        toy.title = "A seal pup with quite another name";
        return toy;
    });
    EXPECT_TRUE(wait_until([&] { return preview.pages_view().grab().toImage() != before; }));
}

TEST(PatternPreview, SaysWhatAStrangerWouldStillAsk) {
    DocumentSession session;
    Toy toy = small_toy();
    toy.gauge = std::monostate{};
    toy.pieces[0].make = 2;
    session.start(toy);
    PatternPreview preview(session);
    preview.show();
    const auto* label = [&]() -> QLabel* {
        for (auto* found : preview.findChildren<ReadOut*>())
            if (found->name() == QStringLiteral("What a reader might still ask")) return found;
        return nullptr;
    }();
    ASSERT_NE(label, nullptr);
    EXPECT_TRUE(label->text().contains(QStringLiteral("your gauge"))) << label->text().toStdString();
    EXPECT_TRUE(label->text().contains(QStringLiteral("how the parts go together")));
    session.edit(QStringLiteral("Words"), [](Toy edited) {
        edited.text.assembly = "Sew them together.";
        return edited;
    });
    EXPECT_FALSE(label->text().contains(QStringLiteral("how the parts go together")));
}

TEST(PatternPreview, GoesToAPageByKeys) {
    DocumentSession session;
    session.start(small_toy());
    PatternPreview preview(session);
    preview.show();
    preview.activateWindow();
    ASSERT_TRUE(wait_until([&] { return preview.pages_view().page_count() > 1; }));
    QTest::keyClick(&preview, Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_EQ(preview.pages_view().current_page(), 1);
    QTest::keyClick(&preview, Qt::Key_PageUp, Qt::ControlModifier);
    EXPECT_EQ(preview.pages_view().current_page(), 0);
}

TEST(PatternPreview, ThumbnailsAreAModel) {
    ThumbnailsModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    render::PatternOptions options;
    const auto many = render::PatternPages::compose(small_toy(), options);
    options.contents.silhouette = options.contents.cover = options.contents.materials = false;
    const auto few = render::PatternPages::compose(small_toy(), options);
    ASSERT_TRUE(many && few);
    ASSERT_GT(many->count(), few->count());
    model.set_pages(*few, 1);
    model.set_pages(*many, 1);
    EXPECT_EQ(model.rowCount(), many->count());
    EXPECT_FALSE(model.data(model.index(0), Qt::DecorationRole).value<QPixmap>().isNull());
    model.set_pages(*few, 1);
    EXPECT_EQ(model.rowCount(), few->count());
}

TEST(PatternPreview, WritesEveryForm) {
    QTemporaryDir folder;
    const Toy toy = small_toy();
    const std::pair<PatternForm, QByteArray> forms[] = {{PatternForm::pdf, "%PDF"},
                                                        {PatternForm::plain_text, "Seal pup"},
                                                        {PatternForm::markdown, "Seal pup"},
                                                        {PatternForm::rounds_table, "piece"}};
    for (const auto& [form, words] : forms) {
        const QString path = folder.filePath(QString::number(static_cast<int>(form)));
        QString message;
        ASSERT_TRUE(write_pattern(form, toy, {}, path, message)) << message.toStdString();
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_TRUE(file.readAll().contains(words)) << words.toStdString();
    }
}

TEST(PatternPreview, SaysWhyAFileCouldNotBeWritten) {
    QString message;
    for (const PatternForm form : {PatternForm::pdf, PatternForm::plain_text, PatternForm::rounds_table}) {
        message.clear();
        EXPECT_FALSE(
            write_pattern(form, small_toy(), {}, QStringLiteral("/no/such/folder/pattern"), message));
        EXPECT_FALSE(message.isEmpty());
    }
}

}  // namespace
}  // namespace roundwright::app
