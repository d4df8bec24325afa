# Keep new inputs: tests/fuzz/run BUILD/entry_fuzzer tests/fuzz/corpus/entry
roundwright_fuzzer(entry_fuzzer entry_fuzzer.cpp)
