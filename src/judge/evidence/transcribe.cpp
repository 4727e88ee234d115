#include "judge/evidence/transcribe.hpp"

#include <algorithm>
#include <array>

#include "judge/evidence/json_fault.hpp"

namespace plumbrule::evidence {
namespace {

constexpr std::size_t widest_line = 110;

bool is_plain(const Node& node) { return node.kind == Node::Kind::scalar || node.kind == Node::Kind::empty; }

// In double quotes, as both forms read them; characters that neither takes unescaped are written by their number.
std::string in_quotes(std::string_view text) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string out = "\"";
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto byte = static_cast<unsigned char>(text[at]);
    const bool control = byte == 0xC2U && at + 1 < text.size() && static_cast<unsigned char>(text[at + 1]) < 0xA0U;
    const unsigned code = control ? static_cast<unsigned char>(text[++at]) : byte;
    if (code == '"' || code == '\\') {
      out += {'\\', text[at]};
    } else if (control || code < 0x20U || code == 0x7FU) {
      out += std::string("\\u00") + digits[code >> 4U] + digits[code & 15U];
    } else {
      out += text[at];
    }
  }
  return out + "\"";
}

// How one of the two forms writes things.
struct Form {
  std::string (*name)(std::string_view);
  std::string (*scalar)(std::string_view);
  bool json = false;
};

std::string yaml_scalar(std::string_view text) {
  constexpr std::string_view harmless = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 ._/%+-()";
  constexpr std::array<std::string_view, 3> nothing{"null", "Null", "NULL"};
  const bool plain = !text.empty() && harmless.find(text.front()) < harmless.find(' ') && text.back() != ' ' &&
                     text.find_first_not_of(harmless) == std::string_view::npos &&
                     std::find(nothing.begin(), nothing.end(), text) == nothing.end();
  return plain ? std::string(text) : in_quotes(text);
}

// A number keeps its digits; exponents are not for submittals.
std::string json_scalar(std::string_view text) {
  const bool digits = text.find_first_not_of("-.0123456789") == std::string_view::npos;
  return digits && !text.empty() && !json_fault(text) ? std::string(text) : in_quotes(text);
}

constexpr Form yaml{yaml_scalar, yaml_scalar, false};
constexpr Form json{in_quotes, json_scalar, true};

class Writer {
 public:
  explicit Writer(const Form& form) : form_(form) {}

  std::string document(const Node& tree) {
    value(tree, 0, 0);
    out_ += out_.ends_with('\n') ? "" : "\n";
    return out_.starts_with('\n') ? out_.substr(1) : out_;
  }

 private:
  const Form& form_;
  std::string out_;

  [[nodiscard]] std::string scalar(const Node& node) const {
    return node.kind == Node::Kind::empty ? "null" : form_.scalar(node.text);
  }

  // On one line if that is short and nothing is nested in it.
  [[nodiscard]] std::optional<std::string> line(const Node& node) const {
    if (is_plain(node)) {
      return scalar(node);
    }
    const bool list = node.kind == Node::Kind::list;
    std::string out;
    for (const Node& item : node.items) {
      if (!is_plain(item)) {
        return std::nullopt;
      }
      out += (out.empty() ? "" : ", ") + scalar(item);
    }
    for (const Entry& entry : node.entries) {
      if (!is_plain(entry.value)) {
        return std::nullopt;
      }
      out += (out.empty() ? "" : ", ") + form_.name(entry.key) + ": " + scalar(entry.value);
    }
    if (out.size() > widest_line) {
      return std::nullopt;
    }
    return list ? "[" + out + "]" : "{" + out + "}";
  }

  void new_line(std::size_t indent) {
    out_ += "\n";
    out_.append(indent, ' ');
  }

  void value(const Node& node, std::size_t indent, std::size_t depth) {
    const auto short_form = depth == 0 ? std::nullopt : line(node);
    if (short_form || (node.items.empty() && node.entries.empty())) {
      out_ += short_form.value_or(node.kind == Node::Kind::list ? "[]" : is_plain(node) ? scalar(node) : "{}");
    } else if (form_.json) {
      json_children(node, indent, depth);
    } else {
      yaml_children(node, indent, depth);
    }
  }

  void json_children(const Node& node, std::size_t indent, std::size_t depth) {
    const bool list = node.kind == Node::Kind::list;
    std::string_view comma;
    out_ += list ? "[" : "{";
    for (const Node& item : node.items) {
      out_ += comma;
      new_line(indent + 2);
      value(item, indent + 2, depth + 1);
      comma = ",";
    }
    for (const Entry& entry : node.entries) {
      out_ += comma;
      new_line(indent + 2);
      out_ += form_.name(entry.key) + ": ";
      value(entry.value, indent + 2, depth + 1);
      comma = ",";
    }
    new_line(indent);
    out_ += list ? "]" : "}";
  }

  void yaml_children(const Node& node, std::size_t indent, std::size_t depth) {
    for (const Node& item : node.items) {
      new_line(indent);
      out_ += "- ";
      const std::size_t from = out_.size();
      value(item, indent + 2, depth + 1);
      if (from < out_.size() && out_[from] == '\n') {  // the first child stands behind the dash
        out_.erase(from, indent + 3);
      }
    }
    for (const Entry& entry : node.entries) {
      new_line(indent);
      out_ += form_.name(entry.key) + ":";
      out_ += line(entry.value) || (entry.value.items.empty() && entry.value.entries.empty()) ? " " : "";
      value(entry.value, indent + 2, depth + 1);
    }
  }
};

}  // namespace

std::string to_yaml(const Node& tree) { return Writer(yaml).document(tree); }

std::string to_json(const Node& tree) { return Writer(json).document(tree); }

bool same_values(const Node& one, const Node& other) {
  if (one.kind != other.kind || one.text != other.text || one.items.size() != other.items.size() ||
      one.entries.size() != other.entries.size()) {
    return false;
  }
  const auto same_entry = [&](const Entry& entry) {
    const Node* found = other.find(entry.key);
    return found != nullptr && same_values(entry.value, *found);
  };
  return std::equal(one.items.begin(), one.items.end(), other.items.begin(), same_values) &&
         std::all_of(one.entries.begin(), one.entries.end(), same_entry);
}

}  // namespace plumbrule::evidence
