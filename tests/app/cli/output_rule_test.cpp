#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <sstream>
#include <sys/stat.h>
#include <thread>

#include <QDir>
#include <QTemporaryDir>

#include "core/document/json_document.h"
#include "tests/app/cli/run_program.h"
#include "tests/app/storage/small_disk.h"

namespace roundwright {
namespace {

using namespace test;
using testing::HasSubstr;
using testing::Not;

std::string bytes_of(const QString& path) {
    std::ifstream file(path.toStdString(), std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

/// What a maker has: a toy, its pattern in words, and files that must not be lost.
class OutputRule : public testing::Test {
  protected:
    OutputRule() {
        Toy toy;
        toy.title = "Limpet";
        toy.gauge = GivenGauge{{5, 5, 0, 0}};
        Piece& piece = toy.pieces.emplace_back();
        piece.name = "Shell";
        piece.end = End::drawn_closed;
        for (const int count : {6, 12, 18, 24, 30, 30, 30, 24, 18, 12, 6})
            piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
        put("limpet.roundwright", write_document(toy));
        put("limpet.txt", "Rnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\n");
    }

    [[nodiscard]] QString path(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }

    void put(const char* name, const std::string& bytes) const {
        std::ofstream(path(name).toStdString(), std::ios::binary) << bytes;
    }

    [[nodiscard]] std::filesystem::path at(const char* name) const { return path(name).toStdString(); }

    /// Every way to name a file that is read.
    [[nodiscard]] std::vector<QString> spellings_of(const char* name) const {
        const QString beside = QDir(folder_.path()).dirName();
        std::filesystem::create_symlink(at(name), at((std::string("soft-") + name).c_str()));
        std::filesystem::create_hard_link(at(name), at((std::string("hard-") + name).c_str()));
        return {path(name), folder_.path() + QStringLiteral("/../") + beside + QStringLiteral("/./") + name,
                folder_.path() + QStringLiteral("//") + name, path((std::string("soft-") + name).c_str()),
                path((std::string("hard-") + name).c_str())};
    }

    QTemporaryDir folder_;
};

/// The commands that make something of a toy, and the ending of what they make.
struct Maker {
    QStringList words;
    const char* ending;
};

std::vector<Maker> makers() {
    return {{{"pdf"}, "pdf"},
            {{"write"}, "txt"},
            {{"write", "--form", "pattern"}, "txt"},
            {{"write", "--form", "markdown"}, "md"},
            {{"write", "--form", "csv"}, "csv"},
            {{"image", "--size", "40x40"}, "png"},
            {{"image", "--size", "40x40"}, "svg"},
            {{"mesh", "--triangles", "500"}, "obj"},
            {{"mesh", "--triangles", "500"}, "stl"},
            {{"mesh", "--triangles", "500"}, "glb"},
            {{"resize", "--scale", "1.2"}, "roundwright"},
            {{"gauge", "--width", "60mm"}, "roundwright"}};
}

TEST_F(OutputRule, NothingIsWrittenOverWhatWasRead) {
    // A toy may have any name: what is read as a toy here ends in what the command writes.
    for (const Maker& maker : makers()) {
        if (maker.ending == std::string("roundwright")) continue;
        const std::string name = std::string("toy.") + maker.ending;
        put(name.c_str(), bytes_of(path("limpet.roundwright")));
        const std::string before = bytes_of(path(name.c_str()));
        for (const QString& spelling : spellings_of(name.c_str())) {
            for (const QStringList& force : {QStringList{}, QStringList{"--force"}}) {
                const ProgramRun run =
                    run_program(maker.words + QStringList{path(name.c_str()), "-o", spelling} + force);
                EXPECT_EQ(run.exit_code, 2) << maker.words[0].toStdString() << " " << spelling.toStdString();
                EXPECT_THAT(run.err, HasSubstr("is the file being read"));
                EXPECT_EQ(bytes_of(path(name.c_str())), before) << spelling.toStdString();
            }
        }
        for (const char* kind : {"", "soft-", "hard-"}) std::filesystem::remove(at((kind + name).c_str()));
    }
}

TEST_F(OutputRule, APatternIsNotWrittenOverByTheToyReadFromIt) {
    put("pattern.roundwright", bytes_of(path("limpet.txt")));
    const std::string before = bytes_of(path("limpet.txt"));
    for (const QString& spelling : spellings_of("pattern.roundwright")) {
        const ProgramRun run = run_program({"read", path("pattern.roundwright"), "-o", spelling, "--force"});
        EXPECT_EQ(run.exit_code, 2) << spelling.toStdString();
        EXPECT_EQ(bytes_of(path("pattern.roundwright")), before) << spelling.toStdString();
    }
    const ProgramRun piped =
        run_program_into(path("said"), {"read", "-", "-o", path("pattern.roundwright"), "--force"},
                         path("pattern.roundwright"));
    EXPECT_EQ(piped.exit_code, 2);
    EXPECT_EQ(bytes_of(path("pattern.roundwright")), before);
}

TEST_F(OutputRule, APdfIsNotWrittenBesideAToyOfItsName) {
    put("limpet.pdf", bytes_of(path("limpet.roundwright")));
    const ProgramRun run = run_program({"pdf", path("limpet.pdf"), "--force"});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_EQ(bytes_of(path("limpet.pdf")), bytes_of(path("limpet.roundwright")));
}

TEST_F(OutputRule, ResizeAndGaugeMayWriteBack) {
    for (const QStringList& words :
         {QStringList{"resize", "--scale", "1.2"}, QStringList{"gauge", "--width", "60mm"}}) {
        const std::string before = bytes_of(path("limpet.roundwright"));
        const ProgramRun run =
            run_program(words + QStringList{path("limpet.roundwright"), "-o", path("limpet.roundwright")});
        EXPECT_EQ(run.exit_code, 0) << run.err;
        EXPECT_NE(bytes_of(path("limpet.roundwright")), before);
        EXPECT_EQ(run_program({"check", path("limpet.roundwright")}).exit_code, 0);
    }
}

TEST_F(OutputRule, AnotherFileIsWrittenOverByForceOnly) {
    std::vector<Maker> all = makers();
    all.push_back({{"read"}, "roundwright"});
    for (const Maker& maker : all) {
        const std::string name = std::string("precious.") + maker.ending;
        put(name.c_str(), "precious");
        const QString read =
            path(maker.words[0] == QLatin1String("read") ? "limpet.txt" : "limpet.roundwright");
        const QStringList words = maker.words + QStringList{read, "-o", path(name.c_str())};
        const ProgramRun refused = run_program(words);
        EXPECT_EQ(refused.exit_code, 2) << maker.words[0].toStdString();
        EXPECT_THAT(refused.err, HasSubstr("exists already. Name another with -o, or use --force."));
        EXPECT_EQ(bytes_of(path(name.c_str())), "precious") << maker.words[0].toStdString();
        const ProgramRun forced = run_program(words + QStringList{"--force"});
        EXPECT_EQ(forced.exit_code, 0) << maker.words[0].toStdString() << forced.err;
        EXPECT_NE(bytes_of(path(name.c_str())), "precious") << maker.words[0].toStdString();
    }
}

TEST_F(OutputRule, AnOutputOfTheWrongKindIsRefused) {
    std::vector<Maker> all = makers();
    all.push_back({{"read"}, "roundwright"});
    for (const Maker& maker : all) {
        const QString read =
            path(maker.words[0] == QLatin1String("read") ? "limpet.txt" : "limpet.roundwright");
        for (const char* wrong : {"limpet.doc", "limpet", "limpet.roundwright.bak"}) {
            const ProgramRun run = run_program(maker.words + QStringList{read, "-o", path(wrong), "--force"});
            EXPECT_EQ(run.exit_code, 2) << maker.words[0].toStdString() << " " << wrong;
            EXPECT_THAT(run.err, HasSubstr("does not end in .")) << maker.words[0].toStdString();
            EXPECT_FALSE(std::filesystem::exists(at(wrong)));
        }
        const ProgramRun folder =
            run_program(maker.words + QStringList{read, "-o", folder_.path(), "--force"});
        EXPECT_EQ(folder.exit_code, 2);
        EXPECT_THAT(folder.err, HasSubstr("is a folder"));
    }
    const std::string before = bytes_of(path("limpet.roundwright"));
    EXPECT_EQ(run_program({"pdf", path("limpet.txt"), "-o", path("limpet.roundwright"), "--force"}).exit_code,
              2);
    EXPECT_EQ(bytes_of(path("limpet.roundwright")), before);
}

TEST_F(OutputRule, AFullDeviceIsNoSuccess) {
    const QString full = QStringLiteral("/dev/full");
    if (!std::filesystem::is_character_file("/dev/full")) GTEST_SKIP();
    const std::vector<QStringList> talking{{"--help"},
                                           {"help"},
                                           {"help", "pdf"},
                                           {"--version"},
                                           {"check", path("limpet.roundwright")},
                                           {"check", "--json", path("limpet.roundwright")},
                                           {"shape", "--json", "--stitches", path("limpet.roundwright")},
                                           {"write", path("limpet.roundwright")},
                                           {"read", path("limpet.txt")},
                                           {"resize", "--scale", "1.2", path("limpet.roundwright")},
                                           {"gauge", "--width", "60mm", path("limpet.roundwright")}};
    for (const QStringList& words : talking) {
        const ProgramRun run = run_program_into(full, words);
        EXPECT_EQ(run.exit_code, 2) << words.join(u' ').toStdString();
        EXPECT_THAT(run.err, HasSubstr("The answer could not be written: The disk is full."));
    }
    std::vector<Maker> all = makers();
    all.push_back({{"read"}, "roundwright"});
    for (const Maker& maker : all) {
        const QString read =
            path(maker.words[0] == QLatin1String("read") ? "limpet.txt" : "limpet.roundwright");
        const ProgramRun run = run_program(maker.words + QStringList{read, "-o", full});
        EXPECT_EQ(run.exit_code, 2) << maker.words[0].toStdString();
        EXPECT_THAT(run.err, HasSubstr("/dev/full: The disk is full.")) << maker.words[0].toStdString();
        ASSERT_TRUE(std::filesystem::is_character_file("/dev/full"));
    }
}

TEST_F(OutputRule, AFileThatCannotBeMadeIsNamedWithTheReason) {
    const ProgramRun run = run_program({"pdf", path("limpet.roundwright"), "-o", path("none/limpet.pdf")});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_THAT(run.err, HasSubstr("none/limpet.pdf: The folder is gone."));
}

TEST_F(OutputRule, OtherNamesOfAFileThatIsWrittenOverAreSaid) {
    put("words.txt", "earlier words");
    std::filesystem::create_hard_link(at("words.txt"), at("other.txt"));
    const QStringList words{"write", path("limpet.roundwright"), "-o", path("words.txt"), "--force"};
    const ProgramRun first = run_program(words);
    EXPECT_EQ(first.exit_code, 0);
    EXPECT_THAT(first.err, HasSubstr("words.txt: It had other names on this disk (hard links)."));
    EXPECT_EQ(bytes_of(path("other.txt")), "earlier words");
    EXPECT_THAT(run_program(words).err, Not(HasSubstr("hard links")));
}

TEST_F(OutputRule, AFullDiskKeepsWhatIsThereAndSaysSo) {
    const app::SmallDisk disk;
    if (!disk.is_there()) GTEST_SKIP() << "no disk can be mounted here";
    const QString there = disk.path(QStringLiteral("limpet.pdf"));
    std::ofstream(there.toStdString()) << "earlier pages";
    disk.fill();
    const ProgramRun run = run_program({"pdf", path("limpet.roundwright"), "-o", there, "--force"});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_THAT(run.err, HasSubstr("limpet.pdf: The disk is full. Make some room, or save to another disk."));
    EXPECT_EQ(bytes_of(there), "earlier pages");
}

// A pipe has no end until its writer has gone: it is waited for.
TEST_F(OutputRule, AToyMayComeFromAPipe) {
    const QString pipe = path("pipe");
    ASSERT_EQ(::mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
    std::thread writer([&] { put("pipe", bytes_of(path("limpet.roundwright"))); });
    const ProgramRun run = run_program({"check", pipe});
    writer.join();
    EXPECT_THAT(run.out, HasSubstr("Limpet"));
    EXPECT_EQ(run.err, "");
}

}  // namespace
}  // namespace roundwright
