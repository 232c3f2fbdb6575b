// SPDX-License-Identifier: Apache-2.0
// The sentences of the program that reach pupils, by language: pages, handouts, first drafts. One catalogue a language
// (english.words, german.words); whatever a language lacks is said in English.
//
// A sentence has places for what differs:
//   {name}            the text given for that name
//   {#name}           the number given, as a word while it is small
//   {^name}, {^#name} with a capital
//   {name?one:other}  the first text when the number is 1, else the second; places may stand inside
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace cp {

// What goes into one place.
struct Fill {
  Fill(std::string_view place, std::string words) : name(place), text(std::move(words)) {}
  Fill(std::string_view place, int value);

  std::string_view name;
  std::string text;
  int number = -1;  // -1: a text
};
using Fills = std::initializer_list<Fill>;

class Words {
 public:
  // By tag, "de" or "de-AT"; English for languages without a catalogue.
  explicit Words(std::string_view language = "en");

  // The language that the words really have: "en", "de".
  [[nodiscard]] std::string_view language() const { return language_; }
  [[nodiscard]] bool is_english() const { return language_ == "en"; }
  [[nodiscard]] bool has(std::string_view key) const;

  // The sentence with its places filled. The key itself when there is none (a test sees to it that this does not happen).
  [[nodiscard]] std::string say(std::string_view key, Fills fills = {}) const;
  // One of the sentences key.1, key.2 ..., chosen by the seed; key alone when it is not varied.
  [[nodiscard]] std::string vary(std::string_view key, std::uint64_t seed, Fills fills = {}) const;

  // "a", "a and b", "a, b and c".
  [[nodiscard]] std::string list(const std::vector<std::string>& items, std::string_view last = "list.and") const;

 private:
  [[nodiscard]] std::string_view find(std::string_view key) const;
  [[nodiscard]] std::string filled(std::string_view text, Fills fills) const;
  [[nodiscard]] std::string place(std::string_view inside, Fills fills) const;

  std::string_view language_;
};

// The languages with a catalogue, English first.
const std::vector<std::string_view>& word_languages();
// Every sentence of a catalogue, by key.
struct Phrase {
  std::string_view key;
  std::string_view text;
};
const std::vector<Phrase>& phrases(std::string_view language);

// Is text in this language written from right to left?
bool is_right_to_left(std::string_view language);

}  // namespace cp
