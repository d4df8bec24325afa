# Keep new inputs: document_fuzzer tests/fuzz/corpus/document -max_len=65536
roundwright_fuzzer(document_fuzzer document_fuzzer.cpp)
