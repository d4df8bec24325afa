#pragma once

#include <cstdio>
#include <gtest/gtest.h>
#include <initializer_list>

#include <QFile>
#include <QFileInfo>
#include <QString>

#include "app/session/document_file.h"
#include "tests/app/app_testing.h"

// What other programs do to a file under the window's hands.
namespace roundwright::app {

inline QByteArray toy_bytes(std::initializer_list<int> counts) {
    return QByteArray::fromStdString(write_document(toy_of(counts)));
}

inline QByteArray bytes_in(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return file.readAll();
}

/// Written over where it stands: the same file on the disk.
inline void write_in_place(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly | QIODevice::Truncate));
    ASSERT_EQ(file.write(bytes), bytes.size());
}

/// Renamed over it: another file on the disk.
inline void rename_over(const QString& path, const QByteArray& bytes) {
    const QString beside = path + QStringLiteral(".new");
    write_in_place(beside, bytes);
    ASSERT_EQ(std::rename(QFile::encodeName(beside).constData(), QFile::encodeName(path).constData()), 0);
}

inline void move_file(const QString& from, const QString& to) {
    ASSERT_EQ(std::rename(QFile::encodeName(from).constData(), QFile::encodeName(to).constData()), 0);
}

inline std::vector<int> counts_in(const QString& path) {
    const auto loaded = load_document_file(path);
    EXPECT_FALSE(loaded.problem) << path.toStdString();
    return loaded.problem ? std::vector<int>{} : counts_of(loaded.document.toy.pieces.front());
}

inline void set_first_count(DocumentSession& session, int stitches) {
    session.edit_piece(QStringLiteral("Set"),
                       [stitches](Piece& piece) { piece.rounds.front().working = WorkedEvenly{stitches}; });
}

}  // namespace roundwright::app
