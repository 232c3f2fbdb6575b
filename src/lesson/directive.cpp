// SPDX-License-Identifier: Apache-2.0
#include "lesson/directive.h"

#include <algorithm>
#include <array>

#include "balance/weighing.h"
#include "base/small_letters.h"
#include "base/text.h"
#include "deduce/basics.h"
#include "grid/notation.h"
#include "path/selection.h"

namespace cp {

namespace {

constexpr std::array<std::pair<std::string_view, BalanceView>, 8> kViews = {{{"houses", BalanceView::kHouses},
                                                                            {"remainders", BalanceView::kRemainders},
                                                                            {"known", BalanceView::kKnown},
                                                                            {"tally", BalanceView::kTally},
                                                                            {"fit", BalanceView::kFit},
                                                                            {"shares", BalanceView::kShares},
                                                                            {"cases", BalanceView::kCases},
                                                                            {"falls", BalanceView::kFalls}}};

constexpr std::string_view kAllDirectives = "the directives are @singles, @basics, @apply, @step, @balance, @let, @show, @claim, @board, @time, @solution, @grid and @aside";
constexpr std::string_view kStepHint = "write it like this: @step r5c7 <> 4, r5c8 <> 4 by x-wing, or @step r3c4 = 5";
constexpr std::string_view kBalanceHint = "write it like this: @balance left c1,c2 right r3,r7 name ring (none for a pan without houses)";
constexpr std::string_view kBoardHint = "the wishes are: candidates all (or none, or cells); digits 5; focus CELLS; frame r3c4 = 5; strike r3c4 <> 5; after; hide";

// Reads one directive; the first fault is kept.
class DirectiveReader {
 public:
  DirectiveReader(const DirectiveScope& scope, const WrittenLine& line) : scope_(scope), shape_(scope.position.shape()), line_(line), text_(line.text) {}

  Result<Directive> read() {
    Directive d;
    using Kind = Directive::Kind;
    if (line_.name == "singles" || line_.name == "basics") {
      d.kind = Kind::kApply;
      d.techniques = line_.name == "singles" ? std::vector<std::string>{"single"} : basic_families();
      want_nothing();
    } else if (line_.name == "apply") {
      read_apply(d);
    } else if (line_.name == "step") {
      read_step(d);
    } else if (line_.name == "balance") {
      read_balance(d);
    } else if (line_.name == "let") {
      read_let(d);
    } else if (line_.name == "show") {
      read_show(d);
    } else if (line_.name == "claim") {
      read_claim(d);
    } else if (line_.name == "board") {
      read_board(d);
    } else if (line_.name == "time") {
      read_time(d);
    } else if (line_.name == "solution") {
      d.kind = Kind::kSolution;
      want_nothing();
    } else if (line_.name == "grid" || line_.name == "aside") {
      d.kind = line_.name == "grid" ? Kind::kGrid : Kind::kAside;
      read_grid(d);
    } else {
      fault_ = Error{ErrorCode::kBadName, "there is no directive @" + line_.name, std::string(kAllDirectives), {}};
    }
    if (fault_) return at_line(line_, std::move(*fault_));
    return d;
  }

 private:
  void complain(std::string_view piece, std::string message, std::string_view hint, ErrorCode code = ErrorCode::kBadArgument) {
    if (fault_) return;
    const bool is_inside = piece.data() >= text_.data() && piece.data() <= text_.data() + text_.size();
    const std::size_t offset = is_inside ? static_cast<std::size_t>(piece.data() - text_.data()) : 0;
    fault_ = Error{code, std::move(message), std::string(hint), {offset, piece.size(), 1, 1}};
  }
  // An error of another reader about a piece of the text.
  void pass_on(std::string_view piece, Error error) {
    if (fault_) return;
    const std::size_t offset = static_cast<std::size_t>(piece.data() - text_.data());
    error.where = {offset + error.where.offset, error.where.length == 0 ? piece.size() : error.where.length, 1, 1};
    fault_ = std::move(error);
  }

  void want_nothing() {
    if (!text_.empty()) complain(text_, "@" + line_.name + " stands alone; '" + std::string(text_.substr(0, 40)) + "' is too much", "put words for the audience on a line of their own");
  }

  // The first word, which is taken off.
  static std::string_view take_word(std::string_view& rest) {
    rest = trimmed(rest);
    const std::string_view word = rest.substr(0, std::min(rest.find_first_of(" \t"), rest.size()));
    rest = trimmed(rest.substr(word.size()));
    return word;
  }
  // Where a word stands by itself; npos if nowhere.
  static std::size_t find_word(std::string_view text, std::string_view word) {
    for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
      const bool starts = at == 0 || text[at - 1] == ' ' || text[at - 1] == '\t';
      const std::size_t end = at + word.size();
      if (starts && (end == text.size() || text[end] == ' ' || text[end] == '\t')) return at;
    }
    return std::string_view::npos;
  }

  void read_apply(Directive& d) {
    d.kind = Directive::Kind::kApply;
    const std::vector<std::string> known = technique_names();
    std::string_view rest = text_;
    while (!rest.empty() && !fault_) {
      const std::size_t comma = std::min(rest.find(','), rest.size());
      const std::string_view name = trimmed(rest.substr(0, comma));
      rest = comma < rest.size() ? rest.substr(comma + 1) : std::string_view();
      if (std::find(known.begin(), known.end(), name) == known.end()) {
        complain(name, "'" + std::string(name) + "' is not a technique", "name techniques or families, as in @apply single, locked; the list is docs/manual/techniques.md", ErrorCode::kBadName);
      } else if (name == kBalanceId) {
        complain(name, "balances are not applied in a run", "give each balance a line of its own: @balance, then @step ... by its name");
      } else {
        d.techniques.emplace_back(name);
      }
    }
    if (d.techniques.empty()) complain(text_, "@apply needs the names of techniques", "as in @apply single, locked");
  }

  // "r3c4 = 5", "r5c7 <> 4", with several digits "r5c7 <> 46".
  void read_conclusion(std::string_view piece, std::vector<Candidate>& placed, std::vector<Candidate>& gone) {
    struct Sign {
      std::string_view text;
      bool is_equal;
    };
    static constexpr std::array<Sign, 4> kSigns = {{{"<>", false}, {"!=", false}, {"\xE2\x89\xA0", false}, {"=", true}}};
    for (const Sign& sign : kSigns) {
      const std::size_t at = piece.find(sign.text);
      if (at == std::string_view::npos) continue;
      const std::string_view name = trimmed(piece.substr(0, at));
      const std::string_view digits = trimmed(piece.substr(at + sign.text.size()));
      const auto cell = shape_.parse_cell(name);
      if (!cell) return pass_on(name, cell.error());
      if (digits.empty() || (sign.is_equal && digits.size() > 1)) return complain(digits.empty() ? piece : digits, "a digit is wanted here", kStepHint);
      for (std::size_t i = 0; i < digits.size(); ++i) {
        const auto digit = digit_from(digits[i], shape_);
        if (!digit) return complain(digits.substr(i, 1), "'" + std::string(digits.substr(i, 1)) + "' is no digit of this grid", kStepHint);
        (sign.is_equal ? placed : gone).push_back({*cell, *digit});
      }
      return;
    }
    complain(piece, piece.empty() ? "a conclusion is missing" : "'" + std::string(piece.substr(0, 40)) + "' is no conclusion", kStepHint);
  }
  void read_conclusions(std::string_view text, std::vector<Candidate>& placed, std::vector<Candidate>& gone) {
    std::size_t from = 0;
    while (from <= text.size() && !fault_) {
      const std::size_t to = std::min(text.find(',', from), text.size());
      read_conclusion(trimmed(text.substr(from, to - from)), placed, gone);
      from = to + 1;
    }
    for (std::vector<Candidate>* list : {&placed, &gone}) {
      std::sort(list->begin(), list->end());
      list->erase(std::unique(list->begin(), list->end()), list->end());
    }
  }

  void read_step(Directive& d) {
    d.kind = Directive::Kind::kStep;
    const std::size_t by = find_word(text_, "by");
    if (by != std::string_view::npos) {
      const std::string_view name = trimmed(text_.substr(by + 2));
      d.name = name;
      const bool is_technique = find_technique(name).is_ok();
      if (!is_technique && scope_.names.balance(d.name) == nullptr) {
        complain(name.empty() ? text_.substr(by) : name, name.empty() ? "a name is missing after 'by'" : "'" + d.name + "' is neither a technique nor a balance of this lesson",
                 "name a technique of docs/manual/techniques.md, or a balance given before with @balance", ErrorCode::kBadName);
      }
    }
    read_conclusions(trimmed(text_.substr(0, by)), d.placements, d.eliminations);
  }

  void read_balance(Directive& d) {
    d.kind = Directive::Kind::kBalance;
    const std::size_t left = find_word(text_, "left");
    const std::size_t right = find_word(text_, "right");
    if (left != 0 || right == std::string_view::npos) return complain(text_, "the pans are missing", kBalanceHint);
    const std::size_t name = find_word(text_, "name");
    if (name == std::string_view::npos || name < right) return complain(text_.substr(text_.size()), "the balance needs a name", kBalanceHint);
    const std::string_view left_pan = trimmed(text_.substr(4, right - 4));
    const std::string_view right_pan = trimmed(text_.substr(right + 5, name - right - 5));
    for (const std::string_view pan : {left_pan, right_pan}) {
      if (auto alone = parse_pan(shape_, pan, true); !alone) return pass_on(pan, alone.error());
    }
    auto weights = parse_pans(shape_, left_pan, right_pan);
    if (!weights) return pass_on(text_, weights.error());
    d.weights = weigh(scope_.position, *weights).weights;
    if (d.weights.empty()) return complain(text_, "the two pans take each other away", kBalanceHint);
    d.name = in_small_letters(trimmed(text_.substr(name + 4)));
    check_name(trimmed(text_.substr(name + 4)), d.name, kBalanceHint);
  }

  void check_name(std::string_view piece, const std::string& name, std::string_view hint) {
    const bool is_word = !name.empty() && std::all_of(name.begin(), name.end(), [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; });
    if (!is_word || (name[0] >= '0' && name[0] <= '9') || !is_free_name(shape_, name) || find_technique(name).is_ok()) {
      complain(piece.empty() ? text_ : piece, "'" + name + "' cannot be a name", std::string("a name has letters, digits and '_', and is no word of the claims; ") + std::string(hint));
    } else if (scope_.names.has(name)) {
      complain(piece, "the name '" + name + "' is taken", "choose another");
    }
  }

  void read_let(Directive& d) {
    d.kind = Directive::Kind::kLet;
    static constexpr std::string_view kHint = "write it like this: @let far = r3c4 r6c1";
    const std::size_t equals = text_.find('=');
    if (equals == std::string_view::npos) return complain(text_, "'=' is missing after the name", kHint);
    d.name = in_small_letters(trimmed(text_.substr(0, equals)));
    check_name(trimmed(text_.substr(0, equals)), d.name, kHint);
    const std::string_view cells = trimmed(text_.substr(equals + 1));
    auto group = parse_group(scope_.position, scope_.names, cells);
    if (!group) return pass_on(cells, group.error());
    d.cells = std::move(group).value();
  }

  void read_show(Directive& d) {
    d.kind = Directive::Kind::kShow;
    std::string_view rest = text_;
    const std::string_view name = take_word(rest);
    static constexpr std::string_view kHint = "write it like this: @show ring tally; the views are houses, remainders, known, tally, fit, shares, cases and falls";
    d.name = in_small_letters(name);
    if (scope_.names.balance(d.name) == nullptr) return complain(name, "no balance is called '" + d.name + "' yet", kHint, ErrorCode::kBadName);
    const std::string_view all = rest;
    const auto view = view_of(take_word(rest));
    if (!view) return complain(all, "'" + std::string(all) + "' is no view of a balance", kHint, ErrorCode::kBadName);
    d.view = *view;
    if (d.view != BalanceView::kCases && !rest.empty()) return complain(rest, "'" + std::string(rest) + "' is too much after the view", kHint);
    for (std::size_t i = 0; i < rest.size(); ++i) {
      if (rest[i] == ' ' || rest[i] == ',') continue;
      const auto digit = digit_from(rest[i], shape_);
      if (!digit) return complain(rest.substr(i, 1), "'" + std::string(rest.substr(i, 1)) + "' is no digit of this grid", "write the digits that the case supposes to be shared, as in @show ring cases 2");
      ++d.supposed[digit->index];
    }
  }

  void read_claim(Directive& d) {
    d.kind = Directive::Kind::kClaim;
    const std::size_t split = find_word(text_, "footing");
    const std::string_view claim = trimmed(text_.substr(0, split));
    d.claim_text = claim;
    auto parsed = parse_claim(scope_.position, scope_.names, claim);
    if (!parsed) return pass_on(claim, parsed.error());
    d.claim = std::move(parsed).value();
    if (split == std::string_view::npos) {
      d.footing = Footing::all_rules(shape_);
      return;
    }
    const std::string_view footing = trimmed(text_.substr(split + 7));
    d.footing_text = footing;
    auto read = parse_footing(shape_, scope_.names, footing, scope_.claims);
    if (!read) return pass_on(footing, read.error());
    d.footing = std::move(read).value();
  }

  void read_board(Directive& d) {
    d.kind = Directive::Kind::kBoard;
    std::size_t from = 0;
    while (from <= text_.size() && !fault_) {
      const std::size_t to = std::min(text_.find(';', from), text_.size());
      read_wish(trimmed(text_.substr(from, to - from)), d.board);
      from = to + 1;
    }
  }
  void read_wish(std::string_view piece, BoardWish& wish) {
    std::string_view rest = piece;
    const std::string_view word = take_word(rest);
    if (word == "hide" && rest.empty()) {
      wish.is_hidden = true;
    } else if (word == "after" && rest.empty()) {
      wish.is_after = true;
    } else if (word == "candidates") {
      if (rest == "all") wish.candidates = scope_.position.open();
      else if (rest == "none") wish.candidates = CellSet();
      else wish.candidates = cells(rest);
    } else if (word == "focus") {
      wish.focus |= cells(rest);
    } else if (word == "digits") {
      if (rest.empty()) return complain(piece, "digits are missing", kBoardHint);
      for (std::size_t i = 0; i < rest.size(); ++i) {
        if (rest[i] == ' ' || rest[i] == ',') continue;
        const auto digit = digit_from(rest[i], shape_);
        if (!digit) return complain(rest.substr(i, 1), "'" + std::string(rest.substr(i, 1)) + "' is no digit of this grid", kBoardHint);
        wish.lens.add(*digit);
      }
    } else if (word == "frame") {
      std::vector<Candidate> none;
      read_conclusions(rest, wish.framed, none);
      if (!none.empty()) complain(rest, "candidates to be framed are written r3c4 = 5", kBoardHint);
    } else if (word == "strike") {
      std::vector<Candidate> none;
      read_conclusions(rest, none, wish.struck);
      if (!none.empty()) complain(rest, "candidates to be struck are written r3c4 <> 5", kBoardHint);
    } else {
      complain(piece.empty() ? text_ : piece, piece.empty() ? "a wish is missing" : "'" + std::string(piece.substr(0, 40)) + "' is no wish for the board", kBoardHint);
    }
  }
  CellSet cells(std::string_view text) {
    const auto group = parse_group(scope_.position, scope_.names, text);
    if (group) return cells_of(*group);
    pass_on(text, group.error());
    return {};
  }

  // "45s", "2m", "1m30s".
  void read_time(Directive& d) {
    d.kind = Directive::Kind::kTime;
    static constexpr std::string_view kHint = "write 45s, 2m or 1m30s; at most an hour";
    int number = -1;
    for (const char c : text_) {
      if (c >= '0' && c <= '9') {
        number = std::min(std::max(number, 0) * 10 + (c - '0'), 100'000);
      } else if (c == 'm' && number >= 0) {
        d.seconds += std::min(number, 60) * 60;
        number = -1;
      } else if (c == 's' && number >= 0) {
        d.seconds += number;
        number = -1;
      } else if (c != ' ') {
        return complain(text_, "'" + std::string(text_.substr(0, 20)) + "' is no time", kHint);
      }
    }
    if (number >= 0 || d.seconds < 1 || d.seconds > 3600) complain(text_, text_.empty() ? "the time is missing" : "'" + std::string(text_.substr(0, 20)) + "' is no time", kHint);
  }

  void read_grid(Directive& d) {
    auto position = parse_position(text_);
    if (!position) return pass_on(text_, position.error());
    d.grid = std::move(position).value();
  }

  const DirectiveScope& scope_;
  const Shape& shape_;
  const WrittenLine& line_;
  std::string_view text_;
  std::optional<Error> fault_;
};

}  // namespace

std::optional<BalanceView> view_of(std::string_view name) {
  for (const auto& [word, view] : kViews) {
    if (word == name) return view;
  }
  return std::nullopt;
}

Result<Directive> read_directive(const DirectiveScope& scope, const WrittenLine& line) { return DirectiveReader(scope, line).read(); }

std::optional<Error> enter_name(const Shape& shape, const Directive& directive, Vocabulary& names) {
  const bool is_group = directive.kind == Directive::Kind::kLet;
  if (names.has(directive.name) || !is_free_name(shape, directive.name)) {
    return Error{ErrorCode::kBadArgument, "the name '" + directive.name + "' is taken", "choose another", {}};
  }
  if (is_group) names.groups.emplace(directive.name, directive.cells);
  else names.balances.push_back({directive.name, directive.weights});
  return std::nullopt;
}

std::string conclusions_text(const Shape& shape, const std::vector<Candidate>& placements, const std::vector<Candidate>& eliminations) {
  std::vector<std::string> items;
  for (const Candidate& each : placements) items.push_back(shape.name_of(each.cell) + " = " + std::string(1, Shape::name_of(each.digit)));
  for (const Candidate& each : eliminations) {
    const std::string start = shape.name_of(each.cell) + " <> ";
    if (!items.empty() && items.back().starts_with(start)) items.back() += Shape::name_of(each.digit);
    else items.push_back(start + Shape::name_of(each.digit));
  }
  return joined(items, ", ");
}

Error at_line(const WrittenLine& line, Error error) {
  int column = line.column;
  const std::size_t before = std::min(error.where.offset, line.text.size());
  for (std::size_t i = 0; i < before; ++i) column += (static_cast<unsigned char>(line.text[i]) & 0xC0U) != 0x80U ? 1 : 0;
  error.where.line = line.line;
  error.where.column = column;
  return error;
}

}  // namespace cp
