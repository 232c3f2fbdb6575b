// SPDX-License-Identifier: Apache-2.0
#include "shelf/intake_source.h"

#include "base/text.h"
#include "shelf/intake.h"

namespace cp {

namespace {

constexpr std::size_t kMostLinesAhead = 100;  // that hold nothing, behind a first line that may be a header

bool holds_nothing(const RawLine& line) { return trimmed(line.text).empty() || trimmed(line.text).starts_with('#'); }

}  // namespace

Result<IntakeSource> IntakeSource::open(const IntakeWish& wish) {
  auto lines = LineSource::open(wish.file);
  if (!lines) return lines.error();
  IntakeSource source(std::move(lines).value());
  if (auto error = source.read_head(wish)) return std::move(*error);
  return source;
}

// A table is known by its first line, whatever was imported before.
std::optional<Error> IntakeSource::read_head(const IntakeWish& wish) {
  RawLine first;
  if (!take(first)) return trouble();
  auto header = read_header(first.text, wish.columns);
  if (!header) return header.error();
  header_ = std::move(header).value();
  if (header_) return std::nullopt;
  std::deque<Ahead> head = {{std::move(first), place_}};
  const std::vector<std::string> names = header_words(head.front().line.text);
  if (names.size() > 1) {
    RawLine line;
    while (head.size() < kMostLinesAhead && take(line)) {
      head.push_back({line, place_});
      if (!holds_nothing(line)) break;
    }
    const auto below = look_at_line(line.text, line.number, nullptr, wish);  // a puzzle there: plain lines, and a title over them
    if (below && !below->puzzle) return no_puzzle_column(names);
  }
  put_back(std::move(head), {});
  return std::nullopt;
}

bool IntakeSource::take(RawLine& line) {
  if (!ahead_.empty()) {
    line = std::move(ahead_.front().line);
    place_ = ahead_.front().after;
    ahead_.pop_front();
    return true;
  }
  if (!lines_.next(line.text)) return false;
  place_ = lines_.place();
  line.number = place_.line;
  line.was_cut = lines_.was_cut();
  return true;
}

void IntakeSource::put_back(std::deque<Ahead> lines, const Place& before) {
  ahead_.insert(ahead_.begin(), std::make_move_iterator(lines.begin()), std::make_move_iterator(lines.end()));
  place_ = before;
}

bool IntakeSource::next(RawLine& record) {
  do {
    if (!take(record)) return false;
  } while (holds_nothing(record));
  if (header_ && !record.was_cut && ends_in_quotation(record.text, header_->separator)) read_to_end_of(record);
  return true;
}

void IntakeSource::read_to_end_of(RawLine& record) {
  const Place after_first = place_;
  std::deque<Ahead> more;
  std::string whole = record.text;
  RawLine line;
  while (more.size() < kMostRecordLines && whole.size() < kLongestSourceLine && take(line)) {
    more.push_back({line, place_});
    if (line.was_cut) break;
    whole += "\n" + line.text;
    if (line.text.find('"') == std::string::npos || ends_in_quotation(whole, header_->separator)) continue;
    if (!table_fields(whole, header_->separator)) break;
    record.text = std::move(whole);
    return;
  }
  put_back(std::move(more), after_first);
}

std::optional<Error> IntakeSource::skip_to(const Place& goal) {
  while (!ahead_.empty() && ahead_.front().after.offset <= goal.offset) {
    place_ = ahead_.front().after;
    ahead_.pop_front();
  }
  if (place_ == goal && !ahead_.empty()) return std::nullopt;
  ahead_.clear();
  place_ = goal;
  return lines_.skip_to(goal);
}

}  // namespace cp
