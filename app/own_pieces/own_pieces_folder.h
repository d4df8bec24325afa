#pragma once

#include <vector>

#include <QString>

#include "app/session/document_file.h"

namespace roundwright::app {

/// Pieces worth keeping, a small toy file each, where the maker's data is
/// (`$XDG_DATA_HOME/roundwright/own-pieces`; XDG Base Directory Specification 0.8).
class OwnPiecesFolder {
  public:
    explicit OwnPiecesFolder(QString path) : path_(std::move(path)) {}
    [[nodiscard]] static OwnPiecesFolder usual();

    [[nodiscard]] const QString& path() const { return path_; }
    /// By name; paths.
    [[nodiscard]] std::vector<QString> files() const;
    /// Keeps a toy of one piece under its name, and a number where that is taken. Nothing on success.
    [[nodiscard]] std::optional<FileProblem> keep(const Toy& piece) const;

    /// Where a file is now, or why it is not.
    struct Moved {
        QString path;
        std::optional<FileProblem> problem;
    };
    /// Gives a piece that is kept another name, in its file and of its file.
    [[nodiscard]] Moved rename(const QString& file, const QString& name) const;
    /// Where pieces lie that were removed, so that none is lost.
    [[nodiscard]] QString removed_path() const;
    [[nodiscard]] Moved remove(const QString& file) const;
    /// A file that was removed, among the others again.
    [[nodiscard]] Moved bring_back(const QString& file) const;

  private:
    [[nodiscard]] Moved save_new(const Toy& piece) const;
    QString path_;
};

}  // namespace roundwright::app
