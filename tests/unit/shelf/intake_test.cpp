// SPDX-License-Identifier: Apache-2.0
// Lines of every kind come in once, in order, and an import that was stopped goes on.
#include "shelf/intake.h"

#include <gtest/gtest.h>
#include <zlib.h>
#include <zstd.h>

#include <fstream>

#include "exact/random_grid.h"
#include "grid/notation.h"
#include "grid/transform.h"
#include "scan/survey_puzzle.h"
#include "shelf/ask.h"
#include "shelf/random_lines.h"
#include "shelf/survey_shelf.h"
#include "support/data_rows.h"
#include "support/scratch_folder.h"

namespace cp {
namespace {

class IntakeTest : public support::ScratchFolderTest {
 protected:
  std::string file(const std::string& name, const std::string& bytes) const {
    std::ofstream(path(name), std::ios::binary) << bytes;
    return path(name);
  }
  [[nodiscard]] Shelf shelf(const std::string& name = "a.shelf") const { return std::move(Shelf::open(path(name), Database::Mode::kCreate)).value(); }

  // Imports and says how it went; stops after so many blocks.
  IntakeReport import(Shelf& to, IntakeWish wish, int most_blocks = 1'000'000) {
    wish.label = wish.label.empty() ? wish.file : wish.label;
    faults.clear();
    repeats.clear();
    int blocks = 0;
    IntakeNews news;
    news.progress = [&](const ImportState&) { return ++blocks < most_blocks; };
    news.fault = [&](const NewLine& line) { faults.push_back(line); };
    news.repeat = [&](const Shelved& each) { repeats.push_back(each); };
    const auto report = take_in(to, wish, news);
    EXPECT_TRUE(report.is_ok()) << report.error().message;
    return report ? *report : IntakeReport{};
  }

  std::vector<NewLine> faults;
  std::vector<Shelved> repeats;
};

Position own_puzzle(std::uint64_t seed) { return random_minimal_puzzle(standard_shape(), seed); }

std::string own_lines(int count) {
  std::string text;
  for (int seed = 1; seed <= count; ++seed) text += givens_line(own_puzzle(static_cast<std::uint64_t>(seed))) + "\n";
  return text;
}

std::string gzipped(const std::string& text) {
  z_stream state{};
  deflateInit2(&state, 6, Z_DEFLATED, 15 + 16, 8, Z_DEFAULT_STRATEGY);
  std::string packed(text.size() + 1000, '\0');
  state.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
  state.avail_in = static_cast<uInt>(text.size());
  state.next_out = reinterpret_cast<Bytef*>(packed.data());
  state.avail_out = static_cast<uInt>(packed.size());
  EXPECT_EQ(deflate(&state, Z_FINISH), Z_STREAM_END);
  packed.resize(state.total_out);
  deflateEnd(&state);
  return packed;
}

std::string zstandard(const std::string& text) {
  std::string packed(ZSTD_compressBound(text.size()), '\0');
  packed.resize(ZSTD_compress(packed.data(), packed.size(), text.data(), text.size(), 3));
  return packed;
}

std::string everything(Shelf& of) {
  std::string all;
  EXPECT_FALSE(of.each_line([&](const std::string& line) { all += line + "\n"; }).has_value());
  return all;
}

TEST_F(IntakeTest, RepeatsAreFoundUpToSymmetryAndFaultsAreTold) {
  const Position puzzle = own_puzzle(1);
  const std::string turned = givens_line(Transform::random(standard_shape(), 5).image(puzzle));
  const std::string text = "# ours\n" + givens_line(puzzle) + "\n\n12x4\n" + turned + "\nname\t" + givens_line(puzzle) + "\trest\n" + std::string(81, '.') + "\n" + givens_line(own_puzzle(2)) + ",9,easy\n";
  Shelf to = shelf();
  IntakeWish wish;
  wish.file = file("lines.txt", text);
  const auto report = import(to, wish);
  EXPECT_EQ(report.state.fresh, 2);
  EXPECT_EQ(report.state.repeats, 2);
  EXPECT_EQ(report.state.faults, 2);
  EXPECT_TRUE(report.state.is_done);
  ASSERT_EQ(faults.size(), 2U);
  EXPECT_EQ(faults[0].line, 4U);
  EXPECT_EQ(faults[0].column, 3);
  EXPECT_EQ(faults[0].fault, "'x' cannot stand in a puzzle");
  EXPECT_EQ(faults[1].line, 7U);
  ASSERT_EQ(repeats.size(), 2U);
  EXPECT_EQ(repeats[0].line, 5U);
  EXPECT_EQ(repeats[0].as, Shelved::As::kRepeat);
  EXPECT_EQ(repeats[0].puzzle, 1);
  EXPECT_EQ(repeats[1].as, Shelved::As::kSame);
  EXPECT_EQ(to.puzzle(2)->text, givens_line(own_puzzle(2)));
}

TEST_F(IntakeTest, TablesBringTheirColumns) {
  const std::string grid = givens_line(own_puzzle(3));
  const std::string text = "Title;Grid;tags;remarks;licence\r\n\"A; \"\"good\"\" one\";" + grid + ";x-wing;\"look twice\";CC0\r\n\"open;" + grid + "\r\nbad;12;;;\r\n";
  Shelf to = shelf();
  IntakeWish wish;
  wish.file = file("table.csv", text);
  wish.columns = parse_column_names("puzzle=grid,name=title,note=remarks").value();
  wish.source = "a friend";
  const auto report = import(to, wish);
  EXPECT_EQ(report.state.fresh, 1);
  EXPECT_EQ(report.state.faults, 2);
  EXPECT_EQ(faults[0].fault, "a quotation is not closed");
  const auto puzzle = to.puzzle(1).value();
  EXPECT_EQ(puzzle.name, "A; \"good\" one");
  EXPECT_EQ(puzzle.tags, std::vector<std::string>{"x-wing"});
  EXPECT_EQ(puzzle.notes, std::vector<std::string>{"look twice"});
  EXPECT_EQ(puzzle.licence, "CC0");
  EXPECT_EQ(puzzle.source, "a friend");
  wish.columns["name"] = "heading";
  wish.again = true;
  const auto refused = take_in(to, wish, {});
  ASSERT_FALSE(refused.is_ok());
  EXPECT_EQ(refused.error().message, "the table has no column 'heading'");
}

TEST_F(IntakeTest, QuotedFieldsGoOverLineEnds) {  // RFC 4180, section 2, rule 6
  std::string text = "name,puzzle,note\r\n\"Two\r\nlines\"," + givens_line(own_puzzle(1)) + ",\"first\r\n# second, \"\"so\"\"\r\n\r\nfourth\"\r\n";
  text += "\"never closed," + givens_line(own_puzzle(2)) + ",x\r\n";                  // line 7
  text += "three," + givens_line(own_puzzle(3)) + ",\"quoted\"\r\n";                 // closes that quotation, wrongly
  text += "\"never closed either," + givens_line(own_puzzle(4)) + ",y\r\n";           // line 9
  for (int seed = 5; seed < 5 + 250; ++seed) text += "," + givens_line(own_puzzle(static_cast<std::uint64_t>(seed))) + ",\r\n";
  IntakeWish wish;
  wish.file = file("table.csv", text);
  Shelf to = shelf();
  const auto report = import(to, wish);
  EXPECT_EQ(report.state.fresh, 252);
  ASSERT_EQ(faults.size(), 2U);
  EXPECT_EQ(faults[0].line, 7U);
  EXPECT_EQ(faults[1].line, 9U);
  EXPECT_EQ(faults[0].fault, "a quotation is not closed");
  const auto puzzle = to.puzzle(1).value();
  EXPECT_EQ(puzzle.name, "Two lines");
  EXPECT_EQ(puzzle.notes, std::vector<std::string>{"first\n# second, \"so\"\n\nfourth"});
  EXPECT_EQ(to.puzzle(2)->notes, std::vector<std::string>{"quoted"});
  Shelf stormy = shelf("stormy.shelf");  // stopped at every place there is
  wish.block = 1;
  for (bool is_done = false; !is_done;) is_done = import(stormy, wish, 2).state.is_done;
  EXPECT_EQ(everything(stormy), everything(to));
  // Out and in again: the line ends of notes stay, and several notes are lines of one.
  EXPECT_FALSE(to.add_note(2, "and more").has_value());
  Shelf other = shelf("other.shelf");
  wish.file = file("again.csv", shelf_table_header() + "\n" + shelf_record(to.puzzle(1).value()) + "\n" + shelf_record(to.puzzle(2).value()) + "\n");
  EXPECT_EQ(import(other, wish).state.fresh, 2);
  EXPECT_EQ(other.puzzle(1)->notes, puzzle.notes);
  EXPECT_EQ(other.puzzle(2)->notes, std::vector<std::string>{"quoted\nand more"});
}

TEST_F(IntakeTest, ATableWithoutAColumnForThePuzzleIsRefused) {
  const std::string rows = "one," + givens_line(own_puzzle(1)) + ",own\ntwo," + givens_line(own_puzzle(2)) + ",own\n";
  IntakeWish wish;
  wish.file = file("table.csv", "Title,Grid,Remarks\n" + rows);
  wish.label = "x";
  Shelf to = shelf();
  const auto refused = take_in(to, wish, {});
  ASSERT_FALSE(refused.is_ok());
  EXPECT_EQ(refused.error().code, ErrorCode::kBadArgument);
  EXPECT_EQ(refused.error().hint, "say what it is called: --columns puzzle=NAME; the columns are Title, Grid and Remarks");
  EXPECT_FALSE(to.find_import("x").value().has_value());
  wish.columns = parse_column_names("puzzle=grid").value();
  EXPECT_EQ(import(to, wish).state.fresh, 2);
  EXPECT_TRUE(import(to, wish).was_resumed);
  wish.columns = parse_column_names("puzzle=grid,name=title").value();  // read in another way: another import
  const auto anew = import(to, wish);
  EXPECT_FALSE(anew.was_resumed);
  EXPECT_EQ(anew.state.repeats, 2);
  EXPECT_EQ(anew.state.label, "x (name=title,puzzle=grid)");
}

TEST_F(IntakeTest, ATitleOverPlainLinesIsAFaultAndNoTable) {
  const std::string text = "Collected in winter, from friends\n\n# ours\n" + own_lines(3);
  IntakeWish wish;
  wish.file = file("lines.txt", text);
  Shelf calm = shelf("calm.shelf");
  const auto report = import(calm, wish);
  EXPECT_EQ(report.state.fresh, 3);
  EXPECT_EQ(report.state.faults, 1);
  Shelf stormy = shelf("stormy.shelf");
  wish.block = 1;
  for (bool is_done = false; !is_done;) is_done = import(stormy, wish, 1).state.is_done;
  EXPECT_EQ(everything(stormy), everything(calm));
}

TEST_F(IntakeTest, NamesThatNoQueryCouldHoldAreFaultsAndEmptyOnesArePassedOver) {
  const std::string text = "puzzle,tags,lessons\n" + givens_line(own_puzzle(1)) + ",; a;;b ;,;\n" + givens_line(own_puzzle(2)) + ",\"so \"\"called\"\"\",\n" + givens_line(own_puzzle(3)) +
                           ",,\"a\tb\"\n";
  Shelf to = shelf();
  IntakeWish wish;
  wish.file = file("table.csv", text);
  const auto report = import(to, wish);
  EXPECT_EQ(report.state.fresh, 1);
  EXPECT_EQ(to.puzzle(1)->tags, (std::vector<std::string>{"a", "b"}));
  EXPECT_TRUE(to.puzzle(1)->lessons.empty());
  ASSERT_EQ(faults.size(), 2U);
  EXPECT_EQ(faults[0].fault, "tags: the name holds a line end, a tab, a quotation mark or a semicolon");
  EXPECT_EQ(faults[1].fault, "lessons: the name holds a line end, a tab, a quotation mark or a semicolon");
}

TEST_F(IntakeTest, AnExportedTableComesInAgainWithAllWords) {
  Shelf from = shelf();
  IntakeWish wish;
  wish.file = file("lines.txt", own_lines(5));
  wish.tags = {"one", "two words"};
  wish.source = "own, \"ours\"";
  import(from, wish);
  EXPECT_FALSE(from.add_note(2, "first; second, \"third\"").has_value());
  EXPECT_FALSE(from.add_word({3}, kLessonKind, "course").has_value());
  std::string table = shelf_table_header() + "\n";
  for (int number = 1; number <= 5; ++number) table += shelf_record(from.puzzle(number).value()) + "\n";
  Shelf to = shelf("b.shelf");
  IntakeWish back;
  back.file = file("table.csv", table);
  EXPECT_EQ(import(to, back).state.fresh, 5);
  for (int number = 1; number <= 5; ++number) EXPECT_EQ(shelf_json(to.puzzle(number).value()), shelf_json(from.puzzle(number).value()));
}

TEST_F(IntakeTest, PackedFilesAreReadAsPlainOnes) {
  const std::string text = own_lines(300);
  Shelf plain = shelf("plain.shelf");
  IntakeWish wish;
  wish.label = "x";
  wish.file = file("plain", text);
  import(plain, wish);
  int number = 0;
  for (const std::string& packed : {gzipped(text), zstandard(text), gzipped(text.substr(0, 5000)) + gzipped(text.substr(5000)), zstandard(text.substr(0, 5000)) + zstandard(text.substr(5000))}) {
    Shelf to = shelf("packed" + std::to_string(++number) + ".shelf");
    wish.file = file("packed" + std::to_string(number), packed);
    import(to, wish);
    EXPECT_EQ(everything(to), everything(plain));
  }
}

TEST_F(IntakeTest, ACutPackedFileKeepsItsWholeLinesAndSaysSo) {
  const std::string text = own_lines(300);
  for (const std::string& packed : {gzipped(text), zstandard(text)}) {
    Shelf to = shelf("cut" + std::to_string(packed.size()) + ".shelf");
    IntakeWish wish;
    wish.label = "x";
    wish.file = file("cut", packed.substr(0, packed.size() - 20));
    IntakeNews news;
    news.progress = [](const ImportState&) { return true; };
    const auto report = take_in(to, wish, news);
    ASSERT_FALSE(report.is_ok());
    EXPECT_NE(report.error().message.find("ends in the middle"), std::string::npos);
    const auto part = to.find_import("x").value();  // a zstd block that is cut gives nothing at all
    EXPECT_TRUE(!part || (!part->is_done && part->fresh == 299));
    wish.file = file("whole", packed);  // the whole file under the same name goes on behind
    const auto rest = take_in(to, wish, news);
    ASSERT_TRUE(rest.is_ok()) << rest.error().message;
    EXPECT_EQ(rest->was_resumed, part.has_value());
    EXPECT_EQ(rest->state.fresh, 300);
  }
}

TEST_F(IntakeTest, AStoppedImportGoesOnToTheSameShelf) {
  std::string text = own_lines(200);
  text.insert(82 * 50, "broken\n");
  text += text.substr(0, 82 * 10);  // repeats
  IntakeWish wish;
  wish.file = file("lines.txt", text);
  wish.block = 16;
  Shelf calm = shelf("calm.shelf");
  import(calm, wish);
  wish.threads = 3;
  wish.block = 7;
  Shelf stormy = shelf("stormy.shelf");
  bool is_done = false;
  for (int stops = 0; !is_done; ++stops) {
    ASSERT_LT(stops, 40);
    const auto report = import(stormy, wish, 2);
    EXPECT_EQ(report.was_resumed, stops > 0);
    is_done = report.state.is_done;
  }
  EXPECT_EQ(everything(stormy), everything(calm));
  EXPECT_EQ(import(stormy, wish).state.fresh, 200);  // nothing is left to do
  EXPECT_EQ(everything(stormy), everything(calm));
  file("lines.txt", own_lines(1) + text);
  wish.label = wish.file;
  const auto changed = take_in(stormy, wish, {});
  ASSERT_FALSE(changed.is_ok());
  EXPECT_NE(changed.error().message.find("is not what it was"), std::string::npos);
}

TEST_F(IntakeTest, ProperIsWhatTheExactSearchSays) {
  std::string text = own_lines(3);
  std::string one_less = givens_line(own_puzzle(1));
  one_less[one_less.find_first_not_of('.')] = '.';  // the puzzle is minimal: now there are several
  text += one_less + "\n11" + std::string(79, '.') + "\n";
  Shelf to = shelf();
  IntakeWish wish;
  wish.file = file("lines.txt", text);
  import(to, wish);
  EXPECT_EQ(to.puzzle(1)->solutions, 1);
  EXPECT_EQ(to.puzzle(4)->solutions, 2);
  EXPECT_EQ(to.puzzle(5)->solutions, 0);
  const auto found = to.find(read_query("not proper").value(), {});
  EXPECT_EQ(found->numbers, (std::vector<std::int64_t>{4, 5}));
}

TEST(SurveyRow, FacetsSayWhatTheRecordSays) {
  SurveyRecord record;
  record.depth = SurveyDepth::kFull;
  SurveyPath path;
  path.end = "solved";
  path.techniques = {{"hidden-single", 40}, {"unique-rectangle-1", 1}, {"x-wing", 1}, {"balance", 1}};
  path.tail = {"hidden-single", "naked-single"};
  path.effort = 321;
  record.path = path;
  record.needed = {"balance"};
  BalanceNote wide;  // rows against columns, slack 2
  wide.left = "r1,r2";
  wide.right = "c1,c2";
  wide.slack = 2;
  BalanceNote tight = wide;  // with boxes, slack 0
  tight.right = "b1,c3";
  tight.slack = 0;
  record.balances = {tight, wide};
  const SurveyRow row = survey_row(5, record);
  EXPECT_EQ(row.puzzle, 5);
  EXPECT_EQ(row.effort, 321);
  std::vector<std::string> names;
  for (const FacetName& facet : row.facets) names.push_back(facet.kind + " " + facet.name);
  const std::vector<std::string> wanted = {"balance rc/2", "balance rcb/0", "needs balance",      "path solved",    "path tail singles", "uses balance",
                                           "uses fish",    "uses hidden-single", "uses single", "uses unique-rectangle-1", "uses uniqueness", "uses x-wing"};
  EXPECT_EQ(names, wanted);
  record.path->tail.push_back("x-wing");
  EXPECT_EQ(survey_row(5, record).facets.size(), row.facets.size() - 1);
}

TEST_F(IntakeTest, SurveysAreKeptOnceAndFoundByWhatTheySay) {
  Shelf to = shelf();
  IntakeWish wish;
  wish.file = file("lines.txt", own_lines(40));
  import(to, wish);
  ShelfSurveyWish survey;
  survey.depth = SurveyDepth::kBasics;
  survey.threads = 3;
  survey.most = 15;
  EXPECT_EQ(survey_shelf(to, survey, {}).value(), 15);
  survey.most = 0;
  EXPECT_EQ(survey_shelf(to, survey, {}).value(), 25);
  EXPECT_EQ(survey_shelf(to, survey, {}).value(), 0);
  const auto solved = to.find(read_query("solved").value(), {FindOrder::kNumber, 0, 0}).value().numbers;
  for (std::int64_t number = 1; number <= 40; ++number) {
    const SurveyRecord record = survey_puzzle(own_puzzle(static_cast<std::uint64_t>(number)), {SurveyDepth::kBasics});
    EXPECT_EQ(std::find(solved.begin(), solved.end(), number) != solved.end(), record.path->end == "solved") << number;
  }
  survey.depth = SurveyDepth::kBalances;
  survey.query = read_query("number <= 3").value();
  EXPECT_EQ(survey_shelf(to, survey, {}).value(), 3);
}

TEST_F(IntakeTest, AStuckPuzzleIsAskedWhatItNeedsOnlyOnce) {
  Shelf to = shelf();
  IntakeWish wish;
  wish.file = file("lines.txt", support::published_puzzle("Escargot") + "\n");
  import(to, wish);
  ShelfSurveyWish survey;
  survey.depth = SurveyDepth::kFull;
  survey.ask_needed = true;
  EXPECT_EQ(survey_shelf(to, survey, {}).value(), 1);
  ASSERT_EQ(to.find(read_query("stuck").value(), {}).value().numbers.size(), 1U);
  EXPECT_EQ(survey_shelf(to, survey, {}).value(), 0);
}

TEST(RandomLines, AreTheSameOnAnyNumberOfThreads) {
  std::vector<std::string> lines;
  random_lines(9, 70, 3, [&](const std::string& line) {
    lines.push_back(line);
    return true;
  });
  ASSERT_EQ(lines.size(), 70U);
  EXPECT_EQ(lines[69], random_line(9, 69));
  EXPECT_NE(lines[0], random_line(8, 1));
}

TEST_F(IntakeTest, UnknownTechniquesInQueriesGetAHint) {
  const auto wrong = read_query("proper and uses x-wnig");
  ASSERT_FALSE(wrong.is_ok());
  EXPECT_EQ(wrong.error().where.column, 17);
  EXPECT_NE(wrong.error().hint.find("x-wing"), std::string::npos) << wrong.error().hint;
}

TEST_F(IntakeTest, ColumnNamesAreChecked) {
  const auto wrong = parse_column_names("puzzle=grid,titel=x");
  ASSERT_FALSE(wrong.is_ok());
  EXPECT_EQ(wrong.error().where.column, 13);
}

}  // namespace
}  // namespace cp
