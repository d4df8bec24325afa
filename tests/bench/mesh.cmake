roundwright_bench(mesh_bench mesh_bench.cpp)
