// SPDX-License-Identifier: Apache-2.0
#include "lesson/series.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"
#include "deduce/technique.h"

namespace cp {

namespace {

class AboutReader {
 public:
  explicit AboutReader(std::string_view text) : text_(text) {}

  Result<SeriesAbout> read() {
    if (trimmed(text_).empty()) return about_;
    std::size_t start = 0;
    while (start < text_.size() && !fault_) {
      const std::size_t end = std::min(text_.find('\n', start), text_.size());
      ++line_;
      take(trimmed(text_.substr(start, end - start)));
      start = end + 1;
    }
    if (fault_) return std::move(*fault_);
    return std::move(about_);
  }

 private:
  void complain(std::string_view piece, std::string message, std::string hint) {
    if (!fault_) fault_ = Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {static_cast<std::size_t>(piece.data() - text_.data()), piece.size(), line_, 1}};
  }

  void take(std::string_view line) {
    if (line_ == 1) {
      if (line != kSeriesFirstLine) complain(line, "this is no series", "the first line is: " + std::string(kSeriesFirstLine));
      return;
    }
    if (line.empty()) {
      is_open_ = false;
      return;
    }
    if (line.front() == '%') return;
    const std::size_t colon = line.find(':');
    const std::string_view key = trimmed(line.substr(0, colon));
    const bool is_key = about_.words.empty() && colon != std::string_view::npos && (key == "title" || key == "language" || key == "assumes");
    if (is_key) return take_key(key, trimmed(line.substr(colon + 1)), line);
    if (is_open_) about_.words.back() += " " + std::string(line);
    else about_.words.emplace_back(line);
    is_open_ = true;
  }

  void take_key(std::string_view key, std::string_view value, std::string_view line) {
    if (value.empty()) return complain(line, "'" + std::string(key) + "' says nothing", "leave the line out, or write a value after the colon");
    if (key == "title") about_.title = value;
    if (key == "language") about_.language = value;
    if (key == "assumes") about_.assumes = split(value, ',');
  }

  std::string_view text_;
  SeriesAbout about_;
  int line_ = 0;
  bool is_open_ = false;
  std::optional<Error> fault_;
};

// What pupils know at some point: names of techniques and ideas; a family stands for all its techniques.
class Known {
 public:
  explicit Known(const std::vector<std::string>& names) { add(names); }
  void add(const std::vector<std::string>& names) { names_.insert(names.begin(), names.end()); }
  [[nodiscard]] bool has(const std::string& name) const {
    if (names_.count(name) != 0) return true;
    const auto technique = find_technique(name);
    return technique && names_.count(std::string((*technique)->family)) != 0;
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
