// SPDX-License-Identifier: Apache-2.0
// portrait: a collection at one glance, as a page and as figures.
#include <filesystem>

#include "cli/collection_commands.h"
#include "base/small_letters.h"
#include "cli/record_lines.h"
#include "cli/report.h"
#include "cli/whole_file.h"
#include "course/portrait.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

struct Words {
  std::string records;
  std::string page;
  std::string figures;
  std::string title = "A portrait of the collection";
  bool replace = false;
};

// "how-the-path-ends.svg".
std::string file_name(const std::string& title) {
  std::string name;
  for (const char c : title) name += c == ' ' ? '-' : small_letter(c);
  return name + ".svg";
}

// What is wrong with the name of the page, or would be lost under it.
std::optional<Error> refuse_page(const Words& words) {
  const std::string ending = in_small_letters(fs::path(words.page).extension().string());
  if (ending != ".html" && ending != ".htm") {
    return Error{ErrorCode::kBadArgument, "'" + words.page + "' is no name for a page", "the page is HTML: end its name in .html; --figures FOLDER writes the figures as SVG", {}};
  }
  std::error_code ignored;
  if (fs::equivalent(words.records, words.page, ignored)) return Error{ErrorCode::kBadArgument, "'" + words.page + "' holds the lines of the scan", "choose another name for the page", {}};
  return refuse_loss(words.page, words.replace);
}

struct Figure {
  fs::path file;
  std::string svg;
};

std::vector<Figure> figures_of(const Portrait& portrait, const fs::path& folder) {
  std::vector<Figure> figures;
  for (const Chart& chart : portrait.charts()) figures.push_back({folder / file_name(chart.title), chart_svg(chart, SvgUse::kFile, "chart-" + std::to_string(figures.size() + 1))});
  return figures;
}

int run(const Words& words) {
  if (auto refused = refuse_page(words)) return fail(*refused, false);
  Portrait portrait;
  const auto error = for_each_record(words.records, [&](const ScanLine& line, std::uint64_t) {
    if (line.record) portrait.add(*line.record);
    else portrait.add_fault();
  });
  if (error) return fail(*error, false);
  if (portrait.puzzles() == 0) return fail({ErrorCode::kBadArgument, "'" + words.records + "' holds no puzzle", "give it the lines that `counterpoise scan` writes", {}}, false);
  const std::vector<Figure> figures = words.figures.empty() ? std::vector<Figure>() : figures_of(portrait, words.figures);
  for (const Figure& figure : figures) {
    if (auto refused = refuse_loss(figure.file, words.replace)) return fail(*refused, false);
  }
  if (auto failed = write_whole(words.page, kPermissions, portrait_html(words.title, portrait))) return fail(*failed, false);
  std::string told = "The portrait is in " + words.page + "\n";
  if (!words.figures.empty()) {
    if (auto failed = make_folder(words.figures)) return fail(*failed, false);
    for (const Figure& figure : figures) {
      if (auto wrong = write_whole(figure.file, kPermissions, figure.svg)) return fail(*wrong, false);
    }
    told += std::to_string(figures.size()) + " figures are in " + words.figures + "\n";
  }
  return say(told + portrait.words() + "\n") ? 0 : cannot_say();
}

}  // namespace

void add_portrait(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("portrait", "A scanned collection at one glance: measure, techniques, balances");
  command->add_option("RECORDS", words->records, "the lines of a scan; plain, gzip or zstd; '-': standard input")->required();
  command->add_option("-o,--output", words->page, "the page to write, as in portrait.html")->type_name("FILE")->required();
  command->add_option("--figures", words->figures, "a folder for the figures by themselves (SVG)")->type_name("FOLDER");
  command->add_flag("--replace", words->replace, "write over the page and the figures if they are there");
  command->add_option("--title", words->title, "of the page")->capture_default_str();
  command->footer(
      "Exit code 0: done; 64: bad input, or a file can not be written.\n"
      "Examples:\n"
      "  counterpoise scan collection.txt --out collection.jsonl && counterpoise portrait collection.jsonl -o portrait.html\n"
      "  counterpoise portrait collection.jsonl -o portrait.html --figures figures\n");
  command->callback([words, &program] { program.exit_code = run(*words); });
}

}  // namespace cp::cli
