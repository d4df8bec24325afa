# The table of published pieces: predicted, range, stated. Measures no time.
add_executable(published_sizes
  published_sizes.cpp
  ../core/published/predicted_sizes.cpp
  ../core/published/published_pieces.cpp)
target_link_libraries(published_sizes PRIVATE Roundwright::Core)
target_include_directories(published_sizes PRIVATE "${PROJECT_SOURCE_DIR}")
target_compile_definitions(published_sizes PRIVATE
  "PUBLISHED_PIECES=\"${PROJECT_SOURCE_DIR}/tests/core/published/published_pieces.txt\"")
roundwright_warnings(published_sizes)
