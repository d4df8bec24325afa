# Keep new inputs: tests/fuzz/run BUILD/instructions_fuzzer tests/fuzz/corpus/instructions
roundwright_fuzzer(instructions_fuzzer instructions_fuzzer.cpp)
