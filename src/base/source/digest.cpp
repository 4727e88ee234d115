#include "base/source/digest.hpp"

#include <sha2.h>

#include <array>
#include <cstdint>

namespace plumbrule::source {

struct Sha256::State {
  SHA2_CTX context;
};

void Sha256::Free::operator()(State* state) const { delete state; }

Sha256::Sha256() : state_(new State) { SHA256Init(&state_->context); }

void Sha256::add(std::string_view bytes) {
  // A text is bytes to the library too.
  SHA256Update(&state_->context, reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

std::string Sha256::text() {
  std::array<std::uint8_t, SHA256_DIGEST_LENGTH> raw{};
  SHA256Final(raw.data(), &state_->context);
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out;
  for (const std::uint8_t byte : raw) {
    out += digits[byte >> 4U];
    out += digits[byte & 0x0FU];
  }
  return out;
}

std::string sha256(std::string_view bytes) {
  Sha256 all;
  all.add(bytes);
  return all.text();
}

}  // namespace plumbrule::source
