// SPDX-License-Identifier: Apache-2.0
#include "export/file_words.h"

#include <array>

namespace cp {

namespace {

struct Entry {
  FileWord word;
  std::string_view english;
  std::string_view german;
};

constexpr std::array<Entry, 27> kEntries = {{
    {FileWord::kScene, "Scene", "Szene"},
    {FileWord::kOf, "of", "von"},
    {FileWord::kPage, "Page", "Seite"},
    {FileWord::kNotes, "Notes", "Notizen"},
    {FileWord::kStepsOneByOne, "The steps one by one", "Die Schritte einzeln"},
    {FileWord::kExercise, "Exercise", "Aufgabe"},
    {FileWord::kExercises, "Exercises", "Aufgaben"},
    {FileWord::kAnswer, "Answer", "Antwort"},
    {FileWord::kAnswers, "Answers", "Antworten"},
    {FileWord::kSolution, "Solution", "L\u00f6sung"},
    {FileWord::kTeacherNote, "Note for the teacher", "Notiz f\u00fcr die Lehrkraft"},
    {FileWord::kChapters, "Chapters", "Kapitel"},
    {FileWord::kPuzzle, "Puzzle", "R\u00e4tsel"},
    {FileWord::kLevel, "Level", "Stufe"},
    {FileWord::kMinutes, "minutes", "Minuten"},
    {FileWord::kTeaches, "Teaches", "Lehrt"},
    {FileWord::kNeeds, "Needs", "Setzt voraus"},
    {FileWord::kSource, "Source", "Quelle"},
    {FileWord::kLicence, "Licence", "Lizenz"},
    {FileWord::kArgument, "The argument", "Die Begr\u00fcndung"},
    {FileWord::kWorksheet, "Worksheet", "Arbeitsblatt"},
    {FileWord::kHandout, "Handout", "Handzettel"},
    {FileWord::kTryFirst, "The answer is at the end.", "Die Antwort steht am Ende."},
    {FileWord::kTallyRowRight, "known right", "bekannt rechts"},
    {FileWord::kTallyRowLeft, "known left", "bekannt links"},
    {FileWord::kSurplus, "surplus", "\u00dcberschuss"},
    {FileWord::kTally, "tally", "Bilanz"},
}};

bool is_language(std::string_view tag, std::string_view language) {
  return tag == language || (tag.size() > language.size() && tag.substr(0, language.size()) == language && tag[language.size()] == '-');
}

}  // namespace

bool has_file_words(std::string_view language) { return is_language(language, "en") || is_language(language, "de"); }

std::string file_word(FileWord word, std::string_view language) {
  const bool is_german = is_language(language, "de");
  for (const Entry& entry : kEntries) {
    if (entry.word == word) return std::string(is_german ? entry.german : entry.english);
  }
  return {};
}

}  // namespace cp
