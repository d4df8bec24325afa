#pragma once

#include <gtest/gtest.h>

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QProcess>

#include "app/files/autosave.h"
#include "app/session/document_session.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {

inline void rename_piece(DocumentSession& session, const char* name) {
    session.edit_piece(QStringLiteral("Rename"), [name](Piece& piece) { piece.name = name; });
}

/// A window that ends with unsaved changes that nobody gave up, and so leaves its copy as a crash would.
inline void leave_behind(const QString& state, const QString& document, const char* name,
                         const PendingEntry& typed = {}) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    if (!document.isEmpty()) {
        ASSERT_FALSE(session.open(document));
    }
    Autosave autosave(session, state);
    if (name) rename_piece(session, name);
    autosave.set_pending(typed);
}

/// A program of its own that opens a file, changes the name of its piece, and is killed (SIGKILL), or ended
/// by another signal.
class KilledProgram {
  public:
    /// `keeps_now`: says that it is ready only once all is kept; else as soon as it has changed something.
    /// `display`: where it opens; empty: in memory.
    KilledProgram(const QString& state, const QString& document, const QString& name, bool keeps_now = true,
                  const QString& display = {}) {
        auto environment = QProcessEnvironment::systemEnvironment();
        if (!display.isEmpty()) {
            environment.insert(QStringLiteral("DISPLAY"), display);
            environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("xcb"));
            environment.insert(QStringLiteral("ROUNDWRIGHT_TEST_WINDOWS"), QStringLiteral("1"));
        }
        environment.insert(QStringLiteral("KILL_ME_STATE"), state);
        environment.insert(QStringLiteral("KILL_ME_DOCUMENT"), document);
        environment.insert(QStringLiteral("KILL_ME_NAME"), name);
        if (keeps_now) environment.insert(QStringLiteral("KILL_ME_KEPT"), QStringLiteral("1"));
        environment.insert(QStringLiteral("TMPDIR"), QFileInfo(state).path());
        program.setProcessEnvironment(environment);
        program.start(QCoreApplication::applicationFilePath(),
                      {QStringLiteral("--gtest_filter=KilledProgram.*"),
                       QStringLiteral("--gtest_also_run_disabled_tests")});
        QByteArray said;
        while (!said.contains("ready") && program.waitForReadyRead(test::slowdown * 20'000))
            said += program.readAllStandardOutput();
        EXPECT_TRUE(said.contains("ready"));
    }
    ~KilledProgram() { end(); }

    void end() {
        program.kill();
        program.waitForFinished();
    }

    QProcess program;
};

/// Every file below a folder.
inline QStringList files_below(const QString& folder) {
    QStringList found;
    QDirIterator files(folder, QDir::Files | QDir::Hidden | QDir::System, QDirIterator::Subdirectories);
    while (files.hasNext()) found << files.next();
    found.sort();
    return found;
}

/// Kept copies that hold these words.
inline int copies_with(const QString& state, const QByteArray& words) {
    int count = 0;
    for (const QString& path : files_below(state)) {
        QFile file(path);
        count += path.endsWith(QStringLiteral(".kept")) && file.open(QIODevice::ReadOnly) &&
                         file.readAll().contains(words)
                     ? 1
                     : 0;
    }
    return count;
}

}  // namespace roundwright::app
