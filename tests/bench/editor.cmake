# The whole editor, from a key or the pointer to the picture; on a display, or drawn off the screen.
if(ROUNDWRIGHT_APP)
  foreach(name keystroke_bench drag_bench)
    add_executable(${name} editor/${name}.cpp)
    target_link_libraries(${name} PRIVATE Roundwright::App Qt6::Test benchmark::benchmark)
    target_include_directories(${name} PRIVATE "${PROJECT_SOURCE_DIR}")
    roundwright_warnings(${name})
  endforeach()
endif()
