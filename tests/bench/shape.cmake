roundwright_bench(bench_shape shape_cold_and_warm.cpp)
roundwright_bench(bench_shape_parts shape_parts.cpp)

# Against general-purpose optimisers, where both are installed (libceres-dev, libnlopt-dev).
find_package(Ceres QUIET)
find_package(NLopt QUIET)
if(Ceres_FOUND AND NLopt_FOUND)
  add_executable(bench_shape_against_optimisers
    shape_against_optimisers.cpp
    shape_growth.cpp
    shape_optimisers_ceres.cpp
    shape_optimisers_nlopt.cpp)
  target_link_libraries(bench_shape_against_optimisers PRIVATE Roundwright::Core Ceres::ceres NLopt::nlopt)
  target_include_directories(bench_shape_against_optimisers PRIVATE "${PROJECT_SOURCE_DIR}")
  roundwright_warnings(bench_shape_against_optimisers)
endif()
