// SPDX-License-Identifier: Apache-2.0
#include "lesson/series.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "base/text.h"
#include "deduce/technique.h"
#include "lesson/written_lesson.h"
#include "path/selection.h"

namespace cp {

namespace {

class AboutReader {
 public:
  explicit AboutReader(std::string_view text) : text_(text) {}

  Result<SeriesAbout> read() {
    if (text_.empty()) return about_;
    std::size_t start = 0;
    while (start < text_.size() && !fault_) {
      const std::size_t end = std::min(text_.find('\n', start), text_.size());
      ++line_;
      line_start_ = start;
      take(trimmed(text_.substr(start, end - start)));
      start = end + 1;
    }
    if (fault_) return std::move(*fault_);
    return std::move(about_);
  }

 private:
  [[nodiscard]] TextSpan place_of(std::string_view piece) const {
    if (piece.empty()) return {line_start_, 0, line_, 1};
    const auto offset = static_cast<std::size_t>(piece.data() - text_.data());
    int column = 1;
    for (const char c : text_.substr(line_start_, offset - line_start_)) column += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
    return {offset, piece.size(), line_, column};
  }

  void complain(std::string_view piece, std::string message, std::string hint, ErrorCode code = ErrorCode::kBadArgument) {
    if (!fault_) fault_ = Error{code, std::move(message), std::move(hint), place_of(piece)};
  }

  void take(std::string_view line) {
    if (line_ == 1) {
      if (line != kSeriesFirstLine) complain(line, "this is no series", "the first line is: " + std::string(kSeriesFirstLine));
      return;
    }
    if (line.empty()) {
      is_open_ = false;
      is_front_ = false;
      return;
    }
    if (line.front() == '%') return;
    const std::size_t colon = line.find(':');
    const std::string_view key = trimmed(line.substr(0, colon));
    const bool is_key = colon != std::string_view::npos && std::find(kSeriesKeys.begin(), kSeriesKeys.end(), key) != kSeriesKeys.end();
    if (is_key && about_.words.empty()) return take_key(key, trimmed(line.substr(colon + 1)));
    if (is_front_) return complain_of_front(line, key);
    if (is_open_) about_.words.back() += " " + std::string(line);
    else about_.words.emplace_back(line);
    is_open_ = true;
  }

  // Up to the first empty line there are keys and nothing else: a slip there must not end up among the words for pupils.
  void complain_of_front(std::string_view line, std::string_view key) {
    if (key.size() == line.size()) return complain(line, "a line such as title: Four lessons is wanted here", "the words for the page start after an empty line");
    complain(key, "'" + std::string(key) + "' is not known here", "the keys are " + listed({kSeriesKeys.begin(), kSeriesKeys.end()}), ErrorCode::kBadName);
  }

  void take_key(std::string_view key, std::string_view value) {
    if (std::find(seen_.begin(), seen_.end(), key) != seen_.end()) return complain(key, "'" + std::string(key) + "' was given before", "say it once");
    seen_.push_back(key);
    if (value.empty()) return complain(key, "'" + std::string(key) + "' says nothing", "leave the line out, or write a value after the colon");
    if (key == "title") about_.title = value;
    if (key == "assumes") take_names(value);
    if (key != "language") return;
    if (!is_language_tag(value)) return complain(value, "'" + std::string(value.substr(0, 40)) + "' is no name of a language", "write a tag such as en, de or pt-BR");
    about_.language = value;
  }

  void take_names(std::string_view value) {
    for (std::size_t from = 0; from <= value.size();) {
      const std::size_t to = std::min(value.find(',', from), value.size());
      const std::string_view name = trimmed(value.substr(from, to - from));
      if (!is_idea_name(name)) {
        return complain(name.empty() ? value : name, "'" + std::string(name) + "' cannot be the name of a technique or an idea", "names are small letters, digits and '-', with commas between them");
      }
      about_.assumes.emplace_back(name);
      about_.places.push_back(place_of(name));
      from = to + 1;
    }
  }

  std::string_view text_;
  SeriesAbout about_;
  int line_ = 0;
  std::size_t line_start_ = 0;
  bool is_front_ = true;  // no empty line yet
  bool is_open_ = false;  // the next line goes on with the paragraph
  std::vector<std::string_view> seen_;
  std::optional<Error> fault_;
};

// What pupils know at some point: names of techniques and ideas; a family or a group stands for all its techniques.
class Known {
 public:
  explicit Known(const std::vector<std::string>& names) { add(names); }
  void add(const std::vector<std::string>& names) { names_.insert(names.begin(), names.end()); }
  [[nodiscard]] bool has(const std::string& name) const {
    if (names_.count(name) != 0) return true;
    const auto technique = find_technique(name);
    return technique && std::any_of(names_.begin(), names_.end(), [&technique](const std::string& known) { return means(known, **technique); });
  }

 private:
  std::set<std::string> names_;
};

bool can_follow(const Document& lesson, const Known& known) {
  return std::all_of(lesson.needs.begin(), lesson.needs.end(), [&known](const std::string& name) { return known.has(name); });
}

std::string teacher_of(const std::string& name, const std::vector<SeriesMember>& members) {
  for (const SeriesMember& member : members) {
    const auto& taught = member.document.teaches;
    if (std::find(taught.begin(), taught.end(), name) != taught.end()) return member.name;
  }
  return {};
}

void note_gaps(std::size_t number, const std::vector<SeriesMember>& members, const Known& before, std::vector<SeriesGap>& gaps) {
  const Document& lesson = members[number].document;
  for (const std::string& name : lesson.needs) {
    if (!before.has(name)) gaps.push_back({number, name, false, teacher_of(name, members)});
  }
  Known here = before;
  here.add(lesson.teaches);
  here.add(lesson.needs);
  for (const std::string& name : lesson.uses) {
    if (!here.has(name)) gaps.push_back({number, name, true, teacher_of(name, members)});
  }
}

}  // namespace

Result<SeriesAbout> parse_series(std::string_view text) { return AboutReader(text).read(); }

SeriesPlan plan_series(const SeriesAbout& about, const std::vector<SeriesMember>& members) {
  SeriesPlan plan;
  Known known(about.assumes);
  std::vector<std::size_t> left;
  for (std::size_t i = 0; i < members.size(); ++i) left.push_back(i);
  std::stable_sort(left.begin(), left.end(), [&members](std::size_t a, std::size_t b) {
    const SeriesMember& one = members[a];
    const SeriesMember& other = members[b];
    return one.document.level != other.document.level ? one.document.level < other.document.level : one.name < other.name;
  });
  while (!left.empty()) {
    auto next = std::find_if(left.begin(), left.end(), [&](std::size_t i) { return can_follow(members[i].document, known); });
    if (next == left.end()) next = left.begin();
    note_gaps(*next, members, known, plan.gaps);
    known.add(members[*next].document.teaches);
    plan.order.push_back(*next);
    left.erase(next);
  }
  std::map<std::string, std::vector<SeriesPlan::Mark>> rows;
  for (std::size_t place = 0; place < plan.order.size(); ++place) {
    const Document& lesson = members[plan.order[place]].document;
    const auto mark = [&](const std::vector<std::string>& names, SeriesPlan::Mark what) {
      for (const std::string& name : names) rows.try_emplace(name, members.size(), SeriesPlan::Mark::kNone).first->second[place] = what;
    };
    mark(lesson.needs, SeriesPlan::Mark::kNeeded);
    mark(lesson.uses, SeriesPlan::Mark::kUsed);
    mark(lesson.teaches, SeriesPlan::Mark::kTaught);
  }
  for (auto& [name, marks] : rows) plan.coverage.push_back({name, std::move(marks)});
  return plan;
}

}  // namespace cp
