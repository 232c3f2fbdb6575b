// SPDX-License-Identifier: Apache-2.0
#include "stream/line_source.h"

#include <algorithm>

#include "stream/byte_source.h"

namespace cp {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::uint64_t kCheckStart = 0xcbf29ce484222325ULL;
constexpr std::uint64_t kCheckPrime = 0x100000001b3ULL;

}  // namespace

LineSource::LineSource(std::unique_ptr<ByteSource> bytes, std::string name) : bytes_(std::move(bytes)), name_(std::move(name)) { place_.check = kCheckStart; }
LineSource::LineSource(LineSource&& other) noexcept = default;
LineSource& LineSource::operator=(LineSource&& other) noexcept = default;
LineSource::~LineSource() = default;

Result<LineSource> LineSource::open(const std::string& name) {
  auto bytes = open_bytes(name);
  if (!bytes) return bytes.error();
  return LineSource(std::move(bytes).value(), name == "-" ? "standard input" : name);
}

// More bytes behind those that were not given yet.
bool LineSource::fill() {
  buffer_.erase(0, used_);
  used_ = 0;
  if (bytes_->read(buffer_)) return true;
  trouble_ = bytes_->trouble();
  return false;
}

void LineSource::take(std::string_view bytes) {
  std::uint64_t check = place_.check;
  for (const char byte : bytes) check = (check ^ static_cast<unsigned char>(byte)) * kCheckPrime;
  place_.check = check;
  place_.offset += bytes.size();
  used_ += bytes.size();
}

bool LineSource::next(std::string& line) {
  line.clear();
  was_cut_ = false;
  const Place before = place_;
  bool any = false;
  for (;;) {
    const std::size_t end = buffer_.find('\n', used_);
    const std::size_t stop = end == std::string::npos ? buffer_.size() : end;
    const std::size_t count = stop - used_;
    const std::size_t room = kLongestSourceLine - line.size();
    line.append(buffer_, used_, std::min(count, room));
    was_cut_ = was_cut_ || count > room;
    const bool is_whole = end != std::string::npos;
    any = any || count > 0 || is_whole;
    take(std::string_view(buffer_).substr(used_, count + (is_whole ? 1 : 0)));
    if (is_whole || !fill()) break;
  }
  if (!any) return false;
  if (trouble_) {  // what a broken source ends with is no line: the place stays before it
    place_ = before;
    return false;
  }
  if (place_.line++ == 0 && line.starts_with(kByteOrderMark)) line.erase(0, kByteOrderMark.size());
  if (!line.empty() && line.back() == '\r') line.pop_back();
  return true;
}

std::optional<Error> LineSource::skip_to(const Place& goal) {
  std::string line;
  while (place_.offset < goal.offset && next(line)) {
  }
  if (trouble_) return trouble_;
  if (place_ == goal || goal.offset == 0) return std::nullopt;
  return Error{ErrorCode::kBadArgument, name_ + " is not what it was: its first " + std::to_string(goal.line) + " lines have changed since the job was stopped", "begin anew with the changed file", {}};
}

}  // namespace cp
