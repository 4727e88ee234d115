#include "yaml_writer.hpp"

namespace plumbrule::property {
namespace {

using evidence::Node;

std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char byte : text) {
    out += byte == '"' || byte == '\\' ? std::string{'\\', byte} : std::string(1, byte);
  }
  return out + "\"";
}

std::string flow(const Node& node) {
  std::string out;
  switch (node.kind) {
    case Node::Kind::empty:
      return "null";
    case Node::Kind::scalar:
      return quoted(node.text);
    case Node::Kind::list:
      for (const Node& item : node.items) {
        out += (out.empty() ? "" : ", ") + flow(item);
      }
      return "[" + out + "]";
    default:
      for (const evidence::Entry& entry : node.entries) {
        out += (out.empty() ? "" : ", ") + quoted(entry.key) + ": " + flow(entry.value);
      }
      return "{" + out + "}";
  }
}

}  // namespace

std::string write_yaml(const Node& document) {
  std::string out;
  for (const evidence::Entry& entry : document.entries) {
    out += entry.key + ":";
    if (entry.value.kind != Node::Kind::list || entry.value.items.empty()) {
      out += " " + flow(entry.value) + "\n";
      continue;
    }
    out += "\n";
    for (const Node& item : entry.value.items) {
      out += "  - " + flow(item) + "\n";
    }
  }
  return out;
}

}  // namespace plumbrule::property
