// Reviews a submittal in memory: review RULES VOCABULARY SUBMITTAL, each a file, and prints the report as JSON.
#include <fstream>
#include <iostream>
#include <plumbrule/session.hpp>
#include <sstream>

std::string read(const char* path) {
  std::stringstream out;
  out << std::ifstream(path, std::ios::binary).rdbuf();
  return out.str();
}

int main(int count, char** arguments) {
  if (count != 4) {
    return 64;
  }
  const auto files = std::make_shared<plumbrule::MemoryFiles>();
  files->put(arguments[1], read(arguments[1]));
  files->put(arguments[2], read(arguments[2]));
  plumbrule::Session session(files, {"specs"});
  const plumbrule::Rules rules = session.rules({{arguments[1]}});
  const plumbrule::Report report = rules.review({arguments[3], read(arguments[3])});
  for (const plumbrule::Diagnostic& one : report.diagnostics()) {
    std::cerr << one.code << ": " << one.message << "\n";
  }
  std::cout << report.render(plumbrule::Form::json).value_or("");
  return static_cast<int>(report.status());
}
