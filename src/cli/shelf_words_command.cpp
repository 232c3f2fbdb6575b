// SPDX-License-Identifier: Apache-2.0
// shelf note, shelf tag, shelf use: the teacher's words.
#include "base/text.h"
#include "cli/shelf_command.h"

namespace cp::cli {

namespace {

struct NoteWords {
  std::string shelf;
  std::int64_t number = 0;
  std::string text;
  bool drop = false;
};

struct LabelWords {
  std::string shelf;
  std::string word;
  std::vector<std::int64_t> numbers;
  std::string query;
  bool drop = false;
};

int run_note(const NoteWords& words) {
  if (!words.drop && trimmed(words.text).empty()) return fail(Error{ErrorCode::kBadArgument, "the note is empty", "write its text, or --drop to take notes away", {}}, false);
  auto shelf = Shelf::open(words.shelf, Database::Mode::kWrite);
  if (!shelf) return fail(shelf.error(), false);
  const auto trouble = words.drop ? shelf.value().drop_notes(words.number) : shelf.value().add_note(words.number, words.text);
  return trouble ? fail(*trouble, false) : show_puzzles(shelf.value(), {words.number}, shelf_words);
}

// Tags and lessons: the same work on different shelves of the mind.
int run_label(const LabelWords& words, std::string_view kind, const std::string& what) {
  if (auto wrong = wrong_word(words.word); wrong && !words.drop) return fail(*wrong, false);  // whatever is there may go
  if (words.numbers.empty() == words.query.empty()) {
    return fail(Error{ErrorCode::kBadArgument, words.query.empty() ? "no puzzle is named" : "puzzles are named by number and by query", "give their numbers, or --find QUERY", {}}, false);
  }
  const auto query = read_query(words.query);
  if (!query) return fail(query.error(), false, {words.query, "--find"});
  auto shelf = Shelf::open(words.shelf, Database::Mode::kWrite);
  if (!shelf) return fail(shelf.error(), false);
  std::vector<std::int64_t> numbers = words.numbers;
  if (numbers.empty()) {
    auto found = shelf.value().find(*query, {FindOrder::kNumber, 0, 0});
    if (!found) return fail(found.error(), false);
    numbers = std::move(found).value().numbers;
  }
  const auto trouble = words.drop ? shelf.value().drop_word(numbers, kind, words.word) : shelf.value().add_word(numbers, kind, words.word);
  if (trouble) return fail(*trouble, false);
  return say(what + " " + words.word + (words.drop ? " taken from " : " given to ") + counted(static_cast<int>(numbers.size()), "puzzle") + "\n") ? 0 : cannot_say();
}

CLI::App* add_label(CLI::App& shelf, Program& program, const std::string& name, const std::string& about, std::string_view kind, const std::string& what) {
  auto words = std::make_shared<LabelWords>();
  CLI::App* command = shelf.add_subcommand(name, about);
  add_shelf_file(*command, words->shelf);
  command->add_option("NAME", words->word, "the name of the " + what)->required();
  command->add_option("NUMBER", words->numbers, "the numbers of puzzles");
  command->add_option("--find", words->query, "all puzzles that fit this query")->type_name("QUERY");
  command->add_flag("--drop", words->drop, "take it away instead");
  command->callback([words, kind, what, &program] { program.exit_code = run_label(*words, kind, what); });
  return command;
}

}  // namespace

void add_shelf_words(CLI::App& shelf, Program& program) {
  auto words = std::make_shared<NoteWords>();
  CLI::App* command = shelf.add_subcommand("note", "Write a note on a puzzle");
  add_shelf_file(*command, words->shelf);
  command->add_option("NUMBER", words->number, "the number of the puzzle")->required();
  command->add_option("TEXT", words->text, "the note");
  command->add_flag("--drop", words->drop, "take the notes of this puzzle away");
  command->footer("Example:\n  counterpoise shelf note my.shelf 17 \"good first puzzle on fish\"\n");
  command->callback([words, &program] { program.exit_code = run_note(*words); });
  add_label(shelf, program, "tag", "Give puzzles a tag", kTagKind, "tag")
      ->footer("Examples:\n  counterpoise shelf tag my.shelf opening 17 18\n  counterpoise shelf tag my.shelf small --find \"givens <= 22\"\n");
  add_label(shelf, program, "use", "Note that a lesson or a series uses puzzles", kLessonKind, "lesson")->footer("Example:\n  counterpoise shelf use my.shelf spring-course 17 18\n");
}

}  // namespace cp::cli
