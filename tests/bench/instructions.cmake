roundwright_bench(instructions_bench "${CMAKE_CURRENT_SOURCE_DIR}/instructions_bench.cpp"
                                     "${CMAKE_CURRENT_SOURCE_DIR}/hostile_text_bench.cpp")
