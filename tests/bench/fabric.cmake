roundwright_bench(bench_fabric fabric_cold_and_warm.cpp)

# Against general-purpose optimisers, where both are installed (libceres-dev, libnlopt-dev), and against a stock Newton
# on Eigen's sparse factor, with METIS's ordering as well where that is there (libmetis-dev).
find_package(Ceres QUIET)
find_package(NLopt QUIET)
find_path(METIS_INCLUDE_DIR metis.h)
find_library(METIS_LIBRARY metis)
if(Ceres_FOUND AND NLopt_FOUND)
  add_executable(bench_fabric_against_optimisers
    fabric_against_optimisers.cpp
    fabric_ceres.cpp
    fabric_nlopt.cpp
    fabric_stock_newton.cpp)
  target_link_libraries(bench_fabric_against_optimisers PRIVATE Roundwright::Core Ceres::ceres NLopt::nlopt)
  target_include_directories(bench_fabric_against_optimisers PRIVATE "${PROJECT_SOURCE_DIR}")
  if(METIS_INCLUDE_DIR AND METIS_LIBRARY)
    target_compile_definitions(bench_fabric_against_optimisers PRIVATE ROUNDWRIGHT_METIS)
    target_include_directories(bench_fabric_against_optimisers SYSTEM PRIVATE "${METIS_INCLUDE_DIR}")
    target_link_libraries(bench_fabric_against_optimisers PRIVATE "${METIS_LIBRARY}")
  endif()
  roundwright_warnings(bench_fabric_against_optimisers)
endif()
