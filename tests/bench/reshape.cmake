roundwright_bench(reshape_bench "${CMAKE_CURRENT_SOURCE_DIR}/reshape_bench.cpp")
