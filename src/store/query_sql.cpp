// SPDX-License-Identifier: Apache-2.0
#include "store/query_sql.h"

#include <algorithm>
#include <limits>
#include <optional>

#include "base/text.h"

namespace cp {

namespace {

using Kind = QueryTerm::Kind;

constexpr std::int64_t kNoEnd = std::numeric_limits<std::int64_t>::max();
constexpr std::string_view kSurveyed = "s.puzzle IS NOT NULL";

// Where a number lies: its table (p puzzles, s surveys), its column, its index.
struct NumberColumn {
  std::string_view name;
  char table;
  std::string_view column;
  std::string_view index;  // empty: none worth leading
};
constexpr NumberColumn kColumns[] = {{"number", 'p', "id", ""},
                                     {"givens", 'p', "givens", "puzzles_givens"},
                                     {"steps", 's', "steps", "surveys_steps"},
                                     {"hardest", 's', "hardest", "surveys_hardest"},
                                     {"effort", 's', "effort", "surveys_effort"},
                                     {"beyond-singles", 's', "beyond_singles", "surveys_beyond_singles"},
                                     {"narrow", 's', "narrow", ""},
                                     {"open-tenths", 's', "open_tenths", ""}};

const NumberColumn& column_of(std::string_view name) {
  return *std::find_if(std::begin(kColumns), std::end(kColumns), [&](const NumberColumn& each) { return each.name == name; });
}

// What can lead: a FROM with the key of the puzzle, and how many puzzles it will meet.
struct Leader {
  std::string from;
  std::string key = "p.id";
  std::string where;
  std::vector<BoundValue> values;
  std::int64_t count = kNoEnd;
  std::string words;
  const QueryTerm* part = nullptr;  // the part of the query that it settles
};

void bind_values(Rows& rows, const std::vector<BoundValue>& values) {
  for (const BoundValue& value : values) {
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
      rows.with(*number);
    } else {
      rows.with(std::string_view(std::get<std::string>(value)));
    }
  }
}

class Compiler {
 public:
  Compiler(Database& database, FindOrder order) : database_(database), order_(order) {}

  CompiledQuery compile(const QueryTerm& query) {
    std::vector<const QueryTerm*> parts;
    collect(query, parts);
    Leader leader = choose(parts);
    key_ = leader.key;
    values_ = leader.values;
    std::vector<std::string> conditions;
    for (const QueryTerm* part : parts) {
      if (part != leader.part) conditions.push_back(text_of(*part, false));
    }
    const std::string condition = conditions.empty() ? "1" : joined(conditions, " AND ");
    std::string from = leader.from;
    const bool has_p = from.starts_with("puzzles p");
    const bool has_s = from.starts_with("surveys s");
    const bool wants_s = condition.find("s.") != std::string::npos || order_column().starts_with("s.");
    const bool wants_p = condition.find("p.") != std::string::npos || order_column().starts_with("p.givens");
    if (!has_p && wants_p) from += " CROSS JOIN puzzles p ON p.id = " + key_;
    if (!has_s && wants_s) from += " LEFT JOIN surveys s ON s.puzzle = " + key_;
    std::string where = leader.where.empty() ? condition : leader.where + " AND " + condition;
    if (order_column().starts_with("s.")) where += " AND " + std::string(kSurveyed);
    CompiledQuery made;
    made.sql = "SELECT " + key_ + " FROM " + from + " WHERE " + where + " ORDER BY " + (order_column().empty() ? "" : order_column() + ", ") + key_ + " LIMIT ? OFFSET ?";
    made.values = std::move(values_);
    made.leader = std::move(leader.words);
    return made;
  }

 private:
  [[nodiscard]] std::string order_column() const {
    switch (order_) {
      case FindOrder::kGivens: return "p.givens";
      case FindOrder::kSteps: return "s.steps";
      case FindOrder::kHardest: return "s.hardest";
      case FindOrder::kEffort: return "s.effort";
      default: return "";
    }
  }

  // The parts that all have to hold.
  static void collect(const QueryTerm& term, std::vector<const QueryTerm*>& parts) {
    if (term.kind != Kind::kAll) {
      parts.push_back(&term);
      return;
    }
    for (const QueryTerm& part : term.parts) collect(part, parts);
  }

  std::int64_t facet_id(const FacetName& facet, std::int64_t& total) {
    Rows rows = database_.run("SELECT id, total FROM facet_names WHERE kind = ? AND name = ?");
    rows.with(facet.kind).with(facet.name);
    if (!rows.next()) return 0;  // no puzzle has it; no facet has this number
    total += rows.number(1);
    return rows.number(0);
  }

  // ---- who leads ---------------------------------------------------------------

  Leader choose(const std::vector<const QueryTerm*>& parts) {
    Leader best = walk(parts);
    for (const QueryTerm* part : parts) {
      auto candidate = leader_of(*part);
      if (!candidate || candidate->count >= best.count) continue;
      best = std::move(*candidate);
      best.part = part;
    }
    return best;
  }

  // Without a leader: the order wanted, or the surveys when only surveyed puzzles can be meant.
  Leader walk(const std::vector<const QueryTerm*>& parts) {
    Leader leader;
    const bool of_survey = order_column().starts_with("s.") || std::any_of(parts.begin(), parts.end(), [](const QueryTerm* part) { return is_of_survey(*part); });
    leader.from = of_survey ? "surveys s" : "puzzles p";
    leader.key = of_survey ? "s.puzzle" : "p.id";
    if (order_column().starts_with(leader.from.substr(leader.from.size() - 1) + ".")) leader.from += " INDEXED BY " + leader.from.substr(0, 7) + "_" + order_column().substr(2);
    leader.words = std::string(of_survey ? "the surveyed puzzles" : "all puzzles") + ", one after the other until enough are found";
    return leader;
  }

  static bool is_of_survey(const QueryTerm& term) {
    if (term.kind == Kind::kSurveyed) return true;
    if (term.kind == Kind::kNot) return term.parts.front().kind != Kind::kSurveyed && is_of_survey(term.parts.front());
    return speaks_of_survey(term);
  }

  std::optional<Leader> leader_of(const QueryTerm& term) {
    switch (term.kind) {
      case Kind::kFacet: return facet_leader(term);
      case Kind::kNumber: return number_leader(term);
      case Kind::kSource: return counted_leader("puzzles p INDEXED BY puzzles_source", "p.source IN (SELECT id FROM sources WHERE name = ?)", {term.text}, term);
      case Kind::kUsed: return counted_leader("puzzles p INDEXED BY puzzles_used", "p.used > 0", {}, term);
      case Kind::kNote: return note_leader(term);
      case Kind::kNot:
        if (term.parts.front().kind == Kind::kProper) return counted_leader("puzzles p INDEXED BY puzzles_not_proper", "p.solutions <> 1", {}, term);
        return std::nullopt;
      default: return std::nullopt;
    }
  }

  std::optional<Leader> facet_leader(const QueryTerm& term) {
    Leader leader;
    leader.key = "d.puzzle";
    leader.count = 0;
    std::vector<std::string> lists;
    for (const FacetName& facet : term.facets) {
      leader.values.emplace_back(facet_id(facet, leader.count));
      lists.emplace_back("SELECT puzzle FROM facets WHERE facet = ?");
    }
    leader.from = lists.size() == 1 ? "facets d" : "(" + joined(lists, " UNION ALL ") + ") d";
    if (lists.size() == 1) leader.where = "d.facet = ?";
    leader.words = to_text(term) + " (" + counted(static_cast<int>(leader.count), "puzzle") + ")";
    return leader;
  }

  std::optional<Leader> number_leader(const QueryTerm& term) {
    const NumberColumn& column = column_of(term.number);
    if (column.index.empty()) return std::nullopt;
    const std::string name = std::string(1, column.table) + "." + std::string(column.column);
    return counted_leader((column.table == 'p' ? "puzzles p INDEXED BY " : "surveys s INDEXED BY ") + std::string(column.index), name + " BETWEEN ? AND ?", {term.low, term.high}, term);
  }

  // Leads when its index counts fewer than kMostCounted.
  std::optional<Leader> counted_leader(const std::string& from, const std::string& where, std::vector<BoundValue> values, const QueryTerm& term) {
    Rows rows = database_.ask("SELECT count(*) FROM (SELECT 1 FROM " + from + " WHERE " + where + " LIMIT " + to_text(kMostCounted) + ")");
    bind_values(rows, values);
    const std::int64_t count = rows.next() ? rows.number(0) : kMostCounted;
    if (count >= kMostCounted) return std::nullopt;
    Leader leader;
    leader.from = from;
    leader.key = from.starts_with("surveys") ? "s.puzzle" : "p.id";
    leader.where = where;
    leader.values = std::move(values);
    leader.count = count;
    leader.words = to_text(term) + " (" + counted(static_cast<int>(count), "puzzle") + ")";
    return leader;
  }

  std::optional<Leader> note_leader(const QueryTerm& term) {
    Leader leader;
    leader.from = "(SELECT DISTINCT puzzle FROM notes WHERE instr(lower(text), lower(?)) > 0) d";
    leader.key = "d.puzzle";
    leader.values.emplace_back(term.text);
    leader.count = database_.number("SELECT count(*) FROM notes");
    leader.words = to_text(term) + " (among " + counted(static_cast<int>(leader.count), "note") + ")";
    return leader;
  }

  // ---- conditions ----------------------------------------------------------------

  // The condition or its opposite; "not" is pushed down to the terms.
  std::string text_of(const QueryTerm& term, bool is_negated) {
    switch (term.kind) {
      case Kind::kAll: return chain(term, is_negated, is_negated ? " OR " : " AND ", is_negated ? "0" : "1");
      case Kind::kAny: return chain(term, is_negated, is_negated ? " AND " : " OR ", is_negated ? "1" : "0");
      case Kind::kNot: return text_of(term.parts.front(), !is_negated);
      case Kind::kProper: return is_negated ? "p.solutions <> 1" : "p.solutions = 1";
      case Kind::kSurveyed: return is_negated ? "s.puzzle IS NULL" : std::string(kSurveyed);
      case Kind::kUsed: return is_negated ? "p.used = 0" : "p.used > 0";
      case Kind::kSource: values_.emplace_back(term.text); return std::string("p.source ") + (is_negated ? "NOT " : "") + "IN (SELECT id FROM sources WHERE name = ?)";
      case Kind::kNote:
        values_.emplace_back(term.text);
        return std::string(is_negated ? "NOT " : "") + "EXISTS(SELECT 1 FROM notes n WHERE n.puzzle = " + key_ + " AND instr(lower(n.text), lower(?)) > 0)";
      case Kind::kNumber: return number_text(term, is_negated);
      default: return facet_text(term, is_negated);
    }
  }

  std::string chain(const QueryTerm& term, bool is_negated, const std::string& joint, const std::string& nothing) {
    std::vector<std::string> parts;
    for (const QueryTerm& part : term.parts) parts.push_back(text_of(part, is_negated));
    return parts.empty() ? nothing : "(" + joined(parts, joint) + ")";
  }

  std::string number_text(const QueryTerm& term, bool is_negated) {
    const NumberColumn& column = column_of(term.number);
    // The primary key by its plain name: its order leads to the row directly.
    const std::string name = column.name == "number" ? key_ : std::string(1, column.table) + "." + std::string(column.column);
    values_.emplace_back(term.low);
    values_.emplace_back(term.high);
    if (!is_negated) return name + " BETWEEN ? AND ?";
    const std::string outside = name + " NOT BETWEEN ? AND ?";
    return column.table == 's' ? "(" + outside + " AND " + name + " >= 0)" : outside;  // below 0: the survey did not count it
  }

  std::string facet_text(const QueryTerm& term, bool is_negated) {
    std::string list;
    for (const FacetName& facet : term.facets) {
      std::int64_t total = 0;
      values_.emplace_back(facet_id(facet, total));
      list += list.empty() ? "?" : ", ?";
    }
    const std::string has = "EXISTS(SELECT 1 FROM facets f WHERE f.facet IN (" + list + ") AND f.puzzle = " + key_ + ")";
    if (!speaks_of_survey(term)) return is_negated ? "NOT " + has : has;
    return is_negated ? "(" + std::string(kSurveyed) + " AND NOT " + has + ")" : has;
  }

  Database& database_;
  FindOrder order_;
  std::string key_;
  std::vector<BoundValue> values_;
};

}  // namespace

CompiledQuery compile_query(Database& database, const QueryTerm& query, FindOrder order) { return Compiler(database, order).compile(query); }

Rows start_query(Database& database, const CompiledQuery& query, std::int64_t limit, std::int64_t offset) {
  Rows rows = database.ask(query.sql);
  bind_values(rows, query.values);
  rows.with(limit).with(offset);
  return rows;
}

}  // namespace cp
