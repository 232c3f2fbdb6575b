// SPDX-License-Identifier: Apache-2.0
// What the shelf costs as it grows: import and queries at several sizes, side by side.
//
//   shelf_bench [LINES [SIZE...]]     LINES: a file of puzzles, one a line; "-": random ones are made (0.3 ms each)
//
// A sample of the puzzles is surveyed in earnest (depth balances). The others get the facets and numbers of a surveyed one,
// taken in turn: surveying a million would take hours, and the cost of a query depends on how long the lists are, not on
// whether they are true. Such a shelf is good for measuring alone; it is removed at the end.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <thread>
#include <vector>

#include "grid/notation.h"
#include "scan/survey_puzzle.h"
#include "shelf/ask.h"
#include "shelf/intake.h"
#include "shelf/random_lines.h"
#include "shelf/survey_shelf.h"

namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr std::size_t kSample = 2000;
constexpr int kRounds = 7;

const char* const kQueries[] = {
    "proper and needs balance slack <= 1 over rows columns and no uniqueness and tail singles and givens <= 26 and unused",
    "balance slack <= 1 over rows columns and tail singles and givens <= 24 and unused",
    "tag rare and proper",
    "proper and givens <= 21",
    "uses x-wing and uses swordfish and solved",
    "uses x-wing and no hidden-pair and givens 23 to 24",
    "stuck and unused",
    "hardest >= 60 and effort <= 400",
    "source random and not proper",
    "solved and stuck",
    "proper and number >= 5000 and (uses x-wing or uses jellyfish)",
};

double seconds_since(Clock::time_point began) { return std::chrono::duration<double>(Clock::now() - began).count(); }

void stop(const std::string& why) {
  std::fprintf(stderr, "shelf_bench: %s\n", why.c_str());
  std::exit(1);
}

template <typename T>
T must(cp::Result<T> result) {
  if (!result) stop(result.error().message);
  return std::move(result).value();
}

std::vector<std::string> lines_of(const std::string& name, std::size_t count) {
  std::vector<std::string> lines;
  if (name == "-") {
    cp::random_lines(20261126, count, static_cast<int>(std::thread::hardware_concurrency()), [&](const std::string& line) {
      lines.push_back(line);
      return true;
    });
    return lines;
  }
  std::ifstream file(name);
  for (std::string line; lines.size() < count && std::getline(file, line);) lines.push_back(line);
  if (lines.size() < count) stop(name + " holds too few lines");
  return lines;
}

// A surveyed sample, as rows without the JSON of the record.
std::vector<cp::SurveyRow> sample_of(const std::vector<std::string>& lines) {
  std::vector<cp::SurveyRow> rows;
  const auto began = Clock::now();
  for (std::size_t at = 0; at < std::min(kSample, lines.size()); ++at) {
    rows.push_back(cp::survey_row(0, cp::survey_puzzle(cp::parse_position(lines[at]).value(), {cp::SurveyDepth::kBalances})));
    rows.back().record = "{}";
  }
  std::printf("%zu surveys of depth balances, one thread: %.0f a second\n", rows.size(), static_cast<double>(rows.size()) / seconds_since(began));
  return rows;
}

struct Column {
  double import_rate = 0;
  double bytes = 0;
  std::vector<double> milliseconds;
  std::vector<std::size_t> found;
  std::vector<std::string> leaders;
};

void give_surveys(cp::Shelf& shelf, std::size_t count, const std::vector<cp::SurveyRow>& sample) {
  std::vector<cp::SurveyRow> rows;
  for (std::size_t number = 1; number <= count; ++number) {
    rows.push_back(sample[number % sample.size()]);
    rows.back().puzzle = static_cast<std::int64_t>(number);
    if (rows.size() < 5000 && number < count) continue;
    if (auto trouble = shelf.keep_surveys(rows)) stop(trouble->message);
    rows.clear();
  }
}

Column measure(const std::vector<std::string>& lines, std::size_t size, const std::vector<cp::SurveyRow>& sample, const fs::path& folder) {
  Column column;
  const fs::path stream = folder / "lines.txt";
  {
    std::ofstream out(stream);
    for (std::size_t at = 0; at < size; ++at) out << lines[at] << "\n";
  }
  const fs::path file = folder / "bench.shelf";
  for (const char* ending : {"", "-wal", "-shm"}) fs::remove(file.string() + ending);
  cp::Shelf shelf = must(cp::Shelf::open(file.string(), cp::Database::Mode::kCreate));
  cp::IntakeWish wish;
  wish.file = stream.string();
  wish.source = "random";
  wish.threads = static_cast<int>(std::thread::hardware_concurrency());
  const auto began = Clock::now();
  const auto report = must(cp::take_in(shelf, wish, {}));
  column.import_rate = static_cast<double>(size) / seconds_since(began);
  if (auto trouble = shelf.tidy()) stop(trouble->message);
  column.bytes = static_cast<double>(fs::file_size(file)) / static_cast<double>(size);
  const auto puzzles = static_cast<std::size_t>(report.state.fresh);
  give_surveys(shelf, puzzles, sample);
  if (auto trouble = shelf.add_word({7, static_cast<std::int64_t>(puzzles / 2), static_cast<std::int64_t>(puzzles - 1)}, cp::kTagKind, "rare")) stop(trouble->message);
  if (auto trouble = shelf.tidy()) stop(trouble->message);
  for (const char* query : kQueries) {
    const auto term = must(cp::read_query(query));
    std::vector<double> times;
    for (int round = 0; round < kRounds; ++round) {
      const auto start = Clock::now();
      const auto found = must(shelf.find(term, {}));
      for (const std::int64_t number : found.numbers) must(shelf.puzzle(number));
      times.push_back(seconds_since(start) * 1000);
      if (round > 0) continue;
      column.found.push_back(found.numbers.size());
      column.leaders.push_back(found.leader);
    }
    std::nth_element(times.begin(), times.begin() + kRounds / 2, times.end());
    column.milliseconds.push_back(times[kRounds / 2]);
  }
  return column;
}

}  // namespace

int main(int count, char** words) {
  const std::string name = count > 1 ? words[1] : "-";
  std::vector<std::size_t> sizes;
  for (int at = 2; at < count; ++at) sizes.push_back(std::stoul(words[at]));
  if (sizes.empty()) sizes = {10'000, 100'000};
#ifndef NDEBUG
  std::printf("note: built with asserts\n");
#endif
  const auto lines = lines_of(name, *std::max_element(sizes.begin(), sizes.end()));
  const auto sample = sample_of(lines);
  const fs::path folder = fs::temp_directory_path() / "cp-shelf-bench";
  fs::create_directories(folder);
  std::vector<Column> columns;
  for (const std::size_t size : sizes) columns.push_back(measure(lines, size, sample, folder));
  fs::remove_all(folder);
  std::printf("| |");
  for (const std::size_t size : sizes) std::printf(" %zu puzzles |", size);
  std::printf(" last : first |\n|---|");
  for (std::size_t at = 0; at <= sizes.size(); ++at) std::printf("---|");
  std::printf("\n| import, lines a second |");
  for (const Column& column : columns) std::printf(" %.0f |", column.import_rate);
  std::printf(" %.2f |\n| file before surveys, bytes a puzzle |", columns.back().import_rate / columns.front().import_rate);
  for (const Column& column : columns) std::printf(" %.0f |", column.bytes);
  std::printf(" %.2f |\n", columns.back().bytes / columns.front().bytes);
  for (std::size_t query = 0; query < std::size(kQueries); ++query) {
    std::printf("| `%s`, ms |", kQueries[query]);
    for (const Column& column : columns) std::printf(" %.2f (%zu found) |", column.milliseconds[query], column.found[query]);
    std::printf(" %.2f |\n", columns.back().milliseconds[query] / columns.front().milliseconds[query]);
  }
  std::printf("\nLed by, at the last size:\n");
  for (std::size_t query = 0; query < std::size(kQueries); ++query) std::printf("- `%s`: %s\n", kQueries[query], columns.back().leaders[query].c_str());
  return 0;
}
