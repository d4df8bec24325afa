#pragma once

#include <functional>
#include <memory>

#include <QObject>

#include "app/session/document_session.h"
#include "app/versions/version_store.h"
#include "render/background/background.h"

namespace roundwright::app {

/// Keeps the versions of the toy in the window, in the background: what stood in its file when it was opened,
/// and each save. Saving never waits for it and never fails by it, but for one case: what is about to be
/// replaced and is not known to be kept is kept first.
class VersionKeeper : public QObject {
    Q_OBJECT
  public:
    explicit VersionKeeper(DocumentSession& session, VersionStore store = VersionStore(),
                           QObject* parent = nullptr);
    /// Writes what is still waiting.
    ~VersionKeeper() override;

    [[nodiscard]] const VersionStore& store() const { return store_; }

    /// Keeps bytes that stood in a toy's file, or were meant to.
    void keep(const QString& path, const QByteArray& bytes, VersionKind kind);
    /// The changes in the window are given up: they stay as a version marked so. A toy without a file has no
    /// versions.
    void keep_given_up();
    /// Removes the versions of the toy in the window.
    [[nodiscard]] std::optional<DiskFault> forget();
    /// Writes what is waiting now, in this thread; what was being written is there when it returns.
    void settle();
    [[nodiscard]] bool busy() const { return background_.busy(); }

  Q_SIGNALS:
    /// A version could not be kept, as a sentence; once, until one can be kept again.
    void keeping_failed(const QString& why);

  private:
    struct Waiting;
    using Keeping = std::function<KeptVersion(const VersionStore&)>;

    void keep_what_will_be_replaced(const QString& path);
    void keep_saved();
    void follow_file();
    void add(Keeping keeping);
    void take(const std::vector<KeptVersion>& kept);

    DocumentSession& session_;
    VersionStore store_;
    std::shared_ptr<Waiting> waiting_;
    QString path_;
    FileStamp seen_;   ///< of that file when it was opened or saved last
    FileStamp known_;  ///< a state whose content is kept
    bool said_ = false;
    render::Background background_;
};

}  // namespace roundwright::app
