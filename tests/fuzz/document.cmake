# Keep new inputs: tests/fuzz/run BUILD/document_fuzzer tests/fuzz/corpus/document
roundwright_fuzzer(document_fuzzer document_fuzzer.cpp)
