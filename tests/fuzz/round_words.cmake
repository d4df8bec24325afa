# Keep new inputs: round_words_fuzzer tests/fuzz/corpus/round_words -max_len=200
roundwright_fuzzer(round_words_fuzzer round_words_fuzzer.cpp)
