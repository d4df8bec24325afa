#pragma once

#include <QObject>
#include <QString>

#include "app/kit/notice_bar.h"
#include "app/on_disk/file_follower.h"

namespace roundwright::app {

class DocumentFiles;

/// Says in the window, as long as it lasts, that the open file is read only, open in another window, changed,
/// damaged or gone, and offers what can be done.
class FileNotices : public QObject {
    Q_OBJECT
  public:
    FileNotices(DocumentSession& session, FileFollower& follower, DocumentFiles& files, NoticeBar& bar,
                QWidget* window);

  Q_SIGNALS:
    /// Something that is good to know and needs no answer.
    void told(const QString& what);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void follow();
    void put(const QString& cause, const std::optional<Notice>& notice);
    [[nodiscard]] std::optional<Notice> of_disk() const;
    [[nodiscard]] std::optional<Notice> of_right() const;
    [[nodiscard]] Notice changed_elsewhere() const;
    [[nodiscard]] Notice changed() const;
    [[nodiscard]] Notice unreadable() const;
    [[nodiscard]] Notice gone() const;
    [[nodiscard]] Notice open_elsewhere() const;
    [[nodiscard]] Notice free_again() const;
    [[nodiscard]] NoticeAnswer save_under_another_name(const QString& words) const;
    [[nodiscard]] NoticeAnswer look_only() const;
    [[nodiscard]] NoticeAnswer take_theirs() const;
    [[nodiscard]] NoticeAnswer keep_mine() const;
    [[nodiscard]] NoticeAnswer keep_both() const;
    [[nodiscard]] QString name() const;

    DocumentSession& session_;
    FileFollower& follower_;
    DocumentFiles& files_;
    NoticeBar& bar_;
    QString path_;
    /// What the maker has read and put away: said again when it is about another file or another thing.
    mutable QString put_away_;
};

}  // namespace roundwright::app
