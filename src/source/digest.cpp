#include "source/digest.hpp"

#include <openssl/evp.h>

#include <array>
#include <stdexcept>

namespace plumbrule::source {

std::string sha256(std::string_view bytes) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> raw{};
  unsigned int size = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), raw.data(), &size, EVP_sha256(), nullptr) != 1) {
    throw std::runtime_error("the library gives no SHA-256");  // a broken installation, nothing of the user's
  }
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out;
  for (std::size_t at = 0; at < size; ++at) {
    out += digits[raw.at(at) >> 4U];
    out += digits[raw.at(at) & 0x0FU];
  }
  return out;
}

}  // namespace plumbrule::source
