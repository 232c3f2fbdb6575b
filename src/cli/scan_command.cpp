// SPDX-License-Identifier: Apache-2.0
// scan: a collection of any size, surveyed puzzle by puzzle.
#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <filesystem>

#include "cli/collection_commands.h"
#include "cli/progress.h"
#include "cli/report.h"
#include "cli/stop_wish.h"
#include "sweep/sweep.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

struct Words {
  std::string depth = "balances";
  SweepWish wish;
  bool ranks = false;
};

// Turns this process into a rank of an MPI job; comes back only when that is not possible.
Error become_rank(const SweepWish& wish) {
  std::error_code failed;
  const fs::path own = fs::read_symlink("/proc/self/exe", failed);
  const std::string program = (own.parent_path() / "counterpoise_ranks").string();
  const std::string depth(name_of(wish.survey.depth));
  const std::string patience = std::to_string(wish.patience);
  execl(program.c_str(), program.c_str(), wish.input.c_str(), wish.output.c_str(), depth.c_str(), wish.survey.ask_needed ? "1" : "0", wish.resume ? "1" : "0", wish.replace ? "1" : "0", patience.c_str(),
        static_cast<char*>(nullptr));
  return Error{ErrorCode::kBadArgument, "this Counterpoise was built without MPI", "install libopenmpi-dev and build again, or leave --ranks out", {}};
}

std::string rate_text(const SweepEnd& end, std::chrono::duration<double> spent) {
  const std::uint64_t own = end.count.puzzles - end.before.puzzles;
  std::string text = std::to_string(end.count.puzzles) + (end.count.puzzles == 1 ? " puzzle" : " puzzles");
  if (end.before.puzzles > 0) text += " (" + std::to_string(own) + " in this run)";
  if (end.count.faults > 0) text += ", " + std::to_string(end.count.faults) + (end.count.faults == 1 ? " line that is none" : " lines that are none");
  char rate[32];
  std::snprintf(rate, sizeof rate, "%.1f", static_cast<double>(own) / std::max(spent.count(), 1e-3));
  return text + ", " + rate + " a second";
}

int run(Words& words) {
  const auto depth = survey_depth_named(words.depth);
  if (!depth) return fail({ErrorCode::kBadArgument, "'" + words.depth + "' is no depth", "the depths are form, basics, balances and full", {}}, false, {words.depth, "--depth"});
  SweepWish& wish = words.wish;
  wish.survey.depth = *depth;
  if (wish.survey.ask_needed && *depth != SurveyDepth::kFull) {
    return fail({ErrorCode::kBadArgument, "--needed goes with --depth full", "depth balances tells by itself whether balances are needed", {}}, false);
  }
  if (wish.threads < 0 || wish.patience < 0) return fail({ErrorCode::kBadArgument, "--threads and --patience are 0 or more", "0 stands for all cores, and for waiting without end", {}}, false);
  if (words.ranks) return fail(become_rank(wish), false);

  const StopWish stop;
  const auto began = std::chrono::steady_clock::now();
  const auto spent = [&] { return std::chrono::duration<double>(std::chrono::steady_clock::now() - began); };
  SweepEnd so_far;
  bool has_begun = false;
  Result<SweepEnd> end = SweepEnd{};
  {
    Progress progress;
    SweepWatch watch;
    watch.wants_stop = [] { return StopWish::signal() != 0; };
    watch.progress = [&](const ScanCount& count) {
      if (!has_begun) so_far.before = wish.resume ? count : ScanCount{};  // near enough for a rate while it runs
      has_begun = true;
      so_far.count = count;
      progress.show(rate_text(so_far, spent()));
    };
    end = sweep(wish, watch);
  }
  if (!end) return fail(end.error(), false);
  std::fprintf(stderr, "counterpoise: %s\n", rate_text(*end, spent()).c_str());
  if (!end->was_stopped) return 0;
  if (wish.output != "-") std::fprintf(stderr, "counterpoise: stopped; the same command with --resume goes on\n");
  end_by(StopWish::signal());
  return 0;
}

}  // namespace

void add_scan(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("scan", "Survey every puzzle of a collection, one JSON line each");
  command->add_option("INPUT", words->wish.input, "a file of puzzles, one a line (first field of a table); plain, gzip or zstd; '-': standard input")->required();
  command->add_option("--out", words->wish.output, "the file for the lines; without it they go to standard output")->type_name("FILE");
  command->add_option("--depth", words->depth, "form, basics, balances or full")->type_name("DEPTH")->capture_default_str();
  command->add_flag("--needed", words->wish.survey.ask_needed, "with --depth full: also which techniques are needed; takes several times as long");
  CLI::Option* resume = command->add_flag("--resume", words->wish.resume, "go on with an unfinished --out FILE");
  command->add_flag("--replace", words->wish.replace, "write over --out FILE if it is there")->excludes(resume);
  command->add_option("--threads", words->wish.threads, "how many; 0: as many as the machine offers")->type_name("N")->capture_default_str();
  command->add_flag("--ranks", words->ranks, "this process is a rank of an MPI job (mpirun, srun)");
  command->add_option("--patience", words->wish.patience, "with --ranks: seconds until a rank that does not answer is given up; 0: never")->type_name("N")->capture_default_str();
  command->footer(
      "Exit code 0: done, also when some lines were no puzzles; 64: bad input, or the lines can not be written.\n"
      "Examples:\n"
      "  counterpoise scan collection.txt --out collection.jsonl\n"
      "  counterpoise scan collection.csv.gz --depth form\n"
      "  mpirun -n 16 counterpoise scan collection.txt.zst --out all.jsonl --ranks\n");
  command->callback([words, &program] { program.exit_code = run(*words); });
}

}  // namespace cp::cli
