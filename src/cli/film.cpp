// SPDX-License-Identifier: Apache-2.0
#include "cli/film.h"

#include <cstdlib>
#include <vector>

#include "cli/child_process.h"
#include "cli/lesson_files.h"
#include "cli/stop_wish.h"
#include "cli/whole_file.h"
#include "print/still_png.h"

namespace cp::cli {

namespace {

namespace fs = std::filesystem;

constexpr const char* kProgram = "ffmpeg";

Error film_error(const std::string& why) {
  return Error{ErrorCode::kCannotWrite, "the film could not be made: " + why, "try ffmpeg -version; it needs the encoder libx264", {}};
}

// A folder that is gone when this goes.
class WorkFolder {
 public:
  explicit WorkFolder(fs::path path) : path_(std::move(path)) {}
  ~WorkFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  WorkFolder(const WorkFolder&) = delete;
  WorkFolder& operator=(const WorkFolder&) = delete;
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

// ffmpeg's metadata file: these five characters have a meaning in it.
std::string metadata_text(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    if (letter == '=' || letter == ';' || letter == '#' || letter == '\\' || letter == '\n') out += '\\';
    out += letter;
  }
  return out;
}

std::string chapters_of(const Document& document, const std::vector<api::SceneSpan>& spans) {
  std::string text = ";FFMETADATA1\ntitle=" + metadata_text(document.title) + "\n";
  for (std::size_t i = 0; i < spans.size(); ++i) {
    text += "[CHAPTER]\nTIMEBASE=1/1\nSTART=" + std::to_string(spans[i].start) + "\nEND=" + std::to_string(spans[i].start + spans[i].seconds) +
            "\ntitle=" + metadata_text(document.scenes[i].heading) + "\n";
  }
  return text;
}

std::string still_name(std::size_t scene) { return "still-" + std::to_string(scene + 1) + ".png"; }

// The list of pictures and how long each is shown; the last one is named twice, because ffmpeg drops the time of the last.
std::string picture_list(const std::vector<api::SceneSpan>& spans) {
  std::string text = "ffconcat version 1.0\n";
  for (std::size_t i = 0; i < spans.size(); ++i) text += "file " + still_name(i) + "\nduration " + std::to_string(spans[i].seconds) + "\n";
  return text + "file " + still_name(spans.size() - 1) + "\n";
}

// ISO 639-2, as MP4 wants it, for the languages that come along.
std::string track_language(const std::string& tag) {
  const std::string language = tag.substr(0, tag.find('-'));
  return language == "en" ? "eng" : language == "de" ? "deu" : "und";
}

std::vector<std::string> film_words(const fs::path& work, const fs::path& goal, const Document& document, int seconds) {
  const auto in = [&work](const char* name) { return (work / name).string(); };
  return {"-nostdin", "-hide_banner", "-loglevel", "error", "-y",
          "-f", "concat", "-safe", "0", "-i", in("pictures.txt"), "-f", "ffmetadata", "-i", in("chapters.txt"), "-i", in("captions.vtt"),
          "-map", "0:v", "-map", "2:s", "-map_metadata", "1", "-map_chapters", "1",
          "-vf", "format=yuv420p,fps=2", "-c:v", "libx264", "-preset", "veryfast", "-tune", "stillimage", "-crf", "20", "-threads", "2",
          "-c:s", "mov_text", "-metadata:s:s:0", "language=" + track_language(document.language), "-t", std::to_string(seconds),
          "-movflags", "+faststart", "-fflags", "+bitexact", "-flags:v", "+bitexact", "-progress", "pipe:1", "-f", "mp4", goal.string()};
}

std::optional<Error> write_parts(const Document& document, const std::vector<api::SceneSpan>& spans, const fs::path& work, Progress& progress) {
  for (std::size_t i = 0; i < spans.size(); ++i) {
    if (StopWish::signal() != 0) return std::nullopt;
    progress.show("film.mp4: still " + std::to_string(i + 1) + " of " + std::to_string(spans.size()));
    const Result<std::string> still = still_png(document, i);
    if (!still) return still.error();
    if (auto failed = write_bytes(work / still_name(i), *still)) return failed;
  }
  if (auto failed = write_bytes(work / "pictures.txt", picture_list(spans))) return failed;
  if (auto failed = write_bytes(work / "chapters.txt", chapters_of(document, spans))) return failed;
  for (const api::TextFile& file : api::text_files(document, false)) {
    if (file.name != "captions.vtt") continue;
    if (auto failed = write_bytes(work / file.name, file.text)) return failed;
  }
  return std::nullopt;
}

}  // namespace

bool has_film_maker() { return !program_on_path(kProgram).empty(); }

std::optional<Error> write_film(const Document& document, const fs::path& goal, Progress& progress) {
  const std::string program = program_on_path(kProgram);
  if (program.empty()) return film_error("ffmpeg was not found");
  const WorkFolder work(goal.parent_path() / (goal.filename().string() + "-work"));
  std::error_code failed;
  fs::create_directories(work.path(), failed);
  if (failed) return film_error(failed.message());
  const std::vector<api::SceneSpan> spans = api::scene_spans(document);
  if (spans.empty()) return film_error("the lesson has no scenes");
  if (auto wrong = write_parts(document, spans, work.path(), progress)) return wrong;
  const int seconds = spans.back().start + spans.back().seconds;
  const auto on_line = [&](const std::string& line) {
    if (!line.starts_with("out_time_us=")) return;
    const long long done = std::atoll(line.c_str() + 12) / 1'000'000;
    progress.show("film.mp4: " + std::to_string(done) + " of " + std::to_string(seconds) + " seconds");
  };
  const ChildEnd end = run_child(program, film_words(work.path(), goal, document, seconds), on_line);
  if (end.is_stopped || (end.is_started && end.exit_code == 0)) return std::nullopt;
  return film_error(end.complaint.empty() ? "ffmpeg ended with code " + std::to_string(end.exit_code) : end.complaint.substr(0, end.complaint.find('\n')));
}

}  // namespace cp::cli
