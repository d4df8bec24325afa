#pragma once

#include <functional>
#include <memory>

#include <QApplication>
#include <QString>

namespace roundwright::app {

/// The application of the window. Where memory runs out while something is done, that is given up and said in
/// words, and the window, the toy and whatever is typed stay as they are: Qt itself would end the program.
class LastingApplication : public QApplication {
  public:
    using Tell = std::function<void(const QString& why)>;

    LastingApplication(int& argc, char** argv);

    /// How the maker is told; empty: not at all.
    void set_tell(Tell tell) { tell_ = std::move(tell); }
    bool notify(QObject* receiver, QEvent* event) override;

  private:
    void tell_of_memory();
    void take_spare();

    Tell tell_;
    std::unique_ptr<char[]> spare_;  ///< given back when memory runs out, so that words can be shown
};

}  // namespace roundwright::app
