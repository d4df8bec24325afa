#pragma once

#include "tests/support/sanitizers.h"

#if defined(ROUNDWRIGHT_UNDER_ADDRESS_SANITIZER)
#include <sanitizer/lsan_interface.h>
#endif

namespace roundwright::test {

/// What is allocated on this thread meanwhile may leak: for tests in which a library leaks by its nature.
class UnjudgedLeaks {
  public:
#if defined(ROUNDWRIGHT_UNDER_ADDRESS_SANITIZER)
    UnjudgedLeaks() { __lsan_disable(); }
    ~UnjudgedLeaks() { __lsan_enable(); }
#else
    UnjudgedLeaks() = default;
#endif
    UnjudgedLeaks(const UnjudgedLeaks&) = delete;
    UnjudgedLeaks& operator=(const UnjudgedLeaks&) = delete;
};

}  // namespace roundwright::test
