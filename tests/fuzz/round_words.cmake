# Keep new inputs: tests/fuzz/run BUILD/round_words_fuzzer tests/fuzz/corpus/round_words
roundwright_fuzzer(round_words_fuzzer round_words_fuzzer.cpp)
