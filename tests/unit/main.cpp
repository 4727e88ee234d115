// Catch2's main, compiled once for the unit tests of every stage.
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
