#include "doors/command/manual.hpp"

#include "base/source/version.hpp"

#include "doors/command/options.hpp"

namespace plumbrule::command {
namespace {

// A text in roff: hyphens that can be copied, no escape, no line that reads as a request.
std::string roff(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    switch (letter) {
      case '\\':
        out += "\\e";
        break;
      case '-':
        out += "\\-";
        break;
      case '`':
        out += "\\(ga";
        break;
      case '\'':
        out += "\\(aq";
        break;
      case '\n':
        out += "\n.PP\n";
        break;
      default:
        out += letter;
    }
  }
  return out.empty() || out.front() != '.' ? out : "\\&" + out;
}

std::string bold(const std::string& text) { return "\\fB" + roff(text) + "\\fR"; }
std::string slanted(const std::string& text) { return "\\fI" + roff(text) + "\\fR"; }

bool several(const CLI::Option& option) { return option.get_items_expected_max() > 1; }

// The words of a choice as they are typed, the kind of any other value.
std::string value(const CLI::Option& option) {
  std::string out;
  for (const std::string& word : choices(option)) {
    out += (out.empty() ? "" : "|") + bold(word);
  }
  const ValueKind* const kind = value_kind(option);
  out = kind != nullptr ? slanted(std::string(kind->name)) : out;
  return out.empty() || !several(option) ? out : out + " ...";
}

std::string named(const CLI::Option& option) {
  if (option.get_positional()) {
    return slanted(option.get_name()) + (several(option) ? " ..." : "");
  }
  const std::string taken = value(option);
  return bold(option.get_name()) + (taken.empty() ? "" : " " + taken);
}

std::string usage(const CLI::App& command) {
  std::string out = bold("plumbrule " + command.get_name());
  for (const CLI::Option* option : command.get_options()) {
    if (option->get_required()) {
      out += " " + named(*option);
    } else if (option->get_positional()) {
      out += " [" + named(*option) + "]";
    }
  }
  return out + " [options]";
}

std::string entry(const CLI::Option& option) {
  const std::string names = option.get_name() == "--help" ? bold("-h") + ", " + bold("--help") : named(option);
  return ".TP\n" + names + "\n" + roff(option.get_description()) + ".\n";
}

std::string section(const CLI::App& command) {
  std::string out =
      ".SS " + roff(command.get_name()) + "\n" + roff(command.get_description()) + ".\n.PP\n" + usage(command) + "\n";
  for (const CLI::Option* option : command.get_options()) {
    out += entry(*option);
  }
  const std::string footer = command.get_footer();
  return out + ".PP\n" + roff(footer.substr(0, footer.find('\n'))) + "\n";
}

std::string written(const CLI::App& app, Form form) {
  switch (form) {
    case Form::bash:
      return bash_completion(app);
    case Form::zsh:
      return zsh_completion(app);
    case Form::fish:
      return fish_completion(app);
    default:
      return man_page(app);
  }
}

}  // namespace

std::string man_page(const CLI::App& app) {
  std::string out = ".\\\" Written by `plumbrule manual --form man`; do not edit.\n";
  out += R"(.TH PLUMBRULE 1 "" "plumbrule )" + std::string(source::version()) + R"(" "User commands")" + "\n";
  out += ".SH NAME\nplumbrule \\- check pavement\\-mix trial results against specification limits\n";
  out += ".SH SYNOPSIS\n" + bold("plumbrule") + " " + slanted("command") + " [arguments and options]\n";
  out += ".SH DESCRIPTION\n" + roff(app.get_description()) + ".\n";
  out += ".SH OPTIONS\n";
  for (const CLI::Option* option : app.get_options()) {
    out += entry(*option);
  }
  out += ".SH COMMANDS\n";
  for (const CLI::App* command : commands_of(app)) {
    out += section(*command);
  }
  return out + ".SH NOTES\n" + roff(app.get_footer()) + "\n";
}

Exit manual(const CLI::App& app, const ManualOptions& options) {
  return write_output(written(app, options.form), options.out) ? Exit::complies : Exit::unusable;
}

}  // namespace plumbrule::command
