roundwright_bench(instructions_bench "${CMAKE_CURRENT_SOURCE_DIR}/instructions_bench.cpp")
