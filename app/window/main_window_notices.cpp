#include <QLocale>

#include "app/files/document_files.h"
#include "app/files/keeping_words.h"
#include "app/kit/action_keys.h"
#include "app/kit/notice_bar.h"
#include "app/window/main_window.h"

/// What the window says as long as it lasts, beyond what is said of the open file.

namespace roundwright::app {
namespace {

const auto keeping_notice = QStringLiteral("keeping");
const auto left_notice = QStringLiteral("left-behind");
const auto keys_notice = QStringLiteral("keys");

}  // namespace

void MainWindow::follow_keeping() {
    connect(&autosave_, &Autosave::keeping_failed, this, [this](const DiskFault& fault) {
        notices_->put_up(
            keeping_notice,
            {NoticeRank::danger,
             tr("Unsaved changes cannot be kept safe at the moment: if the program or the computer "
                "stopped now, they would be lost. Save the toy. %1")
                 .arg(keeping_fault_words(fault)),
             {{tr("&Save"), [this] { files_->save(); }}}});
    });
    connect(&autosave_, &Autosave::keeping_works, this, [this] { notices_->take_down(keeping_notice); });
}

/// A file was asked for, so what other files have left is said and does not stand in the way.
void MainWindow::say_what_was_left() {
    const int copies = files_->copies_left();
    if (copies == 0) return notices_->take_down(left_notice);
    notices_->put_up(
        left_notice,
        {NoticeRank::remark,
         tr("Unsaved changes of %n other toy(s) were kept when Roundwright stopped.", nullptr, copies),
         {{tr("&Look at them…"),
           [this] {
               files_->show_kept_copies();
               say_what_was_left();
           }},
          {tr("Not &now"), [this] { notices_->take_down(left_notice); }}}});
}

/// Never silently: a maker may press what does nothing, or something else.
void MainWindow::say_which_keys_are_lost() {
    const QStringList names = ActionKeys::instance().unreadable();
    if (names.isEmpty()) return;
    notices_->put_up(keys_notice, {NoticeRank::remark,
                                   tr("The keys you chose for %1 could not be used; the usual ones are back.")
                                       .arg(QLocale().createSeparatedList(names)),
                                   {{tr("Choose ke&ys…"),
                                     [this] {
                                         notices_->take_down(keys_notice);
                                         show_shortcuts();
                                     }},
                                    {tr("Not now", "keys"), [this] { notices_->take_down(keys_notice); }}}});
}

}  // namespace roundwright::app
