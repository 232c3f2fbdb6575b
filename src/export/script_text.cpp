// SPDX-License-Identifier: Apache-2.0
#include "export/script_text.h"

#include <algorithm>

#include "base/text.h"
#include "export/idea_names.h"
#include "export/scene_times.h"

namespace cp {

namespace {

// Text that CommonMark shows as it is: every mark that could start something gets a backslash, which CommonMark takes
// before any ASCII punctuation (section 2.4 of the specification).
std::string plain(std::string_view text) {
  std::string out;
  bool at_start = true;      // nothing but blanks so far
  bool is_numbered = false;  // nothing but a number so far: "3." would be an item of a list
  for (const char letter : text) {
    const bool is_digit = letter >= '0' && letter <= '9';
    const bool is_special = std::string_view("\\`*_[]<>&|~").find(letter) != std::string_view::npos;
    const bool starts = at_start && std::string_view("#+-=").find(letter) != std::string_view::npos;
    if (is_special || starts || (is_numbered && (letter == '.' || letter == ')'))) out += '\\';
    out += letter == '\n' ? ' ' : letter;
    is_numbered = is_digit && (at_start || is_numbered);
    at_start = at_start && (letter == ' ' || letter == '\n');
  }
  return out;
}

std::string paragraph_text(const Paragraph& words) {
  const auto at = words.term.empty() ? std::string::npos : words.text.find(words.term);
  if (at == std::string::npos) return plain(words.text);
  return plain(words.text.substr(0, at)) + "*" + plain(words.term) + "*" + plain(words.text.substr(at + words.term.size()));
}

// Paragraphs, separated by empty lines, as a quotation with a mark in front.
std::string quoted(const std::string& mark, const std::string& text) {
  std::string out = "> **" + mark + ":** ";
  for (std::size_t at = 0; at < text.size();) {
    const auto end = std::min(text.find("\n\n", at), text.size());
    out += (at == 0 ? "" : "\n>\n> ") + plain(trimmed(std::string_view(text).substr(at, end - at)));
    at = end + 2;
  }
  return out + "\n\n";
}

void add_exercise(std::string& out, const Exercise& exercise, int number, const Words& words) {
  out += "**" + words.say("page.question.numbered", {{"n", number}}) + ":** " + plain(exercise.question) + "\n\n";
  if (!exercise.answer.empty()) out += quoted(words.say("page.answer"), exercise.answer);
}

// "Level 3 of 5, 12 minutes": what is known of it.
std::string terms_of(const Document& document, const Words& words, int seconds) {
  std::string text;
  if (document.level > 0) text += words.say("page.level", {{"n", document.level}}) + ", ";
  return text + words.say("page.minutes", {{"n", document.minutes > 0 ? document.minutes : (seconds + 59) / 60}});
}

}  // namespace

std::string script_markdown(const Document& document) {
  const Words words(document.language);
  const std::vector<SceneTime> times = scene_times(document);
  std::string out = "# " + plain(document.title) + "\n\n" + terms_of(document, words, length_in_seconds(times)) + "\n\n";
  out += words.say("page.puzzle") + ": `" + document.puzzle + "`\n\n";
  int exercises = 0;
  for (std::size_t i = 0; i < document.scenes.size(); ++i) {
    const Scene& scene = document.scenes[i];
    out += "## " + to_text(static_cast<int>(i) + 1) + "\\. " + plain(scene.heading) + "\n\n";
    out += "*" + clock_text(times[i].start) + " (" + to_text(times[i].seconds) + " s)*\n\n";
    for (const Paragraph& paragraph : scene.paragraphs) out += paragraph_text(paragraph) + "\n\n";
    for (const Exercise& exercise : scene.exercises) add_exercise(out, exercise, ++exercises, words);
    for (const std::string& step : scene.steps) out += "1. " + plain(step) + "\n";
    if (!scene.steps.empty()) out += "\n";
    if (!scene.note.empty()) out += quoted(words.say("page.note"), scene.note);
  }
  while (out.ends_with("\n\n")) out.pop_back();
  return out;
}

std::string chapter_list(const Document& document) {
  const std::vector<SceneTime> times = scene_times(document);
  const bool has_hours = length_in_seconds(times) >= 3600;
  std::string out;
  for (std::size_t i = 0; i < times.size(); ++i) {
    std::string heading = document.scenes[i].heading;
    for (char& letter : heading) letter = letter == '\n' ? ' ' : letter;
    out += clock_text(times[i].start, has_hours) + " " + heading + "\n";
  }
  return out;
}

std::string description_text(const Document& document) {
  const Speaker speaker(document.language);
  const Words& words = speaker.words();
  std::string out = document.title + "\n\n";
  if (!document.scenes.empty()) {
    const std::string first = first_words(document.scenes.front(), 40);
    if (!first.empty()) out += first + "\n\n";
  }
  const auto line = [&out, &words](std::string_view key, const std::string& value) {
    if (!value.empty()) out += words.say(key) + ": " + value + "\n";
  };
  out += terms_of(document, words, length_in_seconds(scene_times(document))) + "\n";
  line("page.teaches", idea_names(speaker, document.teaches));
  line("page.needs", idea_names(speaker, document.needs));
  line("page.source", document.source);
  line("page.licence", document.licence);
  out += "\n" + words.say("page.puzzle") + ":\n" + document.puzzle + "\n";
  return out + "\n" + words.say("page.chapters") + ":\n" + chapter_list(document);
}

}  // namespace cp
