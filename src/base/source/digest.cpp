#include "base/source/digest.hpp"

#include <openssl/evp.h>

#include <array>
#include <stdexcept>

namespace plumbrule::source {
namespace {

// Only a broken installation fails here, nothing of the user's.
void demand(int result) {
  if (result != 1) {
    throw std::runtime_error("the library gives no SHA-256");
  }
}

}  // namespace

void Sha256::Free::operator()(evp_md_ctx_st* state) const { EVP_MD_CTX_free(state); }

Sha256::Sha256() : state_(EVP_MD_CTX_new()) { demand(EVP_DigestInit_ex(state_.get(), EVP_sha256(), nullptr)); }

void Sha256::add(std::string_view bytes) { demand(EVP_DigestUpdate(state_.get(), bytes.data(), bytes.size())); }

std::string Sha256::text() {
  std::array<unsigned char, EVP_MAX_MD_SIZE> raw{};
  unsigned int size = 0;
  demand(EVP_DigestFinal_ex(state_.get(), raw.data(), &size));
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out;
  for (std::size_t at = 0; at < size; ++at) {
    out += digits[raw.at(at) >> 4U];
    out += digits[raw.at(at) & 0x0FU];
  }
  return out;
}

std::string sha256(std::string_view bytes) {
  Sha256 all;
  all.add(bytes);
  return all.text();
}

}  // namespace plumbrule::source
