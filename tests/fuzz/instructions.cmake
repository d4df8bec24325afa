# Keep new inputs: instructions_fuzzer tests/fuzz/corpus/instructions -max_len=4096
roundwright_fuzzer(instructions_fuzzer instructions_fuzzer.cpp)
