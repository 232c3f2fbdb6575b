// SPDX-License-Identifier: Apache-2.0
#include "sweep/scan_output.h"

#include <unistd.h>

#include <cerrno>
#include <charconv>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace cp {

namespace {

namespace fs = std::filesystem;

constexpr auto kBetweenPlaces = std::chrono::seconds(1);  // so much work a kill can cost

Error cannot_write(const std::string& name) { return {ErrorCode::kCannotWrite, "cannot write '" + name + "': " + std::strerror(errno), "check the place on the disk and the permissions", {}}; }

std::string place_name(const std::string& output) { return output + ".place"; }

// Nothing is opened for writing that a scan would destroy: its own input, or what somebody else wrote. Devices and pipes hold nothing.
std::optional<Error> refuse_loss(const SweepWish& wish, bool goes_on) {
  std::error_code failed;  // what cannot be asked for is not there; opening says why
  if (!fs::is_regular_file(wish.output, failed)) return std::nullopt;
  if (fs::equivalent(wish.input == "-" ? "/dev/stdin" : wish.input, wish.output, failed)) {
    return Error{ErrorCode::kBadArgument, "'" + wish.output + "' is the input of the scan", "choose another name for --out", {}};
  }
  if (goes_on || wish.replace) return std::nullopt;
  return Error{ErrorCode::kCannotWrite, "there is a file '" + wish.output + "' already", "choose another name for --out, or say --replace: what is in it would be lost", {}};
}

}  // namespace

void ScanOutput::Closer::operator()(std::FILE* file) const {
  if (file != stdout) std::fclose(file);
}

// What has to be the same for a scan to go on.
std::string ScanOutput::heading() const {
  return "counterpoise scan 1\ninput " + wish_.input + "\ndepth " + std::string(name_of(wish_.survey.depth)) + (wish_.survey.ask_needed ? " needed" : "") + "\n";
}

Result<ScanOutput> ScanOutput::open(const SweepWish& wish) {
  if (wish.output == "-") {
    if (wish.resume) return Error{ErrorCode::kBadArgument, "there is nothing to go on with on standard output", "name the file with --out", {}};
    return ScanOutput(wish, stdout);
  }
  std::error_code failed;  // what cannot be asked for is not there; opening says why
  const bool is_unfinished = fs::exists(place_name(wish.output), failed);
  if (is_unfinished && !wish.resume && !wish.replace) {
    return Error{ErrorCode::kBadArgument, "'" + wish.output + "' is an unfinished scan", "go on with --resume, or begin again with --replace", {}};
  }
  if (!is_unfinished && wish.resume && fs::exists(wish.output, failed)) {
    return Error{ErrorCode::kBadArgument, "the scan in '" + wish.output + "' is finished", "say --replace instead of --resume to make it again", {}};
  }
  const bool goes_on = is_unfinished && wish.resume;
  if (auto refused = refuse_loss(wish, goes_on)) return std::move(*refused);
  std::FILE* file = std::fopen(wish.output.c_str(), goes_on ? "r+b" : "wb");
  if (file == nullptr) return cannot_write(wish.output);
  ScanOutput output(wish, file);
  if (auto error = goes_on ? output.go_on() : output.write_place()) return *error;
  return output;
}

// Reads FILE.place and cuts the file to the length it had then: what was written after it is made again.
std::optional<Error> ScanOutput::go_on() {
  std::ifstream in(place_name(wish_.output), std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  const std::string all = text.str();
  if (!all.starts_with(heading())) {
    return Error{ErrorCode::kBadArgument, "'" + wish_.output + "' holds another scan", "repeat its input, --depth and --needed; they stand in '" + place_name(wish_.output) + "'", {}};
  }
  std::istringstream numbers(all.substr(heading().size()));
  std::string word;
  numbers >> word >> place_.offset >> place_.line >> place_.check >> word >> bytes_ >> word >> count_.puzzles >> count_.faults;
  if (!numbers || word != "count" || ftruncate(fileno(file_.get()), static_cast<off_t>(bytes_)) != 0 || std::fseek(file_.get(), 0, SEEK_END) != 0 ||
      static_cast<std::uint64_t>(std::ftell(file_.get())) != bytes_) {
    return Error{ErrorCode::kBadArgument, "'" + place_name(wish_.output) + "' and its scan do not fit", "begin again with --replace", {}};
  }
  return std::nullopt;
}

std::optional<Error> ScanOutput::write_place() {
  if (std::fflush(file_.get()) != 0) return cannot_write(wish_.output);
  noted_ = std::chrono::steady_clock::now();
  if (is_stdout()) return std::nullopt;
  const std::string name = place_name(wish_.output);
  const std::string fresh = name + ".new";
  {
    std::ofstream out(fresh, std::ios::binary | std::ios::trunc);
    out << heading() << "place " << place_.offset << ' ' << place_.line << ' ' << place_.check << "\nbytes " << bytes_ << "\ncount " << count_.puzzles << ' ' << count_.faults << '\n';
    if (!out.flush()) return cannot_write(fresh);
  }
  std::error_code failed;
  fs::rename(fresh, name, failed);
  if (failed) return Error{ErrorCode::kCannotWrite, "cannot write '" + name + "': " + failed.message(), "check the permissions of the folder", {}};
  return std::nullopt;
}

std::optional<Error> ScanOutput::take(BlockAnswer answer) {
  waiting_.insert_or_assign(answer.number, std::move(answer));
  bool has_written = false;
  for (auto at = waiting_.begin(); at != waiting_.end() && at->first == next_; at = waiting_.erase(at)) {
    const BlockAnswer& block = at->second;
    if (std::fwrite(block.text.data(), 1, block.text.size(), file_.get()) != block.text.size()) return cannot_write(wish_.output);
    bytes_ += block.text.size();
    place_ = block.end;
    count_.puzzles += block.count.puzzles;
    count_.faults += block.count.faults;
    ++next_;
    has_written = true;
  }
  const bool is_time = is_stdout() || std::chrono::steady_clock::now() - noted_ >= kBetweenPlaces;
  return has_written && is_time ? write_place() : std::nullopt;
}

std::optional<Error> ScanOutput::finish(bool is_complete) {
  if (auto error = write_place()) return error;
  if (!is_complete || is_stdout()) return std::nullopt;
  std::error_code failed;
  fs::remove(place_name(wish_.output), failed);
  if (failed) return Error{ErrorCode::kCannotWrite, "cannot remove '" + place_name(wish_.output) + "': " + failed.message(), "remove it by hand; the scan is complete", {}};
  return std::nullopt;
}

}  // namespace cp
