#include "base/source/digest.hpp"

#include <catch2/catch.hpp>
#include <string>

using plumbrule::source::sha256;

// The three examples of FIPS 180-2, appendix B, and the empty text (from memory; checked here with `sha256sum`).
TEST_CASE("sha256 gives the digests of the standard's examples") {
  CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(sha256(std::string(1'000'000, 'a')) == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("sha256 takes a NUL byte as any other") {
  CHECK(sha256(std::string("a\0b", 3)) != sha256("a"));
  CHECK(sha256(std::string("a\0b", 3)).size() == 64);
}
