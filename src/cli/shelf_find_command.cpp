// SPDX-License-Identifier: Apache-2.0
// shelf find, shelf export.
#include "base/text.h"
#include "cli/shelf_command.h"

namespace cp::cli {

namespace {

struct FindWords {
  std::string shelf;
  std::string query;
  std::string order = "number";
  std::string form = "words";
  FindOptions options;
  bool explain = false;
  bool json = false;
};

int explain(Shelf& shelf, const QueryTerm& query, const FindWords& words) {
  const auto account = shelf.explain(query, words.options);
  if (!account) return fail(account.error(), words.json);
  Json json = Json::object();
  json["understood"] = account->understood;
  json["leader"] = account->leader;
  json["sql"] = account->sql;
  json["plan"] = account->plan;
  const std::string text = "understood: " + account->understood + "\nfirst: " + account->leader + "\nSQL: " + account->sql + "\nplan:\n  " + joined(account->plan, "\n  ") + "\n";
  return say(words.json ? api::to_line(json) + "\n" : text) ? 0 : cannot_say();
}

int run_find(FindWords& words) {
  const auto order = read_order(words.order);
  if (!order) return fail(order.error(), words.json);
  words.options.order = *order;
  const auto query = read_query(words.query);
  if (!query) return fail(query.error(), words.json, {words.query, "QUERY"}, "query");
  auto shelf = Shelf::open(words.shelf, Database::Mode::kRead);
  if (!shelf) return fail(shelf.error(), words.json);
  if (words.explain) return explain(shelf.value(), *query, words);
  const auto found = shelf.value().find(*query, words.options);
  if (!found) return fail(found.error(), words.json);
  if (words.json) {
    const auto answer = find_json(shelf.value(), *found);
    if (!answer) return fail(answer.error(), true);
    return say(*answer + "\n") ? 0 : cannot_say();
  }
  if (const int code = show_puzzles(shelf.value(), found->numbers, shelf_words); code != 0) return code;
  if (found->numbers.empty()) return say("Nothing on the shelf fits.\n") ? 0 : cannot_say();
  return !found->has_more || say("and more; --skip " + to_text(words.options.skip + words.options.limit) + " shows the next, --limit 0 all\n") ? 0 : cannot_say();
}

int run_export(FindWords& words) {
  const auto order = read_order(words.order);
  if (!order) return fail(order.error(), false);
  words.options.order = *order;
  const auto query = read_query(words.query);
  if (!query) return fail(query.error(), false, {words.query, "QUERY"}, "query");
  auto shelf = Shelf::open(words.shelf, Database::Mode::kRead);
  if (!shelf) return fail(shelf.error(), false);
  const auto found = shelf.value().find(*query, words.options);
  if (!found) return fail(found.error(), false);
  if (words.form == "table" && !say(shelf_table_header() + "\n")) return cannot_say();
  return show_puzzles(shelf.value(), found->numbers, [&](const ShelvedPuzzle& puzzle) {
    if (words.form == "records") return puzzle.record.empty() ? std::string() : puzzle.record + "\n";
    return (words.form == "table" ? shelf_record(puzzle) : words.form == "json" ? shelf_json(puzzle) : shelf_line(puzzle)) + "\n";
  });
}

void add_order(CLI::App& command, FindWords& words) {
  command.add_option("--by", words.order, "the order: number, givens, steps, hardest or effort")->type_name("ORDER")->capture_default_str();
  command.add_option("--limit", words.options.limit, "how many puzzles; 0 for all")->type_name("N")->check(CLI::Range(0, 1'000'000'000))->capture_default_str();
  command.add_option("--skip", words.options.skip, "pass over so many first")->type_name("N")->check(CLI::Range(0, 1'000'000'000));
}

}  // namespace

void add_shelf_find(CLI::App& shelf, Program& program) {
  auto words = std::make_shared<FindWords>();
  CLI::App* command = shelf.add_subcommand("find", "Puzzles that fit a query (docs/formats/query.md)");
  add_shelf_file(*command, words->shelf);
  command->add_option("QUERY", words->query, "for example: proper and givens <= 26 and unused");
  add_order(*command, *words);
  command->add_flag("--explain", words->explain, "do not search; say how the query was understood and which index leads");
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/shelf.md)");
  command->footer(
      "Exit code 0: done, whether anything fits or not; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise shelf find my.shelf \"proper and needs balance slack <= 1 over rows columns and no uniqueness and unused\"\n"
      "  counterpoise shelf find my.shelf \"uses x-wing and tail singles\" --by effort --limit 5\n");
  command->callback([words, &program] { program.exit_code = run_find(*words); });

  auto all = std::make_shared<FindWords>();
  all->options.limit = 0;
  all->form = "lines";
  command = shelf.add_subcommand("export", "The puzzles of the shelf as lines, as a table or as JSON lines");
  add_shelf_file(*command, all->shelf);
  command->add_option("QUERY", all->query, "only those that fit; without it all");
  command->add_option("--as", all->form, "lines, table (CSV, which shelf import reads again), json (an object a line), or records (of surveyed puzzles, as scan writes them)")
      ->type_name("FORM")
      ->check(CLI::IsMember({"lines", "table", "json", "records"}))
      ->capture_default_str();
  add_order(*command, *all);
  command->footer(
      "Exit code 0: done; 64: bad input.\n"
      "Examples:\n"
      "  counterpoise shelf export my.shelf > all.txt\n"
      "  counterpoise shelf export my.shelf \"tag opening\" --as table > opening.csv\n");
  command->callback([all, &program] { program.exit_code = run_export(*all); });
}

}  // namespace cp::cli
