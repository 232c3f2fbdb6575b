// SPDX-License-Identifier: Apache-2.0
// The query language: what is understood, and where it is wrong.
#include "store/query.h"

#include <gtest/gtest.h>

namespace cp {
namespace {

std::optional<Error> only_known(const std::string& name, std::string_view /*kind*/) {
  for (const char* known : {"x-wing", "fish", "uniqueness", "balance", "naked-single"}) {
    if (name == known) return std::nullopt;
  }
  return Error{ErrorCode::kBadName, "there is no technique '" + name + "'", "try x-wing", {}};
}

std::string understood(std::string_view text) {
  const auto term = parse_query(text, only_known);
  return term ? to_text(*term) : "error: " + term.error().message;
}

Error error_of(std::string_view text) {
  const auto term = parse_query(text, only_known);
  EXPECT_FALSE(term.is_ok()) << text;
  return term ? Error{} : term.error();
}

TEST(Query, TheExampleOfTheManualIsUnderstood) {
  EXPECT_EQ(understood("proper and needs balance slack <= 1 over rows columns and no uniqueness and tail singles and givens <= 26 and unused"),
            "(proper and (needs balance and balance slack 0 to 1 over rows columns) and not uses uniqueness and tail singles and givens 0 to 26 and not used)");
}

TEST(Query, AndBindsCloserThanOrAndNotCloserThanBoth) {
  EXPECT_EQ(understood("proper or surveyed and not used"), "(proper or (surveyed and not used))");
  EXPECT_EQ(understood("(proper or surveyed) and used"), "((proper or surveyed) and used)");
  EXPECT_EQ(understood("not (proper and used)"), "not (proper and used)");
}

TEST(Query, NumbersTakeComparisonsAndRanges) {
  EXPECT_EQ(understood("givens = 24"), "givens 24 to 24");
  EXPECT_EQ(understood("givens < 24"), "givens 0 to 23");
  EXPECT_EQ(understood("effort > 100"), "effort >= 101");
  EXPECT_EQ(understood("hardest>=40"), "hardest >= 40");
  EXPECT_EQ(understood("steps 40 to 60"), "steps 40 to 60");
  EXPECT_EQ(understood("givens != 24"), "not givens 24 to 24");
}

TEST(Query, AndBehindOverGoesOnOnlyBeforeAKindOfHouse) {
  EXPECT_EQ(understood("balance over rows and columns and proper"), "(balance slack 0 to 4 over rows columns and proper)");
  EXPECT_EQ(understood("balance slack = 2 over boxes, rows"), "balance slack 2 to 2 over rows boxes");
}

TEST(Query, NamesMayBeQuoted) {
  EXPECT_EQ(understood("tag \"end of term\" and source own and used in \"spring course\" and note fin"), "(tag \"end of term\" and source \"own\" and used in \"spring course\" and note \"fin\")");
  EXPECT_EQ(understood("USES X-Wing"), "uses x-wing");
}

TEST(Query, TheEmptyQueryAsksForEverything) { EXPECT_EQ(understood("  "), "every puzzle"); }

TEST(Query, WhatWasUnderstoodIsUnderstoodAgain) {
  for (const char* text : {"proper and (uses fish or not tag a) and effort > 3", "not (givens 20 to 22 or balance slack = 0 over rows)", "no uniqueness and unused in course"}) {
    const std::string once = understood(text);
    EXPECT_EQ(understood(once), once) << text;
  }
}

struct Wrong {
  const char* text;
  int column;
  const char* message;
};

TEST(Query, ErrorsHaveTheirPlaceAndAHint) {
  const Wrong all[] = {{"proper and", 11, "the query ends where a term was wanted"},
                       {"proper proper", 8, "'proper' does not go on from what stands before"},
                       {"uses y-wing", 6, "there is no technique 'y-wing'"},
                       {"givens", 7, "the query ends where a comparison and a number was wanted"},
                       {"givens <= many", 11, "'many' stands where a comparison and a number was wanted"},
                       {"givens 30 to 20", 14, "the range 30 to 20 is empty"},
                       {"proper & used", 8, "'&' means nothing in a query"},
                       {"tag \"open", 5, "a quotation is not closed"},
                       {"(proper", 8, "the query ends where a closing bracket was wanted"},
                       {"proper)", 7, "')' does not go on from what stands before"},
                       {"propre", 1, "'propre' begins no term"},
                       {"tail end", 6, "'end' stands where 'singles' was wanted"},
                       {"balance slack < 0", 15, "no balance has so little slack"},
                       {"balance slack > 1", 15, "a balance is asked for with at most so much slack, or with exactly so much"},
                       {"balance over lines", 14, "'lines' stands where rows, columns or boxes was wanted"},
                       {"givens = 99999999999999", 10, "the number 99999999999999 is too large"},
                       {"tag \"\xC3\xBC\" &", 9, "'&' means nothing in a query"}};
  for (const Wrong& each : all) {
    const Error error = error_of(each.text);
    EXPECT_EQ(error.where.column, each.column) << each.text;
    EXPECT_EQ(error.message, each.message) << each.text;
    EXPECT_FALSE(error.hint.empty()) << each.text;
  }
}

TEST(Query, DeepAndLongQueriesAreRefused) {
  EXPECT_NE(error_of(std::string(100, '(') + "proper").message.find("nested too deeply"), std::string::npos);
  EXPECT_NE(error_of(std::string(5000, ' ')).message.find("too long"), std::string::npos);
}

}  // namespace
}  // namespace cp
