// Names that try to be commands of a terminal, on every command's standard output and error, and in what it
// writes.

#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <sstream>

#include <QTemporaryDir>

#include "core/document/json_document.h"
#include "render/wording/unprintable.h"
#include "tests/app/cli/run_program.h"

namespace roundwright {
namespace {

using namespace test;

const std::string hostile =
    "\x1B]8;;http://a\x07"
    "Fin\x1B[31m\x7F\xC2\x9B"
    "2J\xE2\x80\xAE"
    "nip\nroundwright: fine";

class HostileNamesOnATerminal : public testing::Test {
  protected:
    HostileNamesOnATerminal() {
        Toy toy;
        toy.title = hostile;
        toy.designer = hostile;
        toy.notes = hostile;
        toy.gauge = GivenGauge{{5, 5, 0, 0}};
        toy.yarns.emplace_back().name = hostile;
        for (int i = 0; i < 2; ++i) {
            Piece& piece = toy.pieces.emplace_back();
            piece.name = hostile;
            for (const int count : {6, 12, 18, 24, 60, 24, 18, 12, 6})
                piece.rounds.push_back({WorkedEvenly{count}, 0, false, hostile});
        }
        toy.pieces[1].rounds[3].working = AsWritten{hostile};
        std::ofstream(file.toStdString(), std::ios::binary) << write_document(toy);
        std::ofstream(pattern.toStdString(), std::ios::binary)
            << "# " << hostile << "\nRnd 1: 6 sc in magic ring (6)\nRnd 2: " << hostile << "\n";
    }

    static void expect_safe(const std::string& printed, const std::string& what) {
        for (const QChar c : QString::fromStdString(printed)) {
            if (c == u'\n' || c == u'\t') continue;
            ASSERT_FALSE(is_unprintable(c.unicode())) << what << ": U+" << std::hex << int{c.unicode()};
        }
    }

    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("a\x1B[31m.roundwright"));
    const QString pattern = folder.filePath(QStringLiteral("b\xE2\x80\xAE.txt"));
};

TEST_F(HostileNamesOnATerminal, NoCommandPrintsThemRaw) {
    const QString out = folder.filePath(QStringLiteral("out"));
    const QStringList runs[] = {{"check", file},
                                {"check", "--json", file},
                                {"shape", file},
                                {"shape", "--json", file},
                                {"write", file},
                                {"write", "--json", file},
                                {"write", "--form", "markdown", file},
                                {"write", "--form", "csv", file},
                                {"read", pattern},
                                {"read", "--json", pattern},
                                {"resize", file, "--scale", "1.2"},
                                {"resize", "--json", file, "--scale", "1.2"},
                                {"gauge", file, "--width", "60"},
                                {"check", file + "\nx"},
                                {"\x1B[31m"},
                                {"check", "--\x1B[31m"},
                                {"image", file, "-o", out + ".p\x1Bng"},
                                {"pdf", file, "-o", out + ".pdf"},
                                {"mesh", file, "-o", out + ".obj"}};
    for (const QStringList& words : runs) {
        const ProgramRun run = run_program(words);
        const std::string what = words.join(u' ').toStdString();
        expect_safe(run.out, what);
        expect_safe(run.err, what);
        EXPECT_EQ(run.err.find("\nroundwright: fine"), std::string::npos) << what << ": a name forged a line";
    }
}

TEST_F(HostileNamesOnATerminal, JsonStillHasThemLetterByLetter) {
    const auto json = nlohmann::json::parse(run_program({"shape", "--json", file}).out);
    const auto text = json.dump();
    EXPECT_NE(text.find(nlohmann::json(hostile).dump().substr(1, 20)), std::string::npos)
        << text.substr(0, 300);
}

TEST_F(HostileNamesOnATerminal, AMeshHasThemOnOneLine) {
    const QString out = folder.filePath(QStringLiteral("out.obj"));
    EXPECT_LE(run_program({"mesh", file, "-o", out}).exit_code, 1);
    std::ifstream obj(out.toStdString(), std::ios::binary);
    for (std::string line; std::getline(obj, line);) {
        ASSERT_TRUE(line.empty() || std::string("#ovnf").find(line[0]) != std::string::npos) << line;
        ASSERT_EQ(line.find_first_of("\x1B\x7F"), std::string::npos);
        if (line[0] == 'o') {
            ASSERT_EQ(line.find("\xE2\x80\xAE"), std::string::npos);
        }
    }
}

TEST_F(HostileNamesOnATerminal, SvgHasThemAsText) {
    const QString out = folder.filePath(QStringLiteral("out.svg"));
    static_cast<void>(run_program({"image", file, "-o", out}));
    std::ifstream svg(out.toStdString(), std::ios::binary);
    std::ostringstream bytes;
    bytes << svg.rdbuf();
    EXPECT_EQ(bytes.str().find('\x1B'), std::string::npos);
    EXPECT_EQ(bytes.str().find("\xE2\x80\xAE"), std::string::npos);
}

}  // namespace
}  // namespace roundwright
