// SPDX-License-Identifier: Apache-2.0
// The language of `shelf find` (docs/formats/query.md): terms joined by and, or, not and brackets.
// Reading a query needs no shelf: what is wrong with it is told with its place before anything is opened.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace cp {

inline constexpr int kMostSlack = 4;               // the greatest slack that facets of balances tell apart
inline constexpr std::size_t kLongestQuery = 4000;  // bytes
inline constexpr int kDeepestQuery = 40;            // brackets and nots inside one another

// A facet by its name: "uses hidden-pair", "tag opening".
struct FacetName {
  std::string kind;
  std::string name;

  friend auto operator<=>(const FacetName&, const FacetName&) = default;
};

// The kinds of facets. They stand in the file; never change one.
inline constexpr std::string_view kUsesKind = "uses";        // a technique, family or group on the easiest path
inline constexpr std::string_view kNeedsKind = "needs";      // the same, without which the catalogue does not solve it
inline constexpr std::string_view kBalanceKind = "balance";  // balance_facet()
inline constexpr std::string_view kPathKind = "path";        // "solved", "stuck", "tail singles"
inline constexpr std::string_view kTagKind = "tag";
inline constexpr std::string_view kLessonKind = "lesson";    // a lesson or series that uses the puzzle

// The kinds of houses a balance may lie over.
struct HouseKinds {
  bool rows = false;
  bool columns = false;
  bool boxes = false;
};
// "rc/1": a balance over no other houses than rows and columns has slack 1, and none has less. A puzzle has at most one facet
// for each choice of kinds, so the lists of two slacks never share a puzzle.
std::string balance_facet(const HouseKinds& kinds, int slack);

struct QueryTerm {
  enum class Kind {
    kAll,       // every part; no parts: every puzzle
    kAny,       // at least one part
    kNot,       // not its only part
    kNumber,    // a number lies in low .. high
    kFacet,     // has at least one of the facets, which share no puzzle
    kProper,    // exactly one solution
    kSurveyed,
    kUsed,      // in at least one lesson
    kSource,    // the name of its source is `text`
    kNote,      // a note holds `text`, in small or capital letters (ASCII)
  } kind = Kind::kAll;
  std::vector<QueryTerm> parts = {};
  std::string number = {};            // "givens", "effort", ...: a name of query_numbers()
  std::int64_t low = 0;
  std::int64_t high = 0;
  std::vector<FacetName> facets = {};
  std::string text = {};
};

// The numbers that a query may ask about; `of_survey`: only surveyed puzzles have it.
struct QueryNumber {
  std::string_view name;
  bool of_survey;
};
const std::vector<QueryNumber>& query_numbers();

// Does a term speak about surveys? Then it, and its opposite, hold for surveyed puzzles only.
bool speaks_of_survey(const QueryTerm& term);

// Says what is wrong with the name of a technique behind `uses` or `no` (kUsesKind) or `needs` (kNeedsKind), if anything.
using CheckTechnique = std::function<std::optional<Error>(const std::string& name, std::string_view kind)>;

// Reads a query; the empty text asks for every puzzle. Errors kBadArgument and kBadName with the place in the text.
Result<QueryTerm> parse_query(std::string_view text, const CheckTechnique& check_technique);

// The query written out again, with all brackets: what was understood.
std::string to_text(const QueryTerm& term);

}  // namespace cp
