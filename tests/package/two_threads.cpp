// Two threads review at once over the same rules, while a third loads more: for the thread sanitizer, which ends the
// program where they meet. Usage: two_threads RULES SUBMITTAL, run in the repository's folder.
#include <fstream>
#include <iostream>
#include <plumbrule/session.hpp>
#include <sstream>
#include <thread>

namespace {

std::string read(const char* path) {
  std::stringstream out;
  out << std::ifstream(path, std::ios::binary).rdbuf();
  return out.str();
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 3) {
    return 64;
  }
  plumbrule::Session session(plumbrule::disk(), {"specs"});
  const plumbrule::Rules rules = session.rules({{arguments[1]}});
  const plumbrule::SubmittalText submittal{arguments[2], read(arguments[2])};
  const std::string wanted = rules.review(submittal).render(plumbrule::Form::html).value_or("nothing");
  bool same[2] = {true, true};
  const auto work = [&](bool& out) {
    for (int round = 0; round < 5; ++round) {
      out = out && rules.review(submittal).render(plumbrule::Form::html) == wanted;
      out = out && rules.window(submittal).render(plumbrule::Form::json).has_value();
    }
  };
  std::thread first(work, std::ref(same[0]));
  std::thread second(work, std::ref(same[1]));
  const bool more = session.rules({{"specs"}}).usable();
  first.join();
  second.join();
  std::cout << (same[0] && same[1] && more ? "the same from both threads\n" : "they differ\n");
  return same[0] && same[1] && more && wanted.size() > 1000 ? 0 : 1;
}
