# The whole editor, from a key to the picture; needs a display, or draws off the screen.
if(ROUNDWRIGHT_APP)
  add_executable(keystroke_bench editor/keystroke_bench.cpp)
  target_link_libraries(keystroke_bench PRIVATE Roundwright::App Qt6::Test benchmark::benchmark)
  target_include_directories(keystroke_bench PRIVATE "${PROJECT_SOURCE_DIR}")
  roundwright_warnings(keystroke_bench)
endif()
