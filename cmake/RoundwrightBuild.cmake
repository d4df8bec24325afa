# Compiler settings shared by every target.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "Build type" FORCE)
endif()

# A compiler cache and a fast linker are used when they are there; neither is needed.
find_program(ROUNDWRIGHT_CCACHE ccache)
if(ROUNDWRIGHT_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER
    ${CMAKE_COMMAND} -E env CCACHE_BASEDIR=${PROJECT_SOURCE_DIR} CCACHE_NOHASHDIR=1 ${ROUNDWRIGHT_CCACHE})
endif()
find_program(ROUNDWRIGHT_MOLD mold)
if(ROUNDWRIGHT_MOLD AND CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  add_link_options(-fuse-ld=mold)
endif()

if(ROUNDWRIGHT_SANITIZE)
  add_compile_options(-fsanitize=${ROUNDWRIGHT_SANITIZE} -fno-omit-frame-pointer -fno-sanitize-recover=all)
  add_link_options(-fsanitize=${ROUNDWRIGHT_SANITIZE})
endif()

# Warnings are errors, since one that may stay is one nobody reads: with the compiler that the program is developed with.
# Another one's new warnings must not keep a maker from building it.
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  set(developed_with_this_compiler ON)
else()
  set(developed_with_this_compiler OFF)
endif()
option(ROUNDWRIGHT_WARNINGS_ARE_ERRORS "Stop at the first warning" ${developed_with_this_compiler})

function(roundwright_warnings target)
  target_compile_options(${target} PRIVATE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion -Wnon-virtual-dtor -Woverloaded-virtual
    # GCC 12 sees overlapping copies in `"text" + std::string` where there are none (GCC bug 105651).
    $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)
  # Under sanitizers GCC 12 warns of uninitialised members of the standard library (std::function) that are not; the
  # ordinary builds keep warnings out.
  if(ROUNDWRIGHT_WARNINGS_ARE_ERRORS AND NOT ROUNDWRIGHT_SANITIZE AND NOT ROUNDWRIGHT_FUZZ)
    target_compile_options(${target} PRIVATE -Werror)
  endif()
endfunction()
