#include "app/window/run_window.h"

int main(int argc, char** argv) { return roundwright::app::run_window(argc, argv); }
