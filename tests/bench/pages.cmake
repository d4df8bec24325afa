# Patterns as PDF: needs Qt, but no display (QT_QPA_PLATFORM=offscreen).
if(ROUNDWRIGHT_APP)
  add_executable(pages_bench pages_bench.cpp)
  target_link_libraries(pages_bench PRIVATE Roundwright::Render benchmark::benchmark)
  target_include_directories(pages_bench PRIVATE "${PROJECT_SOURCE_DIR}")
  roundwright_warnings(pages_bench)
endif()
