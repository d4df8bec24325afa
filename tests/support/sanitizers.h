#pragma once

// GCC says by macros what it instruments for, clang by features.
#if defined(__SANITIZE_ADDRESS__)
#define ROUNDWRIGHT_UNDER_ADDRESS_SANITIZER 1
#elif defined(__SANITIZE_THREAD__)
#define ROUNDWRIGHT_UNDER_THREAD_SANITIZER 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define ROUNDWRIGHT_UNDER_ADDRESS_SANITIZER 1
#elif __has_feature(thread_sanitizer)
#define ROUNDWRIGHT_UNDER_THREAD_SANITIZER 1
#endif
#endif

namespace roundwright::test {

/// Sanitizers map terabytes of address space and take the signals of faults for themselves, so what limits
/// the one or waits for the other cannot be tested under them.
#if defined(ROUNDWRIGHT_UNDER_ADDRESS_SANITIZER) || defined(ROUNDWRIGHT_UNDER_THREAD_SANITIZER)
inline constexpr bool under_sanitizer = true;
#else
inline constexpr bool under_sanitizer = false;
#endif

/// How many times as long as usual something may take.
inline constexpr int slowdown = under_sanitizer ? 10 : 1;

}  // namespace roundwright::test
