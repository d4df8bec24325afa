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

  private:
    QString path_;
};

}  // namespace roundwright::app
