# Needs the editor's parts and, for the view itself, a display.
if(ROUNDWRIGHT_APP)
  add_executable(scene_bench scene/scene_bench.cpp
    "${PROJECT_SOURCE_DIR}/tests/core/mesh/example_pieces.cpp"
    "${PROJECT_SOURCE_DIR}/tests/render/scene/example_surfaces.cpp")
  target_link_libraries(scene_bench PRIVATE Roundwright::Render benchmark::benchmark)
  target_include_directories(scene_bench PRIVATE "${PROJECT_SOURCE_DIR}")
  roundwright_warnings(scene_bench)
endif()
