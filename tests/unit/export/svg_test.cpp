// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "export/balance_svg.h"
#include "export/board_svg.h"
#include "export/markup.h"
#include "support/sample_balances.h"
#include "support/small_xml.h"

namespace cp {
namespace {

using support::xml_fault;

struct Pictures {
  Figure board;
  PanPicture pans;
  TallyTable table;
};

Pictures pictures_of(const support::SampleBalance& sample, bool is_tallied) {
  const auto& reason = *std::get_if<BalanceReason>(&sample.step.reason);
  return {balance_figure(reason, sample.before, sample.step.eliminations), balance_pans(reason, sample.before, is_tallied), tally_table(reason, sample.before)};
}

int count_of(std::string_view text, std::string_view part) {
  int count = 0;
  for (auto at = text.find(part); at != std::string_view::npos; at = text.find(part, at + part.size())) ++count;
  return count;
}

TEST(SmallXml, FindsFaults) {
  EXPECT_EQ(xml_fault("<a b=\"c>d\"><e/>&amp;</a>"), "");
  EXPECT_NE(xml_fault("<a><b></a></b>"), "");
  EXPECT_NE(xml_fault("<a>x & y</a>"), "");
  EXPECT_NE(xml_fault("<a>"), "");
  EXPECT_NE(xml_fault("<a/><b/>text<"), "");
}

TEST(Markup, EscapesEverythingThatCouldBeMarkup) {
  EXPECT_EQ(escaped("a < b & c > \"d\" 'e'"), "a &lt; b &amp; c &gt; &quot;d&quot; &#39;e&#39;");
  Markup out;
  out.element("text", {{"x", "\"1\""}}, "<&>");
  EXPECT_EQ(out.text(), "<text x=\"&quot;1&quot;\">&lt;&amp;&gt;</text>\n");
}

TEST(Svg, AllPicturesAreWellFormed) {
  for (const bool is_tallied : {false, true}) {
    for (const support::SampleBalance& sample : {support::exact_sample(), support::cases_sample()}) {
      const Pictures pictures = pictures_of(sample, is_tallied);
      for (const SvgUse use : {SvgUse::kFile, SvgUse::kInline}) {
        EXPECT_EQ(xml_fault(board_svg(pictures.board, use, "b")), "");
        EXPECT_EQ(xml_fault(pans_svg(pictures.pans, use, "p")), "");
        EXPECT_EQ(xml_fault(tally_svg(pictures.table, use, "t")), "");
      }
      EXPECT_EQ(xml_fault(balance_svg(pictures.board, pictures.pans, pictures.table, "all")), "");
    }
  }
}

TEST(Svg, EveryShapeOfGridCanBeDrawn) {
  for (const Shape* shape : all_shapes()) {
    Figure figure{Position(*shape)};
    figure.candidates = shape->all_cells();
    describe(figure);
    const std::string svg = board_svg(figure, SvgUse::kFile, "b");
    EXPECT_EQ(xml_fault(svg), "") << shape->name();
    EXPECT_GE(count_of(svg, "class=\"cand\""), shape->cell_count()) << shape->name();
  }
}

TEST(Svg, TitlesAreEscaped) {
  Pictures pictures = pictures_of(support::exact_sample(), true);
  pictures.board.title = "<script> & \"co\"";
  const std::string svg = board_svg(pictures.board, SvgUse::kInline, "b");
  EXPECT_NE(svg.find("&lt;script&gt; &amp; &quot;co&quot;"), std::string::npos);
  EXPECT_EQ(xml_fault(svg), "");
}

TEST(Svg, PansAreToldApartWithoutColour) {
  const Pictures pictures = pictures_of(support::exact_sample(), true);
  const std::string svg = board_svg(pictures.board, SvgUse::kFile, "b");
  for (const std::string_view part : {"fill=\"url(#b-l)\"", "fill=\"url(#b-r)\"", "fill=\"url(#b-x)\"", ">left remainder of c1, c3, c8<", ">right remainder of r8, b4<"}) {
    EXPECT_NE(svg.find(part), std::string::npos) << part;
  }
  EXPECT_EQ(count_of(svg, "class=\"strike\""), 2);
}

TEST(Svg, EveryDigitAndPlaceLiesInThePans) {
  const support::SampleBalance sample = support::exact_sample();
  const std::string loaded = pans_svg(pictures_of(sample, false).pans, SvgUse::kFile, "p");
  // 18 and 9 cells remain: 16 and 7 known, 2 and 2 open; the surplus adds nine hollow weights.
  EXPECT_EQ(count_of(loaded, "class=\"weight\""), 23);
  EXPECT_EQ(count_of(loaded, "class=\"extra\""), 9);
  EXPECT_EQ(count_of(loaded, "class=\"lslot\""), 2);
  EXPECT_EQ(count_of(loaded, "class=\"rslot\""), 2);
  const std::string tallied = pans_svg(pictures_of(sample, true).pans, SvgUse::kFile, "p");
  EXPECT_EQ(count_of(tallied, "class=\"weight\""), 4);
  EXPECT_EQ(count_of(tallied, "class=\"extra\""), 0);
}

TEST(Svg, ReachesForNothingOutside) {
  const Pictures pictures = pictures_of(support::cases_sample(), true);
  for (const std::string& svg : {board_svg(pictures.board, SvgUse::kInline, "b"), balance_svg(pictures.board, pictures.pans, pictures.table, "b")}) {
    EXPECT_EQ(count_of(svg, "http"), svg.find("xmlns") == std::string::npos ? 0 : 1);
    EXPECT_EQ(svg.find("href"), std::string::npos);
    EXPECT_EQ(svg.find(" style="), std::string::npos);
  }
}

// ---- golden figures --------------------------------------------------------------------------------------------------

constexpr std::size_t kGoldenCap = 20 * 1024;

// Compares with tests/golden/<name>; with CP_ACCEPT=1 writes it anew.
void expect_golden(const std::string& name, const std::string& text) {
  EXPECT_LE(text.size(), kGoldenCap) << name;
  const std::string path = std::string(CP_SOURCE_DIR) + "/tests/golden/" + name;
  if (std::getenv("CP_ACCEPT") != nullptr) {
    std::ofstream(path, std::ios::binary) << text;
    return;
  }
  std::ifstream in(path, std::ios::binary);
  std::stringstream wanted;
  wanted << in.rdbuf();
  EXPECT_EQ(wanted.str(), text) << name << " differs; look at both, then accept with CP_ACCEPT=1";
}

TEST(Golden, Figures) {
  const Pictures exact = pictures_of(support::exact_sample(), true);
  expect_golden("exact_board.svg", board_svg(exact.board, SvgUse::kFile, "board"));
  expect_golden("exact_pans.svg", pans_svg(exact.pans, SvgUse::kFile, "pans"));
  expect_golden("exact_tally.svg", tally_svg(exact.table, SvgUse::kFile, "tally"));
  const Pictures cases = pictures_of(support::cases_sample(), false);
  expect_golden("cases_board.svg", board_svg(cases.board, SvgUse::kInline, "board"));
  expect_golden("cases_pans.svg", pans_svg(cases.pans, SvgUse::kInline, "pans"));
}

}  // namespace
}  // namespace cp
