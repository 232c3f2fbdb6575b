// SPDX-License-Identifier: Apache-2.0
#include "cli/lesson_files.h"

#include <array>

#include "api/near_names.h"
#include "base/text.h"
#include "cli/film.h"
#include "cli/page_engine.h"
#include "cli/whole_file.h"
#include "print/still_png.h"

namespace cp::cli {

namespace {

struct KindName {
  std::string_view name;
  FileKind kind;
};

constexpr std::array<KindName, 9> kKinds = {{{"page", FileKind::kPage},
                                             {"figures", FileKind::kFigures},
                                             {"handout", FileKind::kHandout},
                                             {"stills", FileKind::kStills},
                                             {"captions", FileKind::kCaptions},
                                             {"chapters", FileKind::kChapters},
                                             {"script", FileKind::kScript},
                                             {"description", FileKind::kDescription},
                                             {"video", FileKind::kVideo}}};

std::vector<std::string> kind_names() {
  std::vector<std::string> names;
  for (const KindName& entry : kKinds) names.emplace_back(entry.name);
  return names;
}

// The word that starts at `at` in the value of the option.
WishFault wrong_word(const char* option, const std::string& value, std::size_t at, std::size_t length, std::string message, std::string hint) {
  return {Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {at, length, 1, static_cast<int>(at) + 1}}, option, value};
}

FileJob job(std::string name, std::function<Result<std::string>()> make) {
  return {std::move(name), [make = std::move(make)](const std::filesystem::path& partial, Progress&) -> std::optional<Error> {
            const Result<std::string> bytes = make();
            if (!bytes) return bytes.error();
            return write_bytes(partial, *bytes);
          }};
}

void add_paper(std::vector<FileJob>& jobs, const Document& document, Paper paper) {
  const std::string ending = paper == Paper::kA4 ? "-a4.pdf" : "-letter.pdf";
  jobs.push_back(job("handout" + ending, [&document, paper] { return handout_pdf(document, {paper, false}); }));
  jobs.push_back(job("worksheet" + ending, [&document, paper] { return handout_pdf(document, {paper, true}); }));
}

void add_stills(std::vector<FileJob>& jobs, const Document& document, const FileWishes& wishes) {
  const StillOptions options{wishes.still_height, wishes.is_transparent};
  for (std::size_t i = 0; i < document.scenes.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    const std::string stem = "stills/scene-" + std::string(number.size() < 2 ? "0" : "") + number;
    const std::string name = stem + "-" + std::to_string(options.height) + (options.is_transparent ? "-clear" : "") + ".png";
    jobs.push_back(job(name, [&document, i, options] { return still_png(document, i, options); }));
  }
}

// Files that are text: made by the door, written here. `is_page`: the page or the others?
void add_texts(std::vector<FileJob>& jobs, const std::vector<api::TextFile>& files, const FileWishes& wishes, bool is_page) {
  for (const api::TextFile& file : files) {
    const auto kind = kind_of(file.name);
    if (!kind || wishes.kinds.count(*kind) == 0 || (*kind == FileKind::kPage) != is_page) continue;
    jobs.push_back(job(file.name, [text = file.text]() -> Result<std::string> { return text; }));
  }
}

}  // namespace

std::optional<FileKind> kind_of(const std::string& name) {
  const auto is_in = [&name](std::string_view folder, std::string_view ending) { return name.starts_with(folder) && name.ends_with(ending); };
  if (name == "index.html") return FileKind::kPage;
  if (is_in("figures/", ".svg")) return FileKind::kFigures;
  if (is_in("stills/", ".png")) return FileKind::kStills;
  if (is_in("handout-", ".pdf") || is_in("worksheet-", ".pdf")) return FileKind::kHandout;
  if (name == "captions.vtt") return FileKind::kCaptions;
  if (name == "chapters.vtt" || name == "chapters.txt") return FileKind::kChapters;
  if (name == "script.md") return FileKind::kScript;
  if (name == "description.txt") return FileKind::kDescription;
  if (name == "film.mp4") return FileKind::kVideo;
  return std::nullopt;
}

std::optional<WishFault> read_wishes(const FileWords& words, const std::set<FileKind>& usual, FileWishes& wishes) {
  wishes.kinds = usual;
  wishes.is_transparent = words.is_transparent;
  if (!words.only.empty()) wishes.kinds.clear();
  for (const std::string& word : split(words.only, ',')) {
    const KindName* found = nullptr;
    for (const KindName& entry : kKinds) {
      if (entry.name == word) found = &entry;
    }
    if (found == nullptr) {
      return wrong_word("only", words.only, words.only.find(word), word.size(), "'" + word + "' is no kind of file", api::name_hint(word, kind_names(), "the kinds are"));
    }
    wishes.kinds.insert(found->kind);
  }
  if (words.paper != "a4" && words.paper != "letter") return wrong_word("paper", words.paper, 0, words.paper.size(), "'" + words.paper + "' is no size of paper", "the sizes are a4 and letter");
  wishes.paper = words.paper == "a4" ? Paper::kA4 : Paper::kLetter;
  if (words.size != "1080" && words.size != "2160") return wrong_word("size", words.size, 0, words.size.size(), "'" + words.size + "' is no size of stills", "the sizes are 1080 and 2160, the height in pixels");
  wishes.still_height = words.size == "1080" ? 1080 : 2160;
  return std::nullopt;
}

std::vector<FileJob> file_jobs(const Document& document, const FileWishes& wishes, const api::LessonPlace& place) {
  std::vector<FileJob> jobs;
  const std::string engine = wishes.kinds.count(FileKind::kPage) != 0 ? page_engine() : std::string();
  const std::vector<api::TextFile> texts = api::text_files(document, wishes.has_notes, engine, place);
  add_texts(jobs, texts, wishes, false);
  if (wishes.kinds.count(FileKind::kHandout) != 0) add_paper(jobs, document, wishes.paper);
  if (wishes.kinds.count(FileKind::kStills) != 0) add_stills(jobs, document, wishes);
  add_texts(jobs, texts, wishes, true);
  if (wishes.kinds.count(FileKind::kVideo) != 0) {
    jobs.push_back({"film.mp4", [&document](const std::filesystem::path& partial, Progress& progress) { return write_film(document, partial, progress); }});
  }
  return jobs;
}

std::optional<Error> missing_for(const FileWishes& wishes) {
  if (wishes.kinds.count(FileKind::kVideo) == 0 || has_film_maker()) return std::nullopt;
  return Error{ErrorCode::kNotFound, "the program ffmpeg, which makes the film, was not found", "install ffmpeg, or leave 'video' out of --only", {}};
}

}  // namespace cp::cli
