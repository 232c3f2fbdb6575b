// SPDX-License-Identifier: Apache-2.0
// What can be said about the page as text. How it behaves in a browser is tested under tests/web.
#include "export/page_html.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>

#include "base/sha256.h"
#include "export/page_assets.h"
#include "export/page_trial.h"
#include "grid/notation.h"
#include "support/count_of.h"
#include "support/sample_lesson.h"
#include "support/small_xml.h"

namespace cp {
namespace {

using support::count_of;

TEST(Page, HasOneSectionAScene) {
  const Document document = support::sample_lesson();
  const std::string page = page_html(document);
  EXPECT_EQ(count_of(page, "<section class=\"scene"), static_cast<int>(document.scenes.size()));
  EXPECT_EQ(count_of(page, "<h2 id="), static_cast<int>(document.scenes.size()));
  EXPECT_EQ(count_of(page, "<h1>"), 1);
}

TEST(Page, IsTheSameEveryTime) { EXPECT_EQ(page_html(support::sample_lesson()), page_html(support::sample_lesson())); }

TEST(Page, EscapesTitleAndFacts) {
  Document document = support::sample_lesson("A <b>bold</b> & \"quoted\" lesson");
  document.scenes[0].paragraphs.push_back({"</script><script>alert(1)</script>", ""});
  document.scenes[0].exercises.push_back({"</script><script>alert(1)</script>", "</details><script>alert(1)</script>", {}, {}, {}});
  const std::string page = page_html(document);
  EXPECT_NE(page.find("<title>A &lt;b&gt;bold&lt;/b&gt; &amp; &quot;quoted&quot; lesson</title>"), std::string::npos);
  EXPECT_EQ(page.find("alert(1)</script>"), std::string::npos);
  EXPECT_EQ(count_of(page, "<script"), 1);
}

TEST(Page, ReachesForNothingOutside) {
  const std::string page = page_html(support::sample_lesson());
  for (const std::string_view part : {"http:", "https:", "src=", "@import", "url(http", "<link", " style=", " onclick"}) {
    EXPECT_EQ(page.find(part), std::string::npos) << part;
  }
  EXPECT_NE(page.find("default-src 'none'"), std::string::npos);
  EXPECT_EQ(page.find("unsafe"), std::string::npos);
}

TEST(Page, NotesAreForTheTeacherAlone) {
  const Document document = support::sample_lesson();
  EXPECT_EQ(page_html(document).find("Note for the teacher"), std::string::npos);
  EXPECT_NE(page_html(document, {true}).find("Note for the teacher"), std::string::npos);
}

TEST(Page, DefinesEachWordOnce) {
  const std::string page = page_html(support::sample_lesson());
  for (const std::string_view term : {"house", "balance", "cancel", "remainder", "tally", "slack"}) {
    EXPECT_EQ(count_of(page, "<dfn>" + std::string(term) + "</dfn>"), 1) << term;
  }
}

TEST(Page, TheSolutionIsFoldedAway) {
  const std::string page = page_html(support::sample_lesson());
  const auto answer = page.find("<details class=\"answer\">");
  ASSERT_NE(answer, std::string::npos);
  const auto body = page.find("<body>");
  // No picture of it stands before; only the list of scenes and the heading name it.
  EXPECT_EQ(page.substr(body, answer - body).find("-answer-t"), std::string::npos);
  EXPECT_NE(page.find("-answer-t", answer), std::string::npos);
  EXPECT_EQ(page.find("<details class=\"answer\" open"), std::string::npos);
}

// The body after <body> is written as XML would have it, apart from the script.
TEST(Page, TagsAreNested) {
  const std::string page = page_html(support::sample_lesson(), {true});
  const auto start = page.find("<body>");
  const auto script = page.find("<script>");
  ASSERT_NE(script, std::string::npos);
  std::string body = page.substr(start, script - start) + "</body>";
  const auto hidden = body.find(" hidden>");
  ASSERT_NE(hidden, std::string::npos);
  EXPECT_EQ(support::xml_fault(body), "");
}

// FIPS 180-4 SHA-256, worked out by Python's hashlib: the content policy must name the hashes of what the page contains.
TEST(Page, ContentPolicyNamesTheRightHashes) {
  const auto hash_of = [](std::string_view text) {
    const std::string path = testing::TempDir() + "cp_page_part.txt";
    std::ofstream(path, std::ios::binary) << text;
    const std::string command = "python3 -c \"import hashlib,base64,sys;print(base64.b64encode(hashlib.sha256(open(sys.argv[1],'rb').read()).digest()).decode(),end='')\" " + path;
    std::string hash;
    FILE* pipe = popen(command.c_str(), "r");
    for (int letter = pipe == nullptr ? EOF : fgetc(pipe); letter != EOF; letter = fgetc(pipe)) hash += static_cast<char>(letter);
    if (pipe != nullptr) pclose(pipe);
    return hash;
  };
  EXPECT_EQ(hash_of(page_style()), page_style_hash());
  EXPECT_EQ(hash_of(page_script()), page_script_hash());
}

TEST(Page, TakesAnEngineAndLetsItRun) {
  const Document document = support::sample_lesson();
  const std::string page = page_html(document, {false, "let engine;"});
  EXPECT_NE(page.find("<script>let engine;</script>"), std::string::npos);
  EXPECT_NE(page.find("'sha256-" + sha256_base64("let engine;") + "' 'wasm-unsafe-eval'; worker-src blob:;"), std::string::npos);
  EXPECT_EQ(page_html(document).find("wasm-unsafe-eval"), std::string::npos);
}

TEST(PageTrial, TellsWhatFallsButNoSolution) {
  const Document document = support::sample_lesson();
  const std::string json = page_trial_json(document);
  EXPECT_NE(json.find("\"scene-3\":{\"position\":\""), std::string::npos) << json.substr(0, 300);
  EXPECT_NE(json.find("\"out\":[\"r"), std::string::npos);
  EXPECT_EQ(json.find('<'), std::string::npos);
  for (const Scene& scene : document.scenes) {
    if (scene.answer) {
      EXPECT_EQ(json.find(to_line(scene.answer->position)), std::string::npos);
    }
  }
}

TEST(Page, SpeaksTheLanguageOfTheLesson) {
  DraftInput input = support::sample_input();
  input.language = "de";
  const std::string page = page_html(std::get<Document>(build_lesson(draft_lesson(input).value())), {true});
  EXPECT_NE(page.find("<html lang=\"de\">"), std::string::npos);
  for (const std::string_view words : {">Weiter<", ">Szene 1 von ", ">Alle Szenen<", ">Notiz f", ">Antwort zeigen<", "Linker Rest: ", ">links bekannt<"}) {
    EXPECT_NE(page.find(words), std::string::npos) << words;
  }
  for (const std::string_view words : {"Scene ", ">Next<", "Left pan", " the ", " and ", "known right", "candidates"}) EXPECT_EQ(page.substr(page.find("<body>"), page.find("<script>") - page.find("<body>")).find(words), std::string::npos) << words;
}

TEST(Page, QuestionsHideTheirAnswers) {
  const std::string page = page_html(support::sample_lesson());
  EXPECT_EQ(count_of(page, "<details class=\"reply\">"), 3);
  EXPECT_EQ(count_of(page, "<details class=\"reply\" open"), 0);
}

TEST(FigureFiles, AreNamedInOrderAndWellFormed) {
  const std::vector<ExportFile> files = figure_files(support::sample_lesson());
  ASSERT_GE(files.size(), 10U);
  EXPECT_EQ(files.front().name, "scene-01-board.svg");
  EXPECT_EQ(files.back().name, "scene-13-solution.svg");
  for (std::size_t i = 0; i < files.size(); ++i) {
    EXPECT_EQ(support::xml_fault(files[i].text), "") << files[i].name;
    EXPECT_EQ(files[i].text.find("var(--"), std::string::npos) << files[i].name;
    for (std::size_t j = 0; j < i; ++j) EXPECT_NE(files[i].name, files[j].name);
  }
}

}  // namespace
}  // namespace cp
