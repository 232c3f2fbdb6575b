// SPDX-License-Identifier: Apache-2.0
#include "scan/record_json.h"

#include <nlohmann/json.hpp>

namespace cp {

namespace {

using Json = nlohmann::ordered_json;

// Written by hand: a scan writes millions of them. Names, puzzles and houses need no escapes; messages do.
class Writer {
 public:
  Writer& open(char bracket) {
    comma();
    text_ += bracket;
    is_first_ = true;
    return *this;
  }
  Writer& close(char bracket) {
    text_ += bracket;
    is_first_ = false;
    return *this;
  }
  Writer& key(std::string_view name) {
    comma();
    text_ += '"';
    text_ += name;
    text_ += "\":";
    is_first_ = true;
    return *this;
  }
  Writer& plain(std::string_view value) {
    comma();
    text_ += '"';
    text_ += value;
    text_ += '"';
    return *this;
  }
  Writer& escaped(const std::string& value) {
    comma();
    text_ += Json(value).dump(-1, ' ', false, Json::error_handler_t::replace);
    return *this;
  }
  template <typename Number>
  Writer& number(Number value) {
    comma();
    text_ += std::to_string(value);
    return *this;
  }
  Writer& truth(bool value) {
    comma();
    text_ += value ? "true" : "false";
    return *this;
  }
  Writer& names(const std::vector<std::string>& all) {
    open('[');
    for (const std::string& name : all) plain(name);
    return close(']');
  }
  std::string take() { return std::move(text_); }

 private:
  void comma() {
    if (!is_first_) text_ += ',';
    is_first_ = false;
  }
  std::string text_;
  bool is_first_ = true;
};

void write_path(Writer& out, const SurveyPath& path) {
  out.key("path").open('{');
  out.key("end").plain(path.end).key("steps").number(path.steps).key("hardest").number(path.hardest).key("technique").plain(path.technique);
  out.key("effort").number(path.effort).key("beyond_singles").number(path.beyond_singles);
  if (path.narrow >= 0) out.key("narrow").number(path.narrow).key("open_tenths").number(path.open_tenths);
  out.key("techniques").open('[');
  for (const TechniqueUse& use : path.techniques) {
    out.open('{').key("technique").plain(use.technique).key("steps").number(use.steps).close('}');
  }
  out.close(']').key("tail").names(path.tail).close('}');
}

void write_balances(Writer& out, const std::vector<BalanceNote>& balances) {
  out.key("balances").open('[');
  for (const BalanceNote& note : balances) {
    out.open('{').key("left").plain(note.left).key("right").plain(note.right).key("kind").plain(note.kind);
    out.key("surplus").number(note.surplus).key("slack").number(note.slack).key("free_slack").number(note.free_slack);
    out.key("level").number(note.level).key("load").number(note.load).key("eliminations").number(note.eliminations).close('}');
  }
  out.close(']');
}

// Takes values out of objects; remembers the first key that is missing or of another type.
class Reader {
 public:
  std::string text(const Json& json, const char* key) { return value<std::string>(json, key, [](const Json& at) { return at.is_string(); }); }
  int number(const Json& json, const char* key) { return value<int>(json, key, [](const Json& at) { return at.is_number_integer(); }); }
  std::uint64_t count(const Json& json, const char* key) { return value<std::uint64_t>(json, key, [](const Json& at) { return at.is_number_unsigned(); }); }
  int number_or(const Json& json, const char* key, int otherwise) { return json.is_object() && json.contains(key) ? number(json, key) : otherwise; }
  const Json& object(const Json& json, const char* key) { return member(json, key, [](const Json& at) { return at.is_object(); }); }
  const Json& list(const Json& json, const char* key) { return member(json, key, [](const Json& at) { return at.is_array(); }); }
  std::vector<std::string> names(const Json& json, const char* key) {
    std::vector<std::string> all;
    for (const Json& name : list(json, key)) {
      if (name.is_string()) all.push_back(name.get<std::string>());
      else note(key);
    }
    return all;
  }
  void note(const char* key) {
    if (fault_.empty()) fault_ = key;
  }
  [[nodiscard]] const std::string& fault() const { return fault_; }

 private:
  template <typename Test>
  const Json& member(const Json& json, const char* key, Test test) {
    static const Json kNothing = Json::array();
    const auto at = json.find(key);
    if (at != json.end() && test(*at)) return *at;
    note(key);
    return kNothing;
  }
  template <typename Value, typename Test>
  Value value(const Json& json, const char* key, Test test) {
    const Json& at = member(json, key, test);
    return fault_.empty() ? at.get<Value>() : Value{};
  }
  std::string fault_;
};

SurveyPath read_path(Reader& in, const Json& json) {
  SurveyPath path;
  path.end = in.text(json, "end");
  path.steps = in.number(json, "steps");
  path.hardest = in.number(json, "hardest");
  path.technique = in.text(json, "technique");
  path.effort = in.number(json, "effort");
  path.beyond_singles = in.number(json, "beyond_singles");
  path.narrow = in.number_or(json, "narrow", -1);
  path.open_tenths = in.number_or(json, "open_tenths", -1);
  for (const Json& use : in.list(json, "techniques")) path.techniques.push_back({in.text(use, "technique"), in.number(use, "steps")});
  path.tail = in.names(json, "tail");
  return path;
}

BalanceNote read_balance(Reader& in, const Json& json) {
  BalanceNote note;
  note.left = in.text(json, "left");
  note.right = in.text(json, "right");
  note.kind = in.text(json, "kind");
  note.surplus = in.number(json, "surplus");
  note.slack = in.number(json, "slack");
  note.free_slack = in.number(json, "free_slack");
  note.level = in.number(json, "level");
  note.load = in.number(json, "load");
  note.eliminations = in.number(json, "eliminations");
  return note;
}

SurveyRecord read_record(Reader& in, const Json& json) {
  SurveyRecord record;
  const auto depth = survey_depth_named(in.text(json, "depth"));
  if (!depth) in.note("depth");
  record.depth = depth.value_or(SurveyDepth::kForm);
  record.puzzle = in.text(json, "puzzle");
  record.givens = in.number(json, "givens");
  record.solutions = in.text(json, "solutions");
  record.canonical = in.text(json, "canonical");
  record.symmetries = in.count(json, "symmetries");
  if (!json.contains("path")) return record;
  record.path = read_path(in, in.object(json, "path"));
  record.open_after_basics = in.number(json, "open_after_basics");
  record.asked_needed = json.contains("needed");
  if (record.asked_needed) record.needed = in.names(json, "needed");
  for (const Json& balance : in.list(json, "balances")) record.balances.push_back(read_balance(in, balance));
  return record;
}

}  // namespace

std::string record_line(const SurveyRecord& record, std::uint64_t line) {
  Writer out;
  out.open('{');
  if (line > 0) out.key("line").number(line);
  out.key("puzzle").plain(record.puzzle).key("depth").plain(name_of(record.depth)).key("givens").number(record.givens);
  out.key("solutions").plain(record.solutions).key("canonical").plain(record.canonical).key("symmetries").number(record.symmetries);
  if (record.path) {
    write_path(out, *record.path);
    out.key("open_after_basics").number(record.open_after_basics);
    if (record.asked_needed) out.key("needed").names(record.needed);
    write_balances(out, record.balances);
  }
  return out.close('}').take();
}

std::string error_line(const Error& error, std::uint64_t line) {
  Writer out;
  out.open('{').key("line").number(line).key("error").open('{').key("message").escaped(error.message);
  if (!error.hint.empty()) out.key("hint").escaped(error.hint);
  return out.close('}').close('}').take();
}

Result<ScanLine> parse_scan_line(std::string_view text) {
  const auto wrong = [](const std::string& what) {
    return Error{ErrorCode::kBadArgument, "this is no line of a scan: " + what, "`counterpoise scan` writes such lines; docs/formats/scan.md describes them", {}};
  };
  const Json json = Json::parse(text, nullptr, false);
  if (!json.is_object()) return wrong("it is not a JSON object");
  Reader in;
  ScanLine line;
  if (json.contains("line")) line.line = in.count(json, "line");
  if (json.contains("error")) line.error = in.text(in.object(json, "error"), "message");
  else line.record = read_record(in, json);
  if (!in.fault().empty()) return wrong("its key \"" + in.fault() + "\" is missing or of another kind");
  return line;
}

}  // namespace cp
