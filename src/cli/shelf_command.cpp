// SPDX-License-Identifier: Apache-2.0
// shelf import, shelf about: puzzles come in; what has come in.
#include "cli/shelf_command.h"

#include <algorithm>
#include <filesystem>
#include <thread>

#include "base/text.h"
#include "cli/progress.h"
#include "cli/stop_wish.h"
#include "shelf/intake.h"

namespace cp::cli {

namespace {

constexpr std::int64_t kMostShown = 1'000'000'000;

struct ImportWords {
  std::string shelf;
  std::vector<std::string> files;
  std::string columns;
  std::string name;
  int threads = 0;
  bool quiet = false;
  IntakeWish wish;
  bool json = false;
};

struct AboutWords {
  std::string shelf;
  bool faults = false;
  bool repeats = false;
  bool everything = false;
  bool json = false;
};

std::string counts_text(const ImportState& state) {
  return counted(static_cast<int>(state.place.line), "line") + ": " + counted(static_cast<int>(state.fresh), "new puzzle") + ", " +
         counted(static_cast<int>(state.repeats), "repeat") + ", " + counted(static_cast<int>(state.faults), "fault");
}

Json state_json(const ImportState& state) {
  Json json = Json::object();
  json["import"] = state.id;
  json["label"] = state.label;
  json["lines"] = state.place.line;
  json["bytes"] = state.place.offset;
  json["done"] = state.is_done;
  json["new"] = state.fresh;
  json["repeats"] = state.repeats;
  json["faults"] = state.faults;
  return json;
}

// Tells of every line that did not simply come in.
IntakeNews news_of(const ImportWords& words, const std::string& file, Progress& progress) {
  IntakeNews news;
  news.progress = [&progress, &file](const ImportState& state) {
    progress.show(file + ": " + counts_text(state));
    return StopWish::signal() == 0;
  };
  if (words.quiet) return news;
  news.fault = [&file](const NewLine& line) {
    const std::string place = line.column > 0 ? ":" + to_text(line.column) : "";
    complain(Error{ErrorCode::kBadPuzzle, file + ":" + to_text(static_cast<long long>(line.line)) + place + ": " + line.fault, "", {}});
  };
  news.repeat = [&file](const Shelved& repeat) {
    const std::string how = repeat.as == Shelved::As::kSame ? " is puzzle " + to_text(repeat.puzzle) : " is puzzle " + to_text(repeat.puzzle) + " up to symmetry";
    complain(Error{ErrorCode::kBadArgument, file + ":" + to_text(static_cast<long long>(repeat.line)) + how, "", {}});
  };
  return news;
}

Result<IntakeSource> open_file(ImportWords& words, const std::string& file) {
  words.wish.file = file;
  words.wish.label = words.name.empty() ? (file == "-" ? "" : file) : words.name;
  words.wish.threads = threads_wished(words.threads);
  return IntakeSource::open(words.wish);
}

int import_file(Shelf& shelf, const ImportWords& words, const std::string& file, IntakeSource source) {
  Progress progress;
  const std::string called = file == "-" ? "standard input" : file;
  const auto report = take_in(shelf, words.wish, news_of(words, called, progress), std::move(source));
  if (!report) return fail(report.error(), words.json);
  Json json = state_json(report->state);
  json["resumed"] = report->was_resumed;
  const std::string told = called + ": " + (report->was_resumed ? "(going on from an earlier import) " : "") + counts_text(report->state) + "\n";
  if (!say(words.json ? api::to_line(json) + "\n" : told)) return cannot_say();
  if (report->was_stopped && !report->state.is_done) {
    complain(Error{ErrorCode::kLimit, "stopped after line " + to_text(static_cast<long long>(report->state.place.line)), "what came in is safe; the same command goes on from there", {}});
    return static_cast<int>(api::Outcome::kOpen);
  }
  return 0;
}

int run_import(ImportWords& words) {
  auto columns = parse_column_names(words.columns);
  if (!columns) return fail(columns.error(), words.json, {words.columns, "--columns"});
  words.wish.columns = std::move(columns).value();
  for (const std::string& tag : words.wish.tags) {
    if (auto wrong = wrong_word(tag)) return fail(*wrong, words.json, {tag, "--tag"});
  }
  if (words.files.size() > 1 && !words.name.empty()) return fail(Error{ErrorCode::kBadArgument, "one --name cannot stand for several files", "import them one by one", {}}, words.json);
  for (const std::string& file : words.files) {  // before a new shelf is made
    std::error_code ignored;
    if (file != "-" && !std::filesystem::exists(file, ignored)) return fail(Error{ErrorCode::kNotFound, "there is no file '" + file + "'", "check the name", {}}, words.json);
  }
  auto source = open_file(words, words.files.front());  // what it refuses leaves no new shelf either
  if (!source) return fail(source.error(), words.json);
  auto shelf = Shelf::open(words.shelf, Database::Mode::kCreate);
  if (!shelf) return fail(shelf.error(), words.json);
  const StopWish stop;
  for (const std::string& file : words.files) {
    if (&file != &words.files.front()) source = open_file(words, file);
    if (!source) return fail(source.error(), words.json);
    if (const int code = import_file(shelf.value(), words, file, std::move(source).value()); code != 0) return code;
  }
  if (auto trouble = shelf.value().tidy()) return fail(*trouble, words.json);
  return 0;
}

// The lines of all imports that were faulty or repeats.
std::optional<Error> list_lines(Shelf& shelf, const AboutWords& words, const ImportState& state, std::string& text) {
  if (words.faults) {
    const auto faults = shelf.faults_of(state.id, kMostShown);
    if (!faults) return faults.error();
    for (const FaultyLine& each : *faults) text += "  line " + to_text(static_cast<long long>(each.line)) + ": " + each.message + "\n";
  }
  if (words.repeats) {
    const auto repeats = shelf.repeats_of(state.id, kMostShown);
    if (!repeats) return repeats.error();
    for (const RepeatedLine& each : *repeats) text += "  line " + to_text(static_cast<long long>(each.line)) + ": puzzle " + to_text(each.puzzle) + (each.is_same ? "\n" : " up to symmetry\n");
  }
  return std::nullopt;
}

int run_about(const AboutWords& words) {
  auto shelf = Shelf::open(words.shelf, Database::Mode::kRead);
  if (!shelf) return fail(shelf.error(), words.json);
  if (words.everything) {
    bool is_read = true;
    SaidTogether lines;
    const auto trouble = shelf.value().each_line([&](const std::string& line) { is_read = is_read && lines.add(line + "\n"); });
    if (!is_read || !lines.end()) return cannot_say();
    return trouble ? fail(*trouble, words.json) : 0;
  }
  const auto counts = shelf.value().counts();
  if (!counts) return fail(counts.error(), words.json);
  const auto imports = shelf.value().imports();
  if (!imports) return fail(imports.error(), words.json);
  Json json = Json::object();
  json["puzzles"] = counts->puzzles;
  json["proper"] = counts->proper;
  json["surveyed"] = counts->surveyed;
  json["used"] = counts->used;
  json["notes"] = counts->notes;
  json["imports"] = Json::array();
  std::string text = counted(static_cast<int>(counts->puzzles), "puzzle") + ", " + to_text(counts->proper) + " proper, " + to_text(counts->surveyed) + " surveyed, " + to_text(counts->used) +
                     " used in lessons, " + counted(static_cast<int>(counts->notes), "note") + "\n";
  for (const ImportState& state : *imports) {
    json["imports"].push_back(state_json(state));
    text += "import " + to_text(state.id) + (state.label.empty() ? "" : ", " + state.label) + ": " + counts_text(state) + (state.is_done ? "\n" : "; not finished\n");
    if (auto trouble = list_lines(shelf.value(), words, state, text)) return fail(*trouble, words.json);
  }
  return say(words.json ? api::to_line(json) + "\n" : text) ? 0 : cannot_say();
}

}  // namespace

void add_shelf_file(CLI::App& command, std::string& file) { command.add_option("SHELF", file, "the file of the shelf")->required(); }

int threads_wished(int wish) { return wish > 0 ? wish : std::max(1, static_cast<int>(std::thread::hardware_concurrency())); }

int show_puzzles(Shelf& shelf, const std::vector<std::int64_t>& numbers, const std::function<std::string(const ShelvedPuzzle& puzzle)>& show) {
  SaidTogether texts;
  for (const std::int64_t number : numbers) {
    const auto puzzle = shelf.puzzle(number);
    if (!puzzle) return texts.end() ? fail(puzzle.error(), false) : cannot_say();
    if (!texts.add(show(*puzzle))) return cannot_say();
  }
  return texts.end() ? 0 : cannot_say();
}

void add_shelf_import(CLI::App& shelf, Program& program) {
  auto words = std::make_shared<ImportWords>();
  CLI::App* command = shelf.add_subcommand("import", "Put the puzzles of files on the shelf; the same command goes on where it was stopped");
  add_shelf_file(*command, words->shelf);
  command->add_option("FILE", words->files, "puzzles one a line, or a table with a header; plain, gzip or zstd; - for standard input")->required();
  command->add_option("--source", words->wish.source, "where the puzzles come from")->type_name("TEXT");
  command->add_option("--licence", words->wish.licence, "what one may do with them")->type_name("TEXT");
  command->add_option("--tag", words->wish.tags, "a tag for every puzzle; may be repeated")->type_name("NAME")->allow_extra_args(false);
  command->add_option("--columns", words->columns, "what the columns of a table are called, as in puzzle=grid,name=title")->type_name("NAMES");
  command->add_option("--name", words->name, "under this name the import is gone on with, instead of the name of the file")->type_name("TEXT");
  command->add_flag("--again", words->wish.again, "from the first line, whatever was imported before");
  command->add_option("--threads", words->threads, "how many cores to use; 0: all")->type_name("N")->check(CLI::Range(0, 256))->capture_default_str();
  command->add_option("--block", words->wish.block, "lines that are shelved in one piece")->type_name("N")->check(CLI::Range(1, 1'000'000))->capture_default_str();
  command->add_flag("--quiet", words->quiet, "do not tell of each faulty and repeated line; shelf about lists them later");
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/shelf.md)");
  command->footer(
      "Exit code 0: done, faulty lines or not; 2: stopped on the way; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise shelf import my.shelf puzzles.txt --source \"evening class\"\n"
      "  counterpoise shelf import my.shelf table.csv.gz --columns puzzle=grid,name=title\n");
  command->callback([words, &program] { program.exit_code = run_import(*words); });

  auto about = std::make_shared<AboutWords>();
  command = shelf.add_subcommand("about", "What is on the shelf, and how its imports went");
  add_shelf_file(*command, about->shelf);
  command->add_flag("--faults", about->faults, "list the faulty lines of the imports");
  command->add_flag("--repeats", about->repeats, "list the lines whose puzzle was there, and which it is");
  command->add_flag("--everything", about->everything, "a line for everything it holds, to compare shelves");
  command->add_flag("--json", about->json, "answer in JSON (docs/formats/shelf.md)");
  command->footer("Example:\n  counterpoise shelf about my.shelf --faults\n");
  command->callback([about, &program] { program.exit_code = run_about(*about); });
}

void add_shelf(Program& program) {
  CLI::App* shelf = program.app.add_subcommand("shelf", "Your collection of puzzles in one file: import, find, note, export");
  shelf->require_subcommand(1);
  add_shelf_import(*shelf, program);
  add_shelf_find(*shelf, program);
  add_shelf_survey(*shelf, program);
  add_shelf_words(*shelf, program);
  shelf->footer(
      "Examples:\n"
      "  counterpoise shelf import my.shelf puzzles.txt\n"
      "  counterpoise shelf find my.shelf \"proper and givens <= 26 and unused\"\n"
      "counterpoise shelf WORD --help explains each.\n");
}

}  // namespace cp::cli
