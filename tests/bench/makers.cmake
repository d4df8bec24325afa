# Not timed: a table of how well ranges of sizes hold.
add_executable(simulated_makers
  simulated_makers.cpp
  ../support/simulated_makers.cpp)
target_link_libraries(simulated_makers PRIVATE Roundwright::Core)
target_include_directories(simulated_makers PRIVATE "${PROJECT_SOURCE_DIR}")
roundwright_warnings(simulated_makers)
