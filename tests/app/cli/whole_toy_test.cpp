#include <algorithm>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <vector>

#include <QFile>
#include <QImage>
#include <QTemporaryDir>

#include "core/document/json_document.h"
#include "tests/app/cli/run_program.h"

namespace roundwright {
namespace {

using namespace test;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

/// A gull of our own: a body, a pair of wings, and a beak that nothing holds.
class WholeToyOnTheCommandLine : public testing::Test {
  protected:
    [[nodiscard]] QString path(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }

    static Piece worked(const char* name, const std::vector<int>& counts, End end) {
        Piece piece;
        piece.name = name;
        piece.end = end;
        for (const int count : counts) piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
        return piece;
    }

    static Toy gull() {
        Toy toy;
        toy.title = "Gull";
        toy.gauge = GivenGauge{{5, 5, 0, 0}};
        toy.pieces.push_back(
            worked("Body", {6, 12, 18, 24, 30, 30, 30, 30, 30, 30, 24, 18, 12, 6}, End::drawn_closed));
        toy.pieces.push_back(worked("Wing", {6, 12, 12, 12}, End::left_open));
        toy.pieces[1].make = 2;
        toy.joins = {{.piece = {toy.pieces.id(1), 0},
                      .onto = {toy.pieces.id(0), 0},
                      .pair = true,
                      .at = {.round = 6, .stitches_right = 8}}};
        return toy;
    }

    QString file(const Toy& toy) const {
        std::ofstream(path("gull.roundwright").toStdString(), std::ios::binary) << write_document(toy);
        return path("gull.roundwright");
    }

    QByteArray written(const QStringList& command, const char* name) const {
        const ProgramRun run = run_program(command + QStringList{"-o", path(name)});
        EXPECT_EQ(run.exit_code, 0) << run.err;
        QFile read(path(name));
        EXPECT_TRUE(read.open(QIODevice::ReadOnly));
        return read.readAll();
    }

    QTemporaryDir folder_;
};

TEST_F(WholeToyOnTheCommandLine, ShapeTellsItsSizeWeightAndStanding) {
    const ProgramRun run = run_program({"shape", "--json", file(gull())});
    EXPECT_EQ(run.exit_code, 0) << run.err;
    const json all = json::parse(run.out);
    const json& toy = all.at("toy");
    const double body = all.at("pieces").at(0).at("width_mm");
    const auto number = [](const json& value) { return value.get<double>(); };
    EXPECT_GT(number(toy.at("width_mm")), body + 10);
    EXPECT_NEAR(number(toy.at("depth_mm")), body, 1);
    EXPECT_LE(number(toy.at("width_range_mm").at(0)), number(toy.at("width_mm")));
    EXPECT_LT(number(toy.at("mass_range_g").at(0)), number(toy.at("mass_range_g").at(1)));
    EXPECT_EQ(toy.at("stance").get<std::string>(), "standing");
    EXPECT_TRUE(toy.at("stands").get<bool>());
    EXPECT_EQ(toy.at("copies").size(), 3u);
    const json& wing = toy.at("copies").at(1);
    EXPECT_EQ(wing.at("piece").get<std::string>(), "Wing");
    EXPECT_EQ(wing.at("onto").at("piece").get<std::string>(), "Body");
    EXPECT_EQ(wing.at("seam").at("stitches").get<int>(), 12);
    EXPECT_NEAR(wing.at("seam").at("stretch").get<double>(), 0, 0.01);
    EXPECT_TRUE(toy.at("problems").empty());
    EXPECT_TRUE(toy.at("overlaps").empty());
    const ProgramRun words = run_program({"shape", file(gull())});
    EXPECT_THAT(words.out, HasSubstr("Sewn together: "));
    EXPECT_THAT(words.out, HasSubstr("mm deep"));
}

TEST_F(WholeToyOnTheCommandLine, AToyOfLoosePiecesHasNoneOfThis) {
    Toy toy = gull();
    toy.joins.clear();
    EXPECT_FALSE(json::parse(run_program({"shape", "--json", file(toy)}).out).contains("toy"));
    EXPECT_THAT(run_program({"shape", file(toy)}).out, Not(HasSubstr("Sewn together")));
}

TEST_F(WholeToyOnTheCommandLine, AJoinThatLeadsNowhereIsNamed) {
    Toy toy = gull();
    toy.joins[0].at.round = 300;
    const json all = json::parse(run_program({"shape", "--json", file(toy)}).out);
    ASSERT_FALSE(all.at("toy").at("problems").empty());
    EXPECT_EQ(all.at("toy").at("problems").at(0).at("fault").get<std::string>(), "no_such_place");
}

TEST_F(WholeToyOnTheCommandLine, AMeshHasEveryCopyWhereItIsSewn) {
    const QString gull_file = file(gull());
    const QByteArray whole = written({"mesh", gull_file, "--smooth"}, "whole.obj");
    for (const char* name : {"o Body", "o Wing_1", "o Wing_2"}) EXPECT_TRUE(whole.contains(name)) << name;
    const QByteArray apart = written({"mesh", gull_file, "--smooth", "--apart"}, "apart.obj");
    EXPECT_TRUE(apart.contains("o Wing"));
    EXPECT_FALSE(apart.contains("o Wing_2"));
    const QByteArray one = written({"mesh", gull_file, "--smooth", "--piece", "Wing"}, "one.obj");
    EXPECT_FALSE(one.contains("o Body"));
}

TEST_F(WholeToyOnTheCommandLine, APictureShowsTheToyOrAPieceOfIt) {
    const QString gull_file = file(gull());
    const QStringList small{"image", gull_file, "--view", "front", "--size", "160x160"};
    const QImage whole = QImage::fromData(written(small, "whole.png"));
    const QImage body = QImage::fromData(written(small + QStringList{"--piece", "Body"}, "body.png"));
    const QImage apart = QImage::fromData(written(small + QStringList{"--apart"}, "apart.png"));
    EXPECT_EQ(apart, body);
    // With its wings spread it is wider than tall, the body alone about as tall as wide.
    const auto drawn_columns = [](const QImage& image) {
        int columns = 0;
        for (int x = 0; x < image.width(); ++x)
            for (int y = 0; y < image.height(); ++y)
                if (qAlpha(image.pixel(x, y)) > 0) {
                    ++columns;
                    break;
                }
        return columns;
    };
    const auto drawn_rows = [&](const QImage& image) {
        return drawn_columns(image.transformed(QTransform().rotate(90)));
    };
    EXPECT_GT(drawn_columns(whole), 1.3 * drawn_rows(whole));
    EXPECT_LT(drawn_columns(body), 1.2 * drawn_rows(body));
}

TEST_F(WholeToyOnTheCommandLine, TheListingPictureIsSquareOnASoftShadow) {
    const QImage listing = QImage::fromData(
        written({"image", file(gull()), "--listing", "--view", "three-quarter"}, "listing.png"));
    EXPECT_EQ(listing.size(), QSize(2000, 2000));
    // Transparent at its corners, and beside the toy a shadow that is neither there nor not.
    EXPECT_EQ(qAlpha(listing.pixel(0, 0)), 0);
    int soft = 0;
    for (int y = 0; y < 2000; y += 4)
        for (int x = 0; x < 2000; x += 4) {
            const QRgb pixel = listing.pixel(x, y);
            if (qAlpha(pixel) > 10 && qAlpha(pixel) < 150 && qGray(pixel) < 10) ++soft;
        }
    EXPECT_GT(soft, 1000);
    const QImage plain = QImage::fromData(written(
        {"image", file(gull()), "--listing", "--size", "200x200", "--background", "#ffffff"}, "plain.png"));
    EXPECT_EQ(plain.size(), QSize(200, 200));
    EXPECT_EQ(plain.pixel(0, 0), qRgb(255, 255, 255));
}

/// Parts of a picture that are drawn and do not touch, by flooding.
int parts_drawn(QImage image) {
    int parts = 0;
    const auto drawn = [&](QPoint at) { return image.valid(at) && qAlpha(image.pixel(at)) > 40; };
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) {
            if (!drawn({x, y})) continue;
            ++parts;
            std::vector<QPoint> open{{x, y}};
            while (!open.empty()) {
                const QPoint at = open.back();
                open.pop_back();
                if (!drawn(at)) continue;
                image.setPixel(at, 0);
                for (const QPoint step : {QPoint(1, 0), QPoint(-1, 0), QPoint(0, 1), QPoint(0, -1)})
                    open.push_back(at + step);
            }
        }
    return parts;
}

// From every side the three toys are in one piece: nothing floats beside its seam.
TEST_F(WholeToyOnTheCommandLine, TheSamplesAreDrawnWholeFromFourSides) {
    for (const char* name : {"seal-pup.roundwright", "puffin.roundwright", "starfish.roundwright"})
        for (const char* side : {"front", "side", "back", "three-quarter"}) {
            const QImage drawn = QImage::fromData(written(
                {"image", "--force", sample(name), "--view", side, "--size", "240x240"}, "sample.png"));
            EXPECT_EQ(parts_drawn(drawn.convertToFormat(QImage::Format_ARGB32)), 1) << name << " " << side;
        }
}

}  // namespace
}  // namespace roundwright
