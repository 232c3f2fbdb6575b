// SPDX-License-Identifier: Apache-2.0
// A built lesson: scenes in order, each with words and pictures. A plain value; exporters turn it into pages and files.
// It is made from a written lesson (lesson/written_lesson.h) by build_lesson(); every claim and step in it has been proved.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "claim/verdict.h"
#include "lesson/figure.h"
#include "speak/paragraph.h"

namespace cp {

// A question for the audience. The answer must stay hidden until it is asked for; on paper it stands at the end.
struct Exercise {
  std::string question;
  std::string answer;                   // paragraphs, separated by an empty line; may be empty
  std::optional<Figure> answer_board;   // belongs to the answer
  std::optional<PanPicture> answer_pans;
  std::string answer_note = {};         // what an exporter may add below the answer; may be empty
};

// A claim of the lesson with the verdict it got when the lesson was built (always proved in what build_lesson() gives).
struct AskedClaim {
  std::string text;      // as written
  std::string footing;   // as written; "" stands for the position and all rules
  Verdict verdict = Verdict::kProved;
  std::string reason;    // a sentence or two
  int line = 0;          // of the written lesson
  int number = 0;        // as footings count, from 1
  bool is_asked = true;  // false only in a review: then verdict and reason mean nothing
  std::string key;       // of a review: claims with the same key have the same verdict, in this lesson, another one or another version
};

struct Scene {
  std::string id;                    // letters, digits and '-'; unique in the lesson, the same after an edit elsewhere
  std::string heading;
  std::vector<Paragraph> paragraphs;
  std::optional<Figure> board;
  std::optional<PanPicture> pans;
  std::optional<TallyTable> table;
  std::vector<std::string> steps;    // single steps in order, for readers who want them all; may be empty
  std::vector<Exercise> exercises;
  std::vector<AskedClaim> claims;
  std::optional<Figure> answer;      // the solution: must stay hidden until it is asked for
  std::string note;                  // for the teacher alone: likely slips, what to wait for; may be empty
  int seconds = 0;                   // how long it takes: as the teacher wrote it, otherwise from the number of words
  bool is_time_given = false;        // the teacher wrote it
  int line = 0;                      // where its heading stands in the written lesson; 0: it was not read from one
};

struct Document {
  std::string id;                    // made from the title; letters, digits and '-'
  std::string title;
  std::string puzzle;                // givens, one character a cell
  std::string language = "en";       // BCP 47 tag: of the words, and of what the program adds
  bool is_right_to_left = false;     // follows from the language
  std::string idea;                  // "balance", the id of a technique, or words of the teacher
  int level = 0;                     // 1 (gentle) .. 5; 0: not given
  int minutes = 0;                   // planned by the teacher; 0: not given
  std::vector<std::string> needs;    // techniques and ideas that were taught before
  std::vector<std::string> teaches;
  std::vector<std::string> uses;     // ids of the techniques that its steps really use, in the order of first use
  std::string source;                // where the puzzle comes from; may be empty
  std::string licence;               // may be empty
  std::vector<std::string> facts;    // short statements about the puzzle, each a sentence
  std::vector<Scene> scenes;
};

// How fast a lesson is read aloud: 140 words a minute, the middle of the 130 to 150 that are common practice for slides and
// narration (no published source); never less than five seconds a scene.
inline constexpr int kWordsAMinute = 140;
inline constexpr int kShortestScene = 5;

// Words of a text: runs of characters between white space.
int word_count(const std::string& text);
// Words of a scene that are read aloud: heading, paragraphs, questions.
int word_count(const Scene& scene);
// Seconds for so many words.
int speaking_seconds(int words);
// All scenes together.
int total_seconds(const Document& document);

}  // namespace cp
