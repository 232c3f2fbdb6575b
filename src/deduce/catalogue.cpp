// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <array>
#include <string>

#include "base/text.h"
#include "deduce/technique.h"

namespace cp {

namespace techniques {
#define CP_TECHNIQUE(id, name, family, cost, assumptions, function) void function(const Position&, StepSink&);
#include "deduce/catalogue.def"
#undef CP_TECHNIQUE
}  // namespace techniques

namespace {

constexpr std::array kIds = {
#define CP_TECHNIQUE(id, name, family, cost, assumptions, function) std::string_view(id),
#include "deduce/catalogue.def"
#undef CP_TECHNIQUE
};

constexpr bool ids_ascend() {
  for (std::size_t i = 1; i < kIds.size(); ++i) {
    if (kIds[i - 1] >= kIds[i]) return false;
  }
  return true;
}
static_assert(ids_ascend(), "catalogue.def must be sorted by id, each id once");

std::vector<Technique> make_catalogue() {
  [[maybe_unused]] constexpr bool kNoAssumption = false;
  [[maybe_unused]] constexpr bool kNeedsUnique = true;
  return {
#define CP_TECHNIQUE(id, name, family, cost, assumptions, function) \
  Technique{id, name, family, cost, assumptions, techniques::function},
#include "deduce/catalogue.def"
#undef CP_TECHNIQUE
  };
}

// Letters to insert, drop or change to turn one word into the other (Levenshtein distance).
std::size_t distance(std::string_view from, std::string_view to) {
  std::vector<std::size_t> row(to.size() + 1);
  for (std::size_t j = 0; j <= to.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= from.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= to.size(); ++j) {
      const std::size_t changed = diagonal + (from[i - 1] == to[j - 1] ? 0U : 1U);
      diagonal = row[j];
      row[j] = std::min({changed, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row[to.size()];
}

// The three ids most like the given word; equals in the order of the catalogue.
std::string ids_like(std::string_view word) {
  std::vector<std::string_view> ids(kIds.begin(), kIds.end());
  std::stable_sort(ids.begin(), ids.end(),
                   [&](std::string_view a, std::string_view b) { return distance(word, a) < distance(word, b); });
  ids.resize(std::min<std::size_t>(ids.size(), 3));
  return listed({ids.begin(), ids.end()}, "or");
}

}  // namespace

const std::vector<Technique>& catalogue() {
  static const std::vector<Technique> kCatalogue = make_catalogue();
  return kCatalogue;
}

const Technique* technique_or_null(std::string_view id) {
  const auto at = std::find_if(catalogue().begin(), catalogue().end(), [&](const Technique& technique) { return technique.id == id; });
  return at == catalogue().end() ? nullptr : &*at;
}

Result<const Technique*> find_technique(std::string_view id) {
  if (const Technique* technique = technique_or_null(id)) return technique;
  return Error{ErrorCode::kBadName, "'" + std::string(id) + "' is not a technique", "did you mean " + ids_like(id) + "?",
               TextSpan{0, id.size(), 1, 1}};
}

}  // namespace cp
