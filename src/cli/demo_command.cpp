// SPDX-License-Identifier: Apache-2.0
// The bundled puzzle is data/demo.txt; the build puts it into the program, so that no path has to be right.
#include "cli/command.h"
#include "cli/lesson_command.h"
#include "cli/report.h"

#ifndef CP_DEMO_PUZZLE
#error "CMakeLists.txt defines CP_DEMO_PUZZLE from data/demo.txt"
#endif

namespace cp::cli {

namespace {

// The puzzle was composed for the ring theorem: four outer columns against the ring of two rows and two boxes.
constexpr const char* kLeft = "c1,c2,c8,c9";
constexpr const char* kRight = "r3,r7,b4,b6";

constexpr const char* kHow =
    "\nYour own: counterpoise lesson PUZZLE -o my-lesson            a lesson on your puzzle\n"
    "          counterpoise lesson draft PUZZLE -o my.lesson      its words, to edit; then lesson build my.lesson -o my-lesson\n"
    "          counterpoise series build -o my-series --only page,handout,stills   the four lessons again, with paper and pictures\n";

struct Words {
  std::string folder = "counterpoise-lesson";
  std::string series = "counterpoise-series";
  bool notes = false;
  bool json = false;
};

}  // namespace

void add_demo(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("demo", "A lesson on a bundled puzzle and the bundled series: the shortest way to see what this is");
  command->add_option("-o,--output", words->folder, "the folder for the lesson")->type_name("DIR")->capture_default_str();
  command->add_option("--series", words->series, "the folder for the four lessons that come along")->type_name("DIR")->capture_default_str();
  command->add_flag("--notes", words->notes, "print the notes for the teacher on the page too");
  command->add_flag("--json", words->json, "answer in JSON (docs/formats/lesson.md)");
  command->footer(
      "Examples:\n"
      "  counterpoise demo\n"
      "  counterpoise demo --output first-lesson\n");
  command->callback([words, &program] {
    api::LessonRequest request{CP_DEMO_PUZZLE, "", words->notes, 1, kLeft, kRight};
    request.source = "Counterpoise, composed for this lesson";
    program.exit_code = make_lesson(request, words->folder, words->json, "the bundled puzzle");
    if (program.exit_code == 0) program.exit_code = make_bundled_series(words->series, words->notes, words->json);
    if (program.exit_code == 0 && !words->json && !say(kHow)) program.exit_code = cannot_say();
  });
}

}  // namespace cp::cli
