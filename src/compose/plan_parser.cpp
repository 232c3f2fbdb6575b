// SPDX-License-Identifier: Apache-2.0
// Reads the text form of plans. Whatever is wrong is said with its line and what would be right.
#include <algorithm>
#include <optional>

#include "base/text.h"
#include "compose/detail/plan_words.h"
#include "compose/plan.h"
#include "path/selection.h"

namespace cp {

namespace {

constexpr std::array<std::string_view, 12> kKeys = {"title", "idea", "level", "slack", "before", "without", "after", "givens", "symmetry", "look", "minimal", "pattern"};

std::optional<int> small_number(std::string_view text) {
  if (text.empty() || text.size() > 2) return std::nullopt;
  int number = 0;
  for (const char character : text) {
    if (character < '0' || character > '9') return std::nullopt;
    number = 10 * number + (character - '0');
  }
  return number;
}

struct Range {
  int least = 0;
  int most = 0;
};

// "5", "4-7", "at least 5", "at most 5".
std::optional<Range> range_of(std::string_view text) {
  const auto after = [&](std::string_view words) { return text.starts_with(words) ? small_number(trimmed(text.substr(words.size()))) : std::nullopt; };
  if (const auto least = after("at least ")) return Range{*least, detail::kNoMost};
  if (const auto most = after("at most ")) return Range{0, *most};
  const std::size_t dash = text.find('-');
  const auto least = small_number(trimmed(text.substr(0, dash)));
  const auto most = dash == std::string_view::npos ? least : small_number(trimmed(text.substr(dash + 1)));
  if (!least || !most || *least > *most) return std::nullopt;
  return Range{*least, *most};
}

class PlanReader {
 public:
  explicit PlanReader(std::string_view text) : text_(text) {}

  Result<Plan> read() {
    if (trimmed(text_).empty()) return first_line_fault(text_);
    std::size_t start = 0;
    while (start < text_.size() && !fault_) {
      const std::size_t end = std::min(text_.find('\n', start), text_.size());
      ++line_;
      line_start_ = start;
      take(trimmed(text_.substr(start, end - start)));
      start = end + 1;
    }
    if (!fault_ && !seen("idea")) complain({}, "the plan names no idea", "add a line such as: idea: 3 rows against 4 columns");
    if (!fault_ && is_drawing_) finish_pattern();
    if (fault_) return std::move(*fault_);
    return std::move(plan_);
  }

 private:
  Error first_line_fault(std::string_view piece) {
    complain(piece, "this is no plan", "the first line is: " + std::string(kPlanFirstLine));
    return *fault_;
  }

  void complain(std::string_view piece, std::string message, std::string hint, ErrorCode code = ErrorCode::kBadArgument) {
    if (fault_) return;
    fault_ = Error{code, std::move(message), std::move(hint), piece.empty() ? TextSpan{} : place_of(piece)};
  }

  // Of a piece of the line that is read.
  [[nodiscard]] TextSpan place_of(std::string_view piece) const {
    const auto offset = static_cast<std::size_t>(piece.data() - text_.data());
    return {offset, piece.size(), line_, static_cast<int>(offset - line_start_) + 1};
  }

  [[nodiscard]] bool seen(std::string_view key) const { return std::find(seen_.begin(), seen_.end(), key) != seen_.end(); }

  void take(std::string_view line) {
    if (line_ == 1) {
      if (line != kPlanFirstLine) first_line_fault(line.empty() ? text_.substr(0, 1) : line);
      return;
    }
    if (line.empty() || line.front() == '%') return;
    if (is_drawing_ && take_row(line)) return;
    const std::size_t colon = line.find(':');
    const std::string_view key = trimmed(line.substr(0, colon));
    if (std::find(kKeys.begin(), kKeys.end(), key) == kKeys.end()) {
      return complain(key, "'" + std::string(key) + "' is no line of a plan", "the lines are: " + joined({kKeys.begin(), kKeys.end()}, ", "));
    }
    if (colon == std::string_view::npos) return complain(line, "there is no colon after '" + std::string(key) + "'", "write: " + std::string(key) + ": VALUE");
    if (key != "look" && key != "symmetry" && seen(key)) return complain(key, "'" + std::string(key) + "' stands twice", "keep one of the two lines");
    seen_.emplace_back(key);
    const std::string_view value = trimmed(line.substr(colon + 1));
    if (value.empty() != (key == "pattern")) {
      if (value.empty()) return complain(line, "'" + std::string(key) + "' says nothing", "leave the line out, or write a value after the colon");
      return complain(value, "the drawing starts on the line after 'pattern:'", "put each row of the grid on a line of its own");
    }
    take_key(key, value, line);
  }

  void take_key(std::string_view key, std::string_view value, std::string_view line) {
    if (key == "title") plan_.title = value;
    if (key == "idea") take_idea(value);
    if (key == "level") plan_.idea.level = number(value, 1, kHighestLevel, "level");
    if (key == "slack") plan_.idea.slack = number(value, 0, kMostFreeSlack, "slack");
    if (key == "before") plan_.before = names(value);
    if (key == "without") plan_.without = names(value);
    if (key == "after") plan_.after = names(value);
    if (key == "givens") take_givens(value);
    if (key == "symmetry") take_symmetry(value);
    if (key == "look") take_look(value);
    if (key == "minimal") take_minimal(value);
    if (key == "pattern") {
      is_drawing_ = true;
      drawing_line_ = line;
      drawing_number_ = line_;
    }
  }

  int number(std::string_view value, int low, int high, std::string_view what) {
    const auto read = small_number(value);
    if (read && *read >= low && *read <= high) return *read;
    complain(value, "'" + std::string(value) + "' is no " + std::string(what), "write a number from " + to_text(low) + " to " + to_text(high));
    return low;
  }

  std::vector<std::string> names(std::string_view value) {
    std::vector<std::string> list;
    if (value == "nothing") return list;
    for (std::string& name : split(value, ',')) {
      const auto selection = select_techniques({name}, {});
      if (!selection) {
        const std::size_t at = value.find(name);
        complain(name.empty() ? value : value.substr(at, name.size()), selection.error().message, selection.error().hint, ErrorCode::kBadName);
        return list;
      }
      if (std::find(list.begin(), list.end(), name) == list.end()) list.push_back(std::move(name));
    }
    return list;
  }

  void take_idea(std::string_view value) {
    PlannedIdea& idea = plan_.idea;
    if (value == "any balance") return;
    if (value.starts_with("technique ")) {
      const std::string_view id = trimmed(value.substr(10));
      const auto technique = find_technique(id);
      if (!technique) return complain(id, technique.error().message, technique.error().hint, ErrorCode::kBadName);
      idea.kind = PlannedIdea::Kind::kTechnique;
      idea.technique = id;
      return;
    }
    constexpr std::string_view kBetween = " against ";
    const std::size_t between = value.find(kBetween);
    if (between == std::string_view::npos) {
      return complain(value, "'" + std::string(value) + "' is no idea", "write 'c1,c2 against r3,r7', '3 rows against 4 columns', 'any balance' or 'technique xy-wing'");
    }
    const std::string_view left = trimmed(value.substr(0, between));
    const std::string_view right = trimmed(value.substr(between + kBetween.size()));
    if (is_of_a_kind(left) || is_of_a_kind(right)) {
      idea.kind = PlannedIdea::Kind::kOfAKind;
      idea.left = kinds(left);
      idea.right = kinds(right);
      return;
    }
    idea.kind = PlannedIdea::Kind::kHouses;
    take_pans(value, left, right);
  }

  void take_pans(std::string_view value, std::string_view left, std::string_view right) {
    std::vector<Weight> weights;
    for (const auto& [pan, is_left] : {std::pair{left, true}, std::pair{right, false}}) {
      const auto read = is_left ? parse_pans(plan_shape(), pan, "") : parse_pans(plan_shape(), "", pan);  // no pan of a plan is empty
      if (!read) {
        const TextSpan& where = read.error().where;
        const std::string_view piece = where.is_known() ? pan.substr(where.offset, where.length) : pan;
        return complain(piece.empty() ? value : piece, read.error().message, read.error().hint, read.error().code);
      }
      weights.insert(weights.end(), read->begin(), read->end());
    }
    plan_.idea.weights = weigh(Position(plan_shape()), weights).weights;
    if (plan_.idea.weights.size() < 2) complain(value, "the two pans take each other away", "put different houses into them");
  }

  // "3 rows", "2 columns + 1 box": a word that is a number comes first.
  static bool is_of_a_kind(std::string_view pan) { return small_number(pan.substr(0, pan.find(' '))).has_value(); }

  std::array<int, 3> kinds(std::string_view pan) {
    std::array<int, 3> counts{};
    for (const std::string& part : split(pan, '+')) {
      const std::size_t blank = part.find(' ');
      const auto count = small_number(std::string_view(part).substr(0, blank));
      const std::string_view noun = blank == std::string::npos ? std::string_view() : trimmed(std::string_view(part).substr(blank));
      const auto kind = std::find_if(detail::kKindNames.begin(), detail::kKindNames.end(), [&](std::string_view name) {
        const std::string_view ending = noun.starts_with(name) ? noun.substr(name.size()) : "none";
        return ending.empty() || ending == "s" || ending == "es";
      });
      if (!count || *count < 1 || *count > plan_shape().side() || kind == detail::kKindNames.end()) {
        complain(pan, "'" + part + "' is no number of houses", "write for example '3 rows', '4 columns' or '2 rows + 1 box'");
        return counts;
      }
      counts[static_cast<std::size_t>(kind - detail::kKindNames.begin())] += *count;
    }
    return counts;
  }

  void take_givens(std::string_view value) {
    const auto range = range_of(value);
    const int cells = plan_shape().cell_count();
    if (!range || range->least > cells) return complain(value, "'" + std::string(value) + "' is no number of givens", "write for example 24-28, 26 or 'at most 28'");
    plan_.least_givens = range->least;
    plan_.most_givens = std::min(range->most, cells);
  }

  void take_symmetry(std::string_view value) {
    const auto& all = detail::kSymmetryNames;
    const auto found = std::find(all.begin(), all.end(), value);
    if (found == all.end()) return complain(value, "'" + std::string(value) + "' is no symmetry", "the symmetries are: " + joined({all.begin(), all.end()}, ", "));
    const auto symmetry = static_cast<Symmetry>(found - all.begin());
    auto& list = plan_.symmetries;
    const auto at = std::lower_bound(list.begin(), list.end(), symmetry);
    if (at == list.end() || *at != symmetry) list.insert(at, symmetry);
  }

  void take_minimal(std::string_view value) {
    if (value != "yes" && value != "no") return complain(value, "'" + std::string(value) + "' is neither yes nor no", "write: minimal: yes");
    plan_.minimal = value == "yes";
  }

  // "left all but 1", "r1,r2 at most 9".
  void take_look(std::string_view value) {
    Look look;
    const std::string_view region = value.substr(0, value.find(' '));
    const std::string_view count = trimmed(value.substr(region.size()));
    const auto named = std::find(detail::kRegionNames.begin(), detail::kRegionNames.end(), region);
    if (named != detail::kRegionNames.end()) {
      look.region = static_cast<Look::Region>(named - detail::kRegionNames.begin());
    } else {
      look.region = Look::Region::kHouses;
      const auto houses = parse_pans(plan_shape(), region, "");
      if (!houses) return complain(region, "'" + std::string(region) + "' is no region of the board", "write left, right, cancelled, outside, or houses such as r1,r2,b5");
      for (const Weight& each : *houses) look.houses.push_back(each.house);
      std::sort(look.houses.begin(), look.houses.end());
      look.houses.erase(std::unique(look.houses.begin(), look.houses.end()), look.houses.end());
    }
    if (!take_count(count, look)) {
      return complain(count.empty() ? value : count, "'" + std::string(count) + "' says no number of givens", "write all, all but 1, none, 5, 4-7, at least 5 or at most 5");
    }
    look.where = place_of(value);
    plan_.looks.push_back(std::move(look));
  }

  static bool take_count(std::string_view count, Look& look) {
    Range range;
    if (count == "all" || count.starts_with("all but ")) {
      look.counts_empty = true;
      if (count != "all") {
        const auto empty = range_of(trimmed(count.substr(8)));
        if (!empty || empty->most >= detail::kNoMost) return false;
        range = *empty;
      }
    } else if (count != "none") {
      const auto givens = range_of(count);
      if (!givens) return false;
      range = *givens;
    }
    look.least = range.least;
    look.most = range.most;
    return true;
  }

  // One row of the drawing; false when the drawing is over and this is another line.
  bool take_row(std::string_view line) {
    const auto cells = static_cast<std::size_t>(plan_shape().cell_count());
    if (line.find_first_not_of("-+=| ") == std::string_view::npos) return true;  // a rule between the boxes
    if (plan_.pattern.size() == cells) {
      is_drawing_ = false;
      return false;
    }
    std::string row;
    for (std::size_t i = 0; i < line.size(); ++i) {
      const char character = line[i];
      if (character == ' ' || character == '|' || character == '\t') continue;
      if (character != kMayHold && character != kMustHold && character != kStaysEmpty && (character < '1' || character > '9')) {
        complain(line.substr(i, 1), "'" + std::string(1, character) + "' is no cell of a pattern", "? may hold a given, x must, . must not, and a digit is given");
        return true;
      }
      row += character;
    }
    if (static_cast<int>(row.size()) != plan_shape().side()) {
      complain(line, "this row of the pattern has " + counted(static_cast<int>(row.size()), "cell"), "each of the nine rows has nine: ? may hold a given, x must, . must not, and a digit is given");
    }
    plan_.pattern += row;
    return true;
  }

  void finish_pattern() {
    const int rows = static_cast<int>(plan_.pattern.size()) / plan_shape().side();
    if (rows == plan_shape().side()) return;
    line_ = drawing_number_;
    line_start_ = static_cast<std::size_t>(drawing_line_.data() - text_.data());
    complain(drawing_line_, "the pattern has " + counted(rows, "row"), "draw all nine rows");
  }

  std::string_view text_;
  Plan plan_;
  std::vector<std::string> seen_;
  std::string_view drawing_line_;
  std::size_t line_start_ = 0;
  int line_ = 0;
  int drawing_number_ = 0;
  bool is_drawing_ = false;
  std::optional<Error> fault_;
};

}  // namespace

Result<Plan> parse_plan(std::string_view text) { return PlanReader(text).read(); }

}  // namespace cp
