// SPDX-License-Identifier: Apache-2.0
#include "speak/words.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace cp {

namespace {

constexpr std::string_view kEnglish =
#include "speak/english.words"
    ;
constexpr std::string_view kGerman =
#include "speak/german.words"
    ;

std::vector<Phrase> read_phrases(std::string_view catalogue) {
  std::vector<Phrase> list;
  std::size_t start = 0;
  while (start < catalogue.size()) {
    const std::size_t end = std::min(catalogue.find('\n', start), catalogue.size());
    const std::string_view line = trimmed(catalogue.substr(start, end - start));
    start = end + 1;
    const std::size_t equals = line.find(" = ");
    if (line.empty() || line.front() == '%' || equals == std::string_view::npos) continue;
    list.push_back({trimmed(line.substr(0, equals)), trimmed(line.substr(equals + 3))});
  }
  std::sort(list.begin(), list.end(), [](const Phrase& a, const Phrase& b) { return a.key < b.key; });
  return list;
}

const std::vector<Phrase>& catalogue_of(std::string_view language) {
  static const std::vector<Phrase> kEnglishPhrases = read_phrases(kEnglish);
  static const std::vector<Phrase> kGermanPhrases = read_phrases(kGerman);
  return language == "de" ? kGermanPhrases : kEnglishPhrases;
}

std::string_view look_up(std::string_view language, std::string_view key) {
  const std::vector<Phrase>& list = catalogue_of(language);
  const auto found = std::lower_bound(list.begin(), list.end(), key, [](const Phrase& phrase, std::string_view wanted) { return phrase.key < wanted; });
  return found != list.end() && found->key == key ? found->text : std::string_view();
}

std::string_view primary(std::string_view language) { return language.substr(0, language.find('-')); }

// Where the brace that opens at `at` is closed; npos if never.
std::size_t closing(std::string_view text, std::size_t at) {
  int depth = 0;
  for (std::size_t i = at; i < text.size(); ++i) {
    if (text[i] == '{') ++depth;
    if (text[i] == '}' && --depth == 0) return i;
  }
  return std::string_view::npos;
}

// The first such character outside braces.
std::size_t find_outside(std::string_view text, char wanted) {
  int depth = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '{') ++depth;
    if (text[i] == '}') --depth;
    if (depth == 0 && text[i] == wanted) return i;
  }
  return std::string_view::npos;
}

}  // namespace

Fill::Fill(std::string_view place, int value) : name(place), text(to_text(value)), number(value) {}

const std::vector<std::string_view>& word_languages() {
  static const std::vector<std::string_view> kLanguages = {"en", "de"};
  return kLanguages;
}

const std::vector<Phrase>& phrases(std::string_view language) { return catalogue_of(language); }

bool is_right_to_left(std::string_view language) {
  // ISO 639 codes of languages that are usually written from right to left.
  static constexpr std::array<std::string_view, 12> kThose = {"ar", "arc", "ckb", "dv", "fa", "he", "iw", "ps", "sd", "syr", "ur", "yi"};
  return std::find(kThose.begin(), kThose.end(), primary(language)) != kThose.end();
}

Words::Words(std::string_view language) : language_("en") {
  for (const std::string_view known : word_languages()) {
    if (known == primary(language)) language_ = known;
  }
}

bool Words::has(std::string_view key) const { return !look_up(language_, key).empty(); }

std::string_view Words::find(std::string_view key) const {
  const std::string_view own = look_up(language_, key);
  return own.empty() ? look_up("en", key) : own;
}

std::string Words::say(std::string_view key, Fills fills) const {
  const std::string_view text = find(key);
  return text.empty() ? std::string(key) : filled(text, fills);
}

std::string Words::vary(std::string_view key, std::uint64_t seed, Fills fills) const {
  std::uint64_t count = 0;
  while (!find(std::string(key) + "." + to_text(static_cast<long long>(count) + 1)).empty()) ++count;
  if (count == 0) return say(key, fills);
  return say(std::string(key) + "." + to_text(static_cast<long long>(seed % count) + 1), fills);
}

std::string Words::filled(std::string_view text, Fills fills) const {
  std::string result;
  while (!text.empty()) {
    const std::size_t open = text.find('{');
    result.append(text.substr(0, open));
    if (open == std::string_view::npos) break;
    const std::size_t close = closing(text, open);
    if (close == std::string_view::npos) break;
    result += place(text.substr(open + 1, close - open - 1), fills);
    text.remove_prefix(close + 1);
  }
  return result;
}

std::string Words::place(std::string_view inside, Fills fills) const {
  const bool is_capital = inside.starts_with('^');
  if (is_capital) inside.remove_prefix(1);
  const bool is_spoken = inside.starts_with('#');
  if (is_spoken) inside.remove_prefix(1);
  const std::size_t question = inside.find('?');
  const std::string_view name = inside.substr(0, question);
  const auto fill = std::find_if(fills.begin(), fills.end(), [name](const Fill& each) { return each.name == name; });
  std::string result;
  if (fill == fills.end()) {
    result = "{" + std::string(name) + "}";
  } else if (question != std::string_view::npos) {
    const std::string_view choices = inside.substr(question + 1);
    const std::size_t colon = find_outside(choices, ':');
    const std::string_view one = choices.substr(0, colon);
    result = filled(fill->number == 1 || colon == std::string_view::npos ? one : choices.substr(colon + 1), fills);
  } else if (is_spoken && fill->number >= 0 && !find("number." + fill->text).empty()) {
    result = find("number." + fill->text);
  } else {
    result = fill->text;
  }
  return is_capital ? capitalised(std::move(result)) : result;
}

std::string Words::list(const std::vector<std::string>& items, std::string_view last) const { return listed(items, find(last)); }

}  // namespace cp
