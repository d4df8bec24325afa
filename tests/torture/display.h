#pragma once

#include <optional>
#include <string>
#include <sys/types.h>

namespace roundwright::torture {

/// An X server in memory, for windows that are to be seen by nobody.
class Display {
  public:
    Display() = default;
    ~Display() { stop(); }
    Display(const Display&) = delete;
    Display& operator=(const Display&) = delete;

    /// False: there is no Xvfb here.
    bool start();
    /// Takes it away at once, with its windows still open.
    void stop();
    [[nodiscard]] bool is_there() const { return pid_ > 0; }
    [[nodiscard]] const std::string& name() const { return name_; }  ///< ":7"

  private:
    pid_t pid_ = -1;
    std::string name_;
};

}  // namespace roundwright::torture
