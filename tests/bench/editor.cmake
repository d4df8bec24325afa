# The whole editor, from a key or the pointer to the picture; on a display, or drawn off the screen.
if(ROUNDWRIGHT_APP)
  add_executable(editor_bench editor/main.cpp editor/drag_an_eye.cpp editor/keeping.cpp editor/key_to_surface.cpp
    editor/save_and_keep.cpp editor/typing.cpp)
  target_link_libraries(editor_bench PRIVATE Roundwright::App Qt6::Test benchmark::benchmark)
  target_include_directories(editor_bench PRIVATE "${PROJECT_SOURCE_DIR}")
  roundwright_warnings(editor_bench)
endif()
