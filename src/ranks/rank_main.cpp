// SPDX-License-Identifier: Apache-2.0
// The scan over several machines: one process of an MPI job. `counterpoise scan ... --ranks` turns into this program.
//
//   counterpoise_ranks INPUT OUTPUT DEPTH NEEDED RESUME REPLACE PATIENCE
//
// Rank 0 reads, deals blocks and writes; the others answer. When a rank dies, MPI ends the whole job: rank 0 has noted
// on the disk how far the answers go without a gap, and --resume deals the rest. A rank that only stops answering is given up
// after the time of PATIENCE, and its blocks are dealt to others.
#include <mpi.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <deque>
#include <list>
#include <thread>

#include "sweep/scan_output.h"

namespace cp {
namespace {

using Clock = std::chrono::steady_clock;

enum Tag : int { kBlock = 1, kAnswer = 2, kEnough = 3 };
constexpr std::size_t kBlocksAhead = 2;  // one to work on and one that is there when it is done
constexpr auto kPause = std::chrono::microseconds(500);

void say(const std::string& words) { std::fprintf(stderr, "counterpoise: %s\n", words.c_str()); }

int complain(const Error& error) {
  say(error.message);
  if (!error.hint.empty()) std::fprintf(stderr, "hint: %s\n", error.hint.c_str());
  return error.code == ErrorCode::kBug ? 70 : 64;
}

// Three numbers and a text, as bytes; the ranks of a job run the same program.
struct Message {
  std::uint64_t numbers[3] = {0, 0, 0};
  std::string text;

  [[nodiscard]] std::string packed() const {
    std::string bytes(sizeof numbers, '\0');
    std::memcpy(bytes.data(), numbers, sizeof numbers);
    return bytes + text;
  }
  static Message from(const std::string& bytes) {
    Message message;
    std::memcpy(message.numbers, bytes.data(), sizeof message.numbers);
    message.text = bytes.substr(sizeof message.numbers);
    return message;
  }
};

Message packed_block(const ScanBlock& block) {
  Message message{{block.number, block.first_line, 0}, {}};
  for (const std::string& line : block.lines) message.text += line + '\n';
  return message;
}

ScanBlock unpacked_block(const Message& message) {
  ScanBlock block;
  block.number = message.numbers[0];
  block.first_line = message.numbers[1];
  for (std::size_t begin = 0; begin < message.text.size();) {
    const std::size_t end = message.text.find('\n', begin);
    block.lines.push_back(message.text.substr(begin, end - begin));
    begin = end + 1;
  }
  return block;
}

// The next message, if one is there. Asked now and then, so that waiting costs nothing.
std::optional<std::pair<MPI_Status, std::string>> receive(int from) {
  int is_there = 0;
  MPI_Status status;
  MPI_Iprobe(from, MPI_ANY_TAG, MPI_COMM_WORLD, &is_there, &status);
  if (is_there == 0) return std::nullopt;
  int size = 0;
  MPI_Get_count(&status, MPI_BYTE, &size);
  std::string bytes(static_cast<std::size_t>(size), '\0');
  MPI_Recv(bytes.data(), size, MPI_BYTE, status.MPI_SOURCE, status.MPI_TAG, MPI_COMM_WORLD, MPI_STATUS_IGNORE);
  return std::pair(status, std::move(bytes));
}

void answer_blocks(const SurveyWish& wish) {
  while (true) {
    auto message = receive(0);
    if (!message) {
      std::this_thread::sleep_for(kPause);
      continue;
    }
    if (message->first.MPI_TAG == kEnough) return;
    const BlockAnswer answer = answer_block(unpacked_block(Message::from(message->second)), wish);
    const std::string bytes = Message{{answer.number, answer.count.puzzles, answer.count.faults}, answer.text}.packed();
    MPI_Send(bytes.data(), static_cast<int>(bytes.size()), MPI_BYTE, 0, kAnswer, MPI_COMM_WORLD);
  }
}

class Dealer {
 public:
  Dealer(const SweepWish& wish, BlockReader reader, ScanOutput output, int ranks)
      : wish_(wish), reader_(std::move(reader)), output_(std::move(output)), ranks_(static_cast<std::size_t>(ranks)), lost_(ranks_, false) {
    if (output_.start().line > 0) say("going on after line " + std::to_string(output_.start().line) + "; blocks behind it that were dealt and not written are dealt again");
  }

  std::optional<Error> run() {
    while (!error_) {
      const bool has_done = deal();
      if (!has_done && dealt_.empty() && again_.empty()) break;
      if (auto message = receive(MPI_ANY_SOURCE)) take(Message::from(message->second), message->first.MPI_SOURCE);
      else std::this_thread::sleep_for(kPause);
      give_up_on_silent_ranks();
      tell();
    }
    if (!error_) error_ = output_.finish(!reader_.trouble());
    return error_ ? error_ : reader_.trouble();
  }

  void send_home() {
    for (std::size_t rank = 1; rank < ranks_; ++rank) {
      if (!lost_[rank]) MPI_Send(nullptr, 0, MPI_BYTE, static_cast<int>(rank), kEnough, MPI_COMM_WORLD);
    }
  }
  [[nodiscard]] bool has_lost_ranks() const { return std::find(lost_.begin(), lost_.end(), true) != lost_.end(); }
  [[nodiscard]] const ScanOutput& output() const { return output_; }

 private:
  struct Dealt {
    ScanBlock block;
    std::size_t rank;
    Clock::time_point since;
  };
  struct Sending {
    std::string bytes;
    MPI_Request request;
  };

  [[nodiscard]] std::size_t count_of(std::size_t rank) const {
    return static_cast<std::size_t>(std::count_if(dealt_.begin(), dealt_.end(), [&](const Dealt& one) { return one.rank == rank; }));
  }

  std::optional<ScanBlock> next_block() {
    if (again_.empty()) return reader_.next();
    ScanBlock block = std::move(again_.front());
    again_.pop_front();
    return block;
  }

  // Sees to it that every rank has something to do. False when nothing was dealt.
  bool deal() {
    sending_.remove_if([](Sending& one) {
      int is_sent = 0;
      MPI_Test(&one.request, &is_sent, MPI_STATUS_IGNORE);
      return is_sent != 0;
    });
    bool has_help = false;
    bool has_dealt = false;
    for (std::size_t rank = 1; rank < ranks_; ++rank) {
      if (lost_[rank]) continue;
      has_help = true;
      while (count_of(rank) < kBlocksAhead) {
        auto block = next_block();
        if (!block) break;
        Sending& sending = sending_.emplace_back(Sending{packed_block(*block).packed(), MPI_REQUEST_NULL});
        MPI_Isend(sending.bytes.data(), static_cast<int>(sending.bytes.size()), MPI_BYTE, static_cast<int>(rank), kBlock, MPI_COMM_WORLD, &sending.request);
        dealt_.push_back({std::move(*block), rank, Clock::now()});
        has_dealt = true;
      }
    }
    if (has_help) return has_dealt;
    auto block = next_block();  // alone: rank 0 works itself
    if (block) error_ = output_.take(answer_block(*block, wish_.survey));
    return block.has_value();
  }

  void take(const Message& message, int from) {
    const auto at = std::find_if(dealt_.begin(), dealt_.end(), [&](const Dealt& one) { return one.block.number == message.numbers[0] && one.rank == static_cast<std::size_t>(from); });
    if (at == dealt_.end()) return;  // given up long ago, and answered by another rank
    if (!error_) error_ = output_.take({message.numbers[0], message.text, {message.numbers[1], message.numbers[2]}, at->block.end});
    dealt_.erase(at);
    for (Dealt& one : dealt_) {
      if (one.rank == static_cast<std::size_t>(from)) one.since = Clock::now();  // it begins its next one now
    }
  }

  void give_up_on_silent_ranks() {
    if (wish_.patience <= 0) return;
    for (std::size_t rank = 1; rank < ranks_; ++rank) {
      const auto is_silent = [&](const Dealt& one) { return one.rank == rank && Clock::now() - one.since > std::chrono::seconds(wish_.patience); };
      if (lost_[rank] || std::none_of(dealt_.begin(), dealt_.end(), is_silent)) continue;
      lost_[rank] = true;
      for (auto at = dealt_.begin(); at != dealt_.end();) {
        if (at->rank != rank) {
          ++at;
          continue;
        }
        say("rank " + std::to_string(rank) + " does not answer; lines " + std::to_string(at->block.first_line) + " to " + std::to_string(at->block.end.line) + " are dealt again");
        again_.push_back(std::move(at->block));
        at = dealt_.erase(at);
      }
    }
  }

  void tell() {
    if (Clock::now() - told_ < std::chrono::seconds(5)) return;
    told_ = Clock::now();
    say(std::to_string(output_.count().puzzles) + " puzzles scanned");
  }

  const SweepWish& wish_;
  BlockReader reader_;
  ScanOutput output_;
  std::size_t ranks_;
  std::vector<bool> lost_;
  std::list<Dealt> dealt_;
  std::deque<ScanBlock> again_;
  std::list<Sending> sending_;
  std::optional<Error> error_;
  Clock::time_point told_ = Clock::now();
};

int deal_all(const SweepWish& wish, int ranks) {
  const auto give_up = [](const Error& error) {
    const int code = complain(error);
    MPI_Abort(MPI_COMM_WORLD, code);
    return code;
  };
  auto source = LineSource::open(wish.input);
  if (!source) return give_up(source.error());
  auto output = ScanOutput::open(wish);
  if (!output) return give_up(output.error());
  BlockReader reader(std::move(source).value(), lines_in_block(wish.survey));
  if (auto error = reader.skip_to(output->start())) return give_up(*error);
  const auto began = Clock::now();
  Dealer dealer(wish, std::move(reader), std::move(output).value(), ranks);
  if (auto error = dealer.run()) return give_up(*error);
  const ScanCount count = dealer.output().count();
  const auto spent = std::chrono::duration_cast<std::chrono::milliseconds>(Clock::now() - began).count();
  say(std::to_string(count.puzzles) + (count.puzzles == 1 ? " puzzle and " : " puzzles and ") + std::to_string(count.faults) + (count.faults == 1 ? " line that is none, " : " lines that are none, ") + std::to_string(ranks) + " ranks, " + std::to_string(spent) + " ms");
  dealer.send_home();
  if (dealer.has_lost_ranks()) {
    say("all is written; the job is ended because a rank does not answer");
    std::fflush(nullptr);
    MPI_Abort(MPI_COMM_WORLD, 0);
  }
  return 0;
}

}  // namespace
}  // namespace cp

int main(int count, char** words) {
  if (count != 8) {
    std::fputs("counterpoise: this program is started by `counterpoise scan ... --ranks`\n", stderr);
    return 64;
  }
  MPI_Init(&count, &words);
  int rank = 0;
  int ranks = 1;
  MPI_Comm_rank(MPI_COMM_WORLD, &rank);
  MPI_Comm_size(MPI_COMM_WORLD, &ranks);
  cp::SweepWish wish;
  wish.input = words[1];
  wish.output = words[2];
  wish.survey.depth = cp::survey_depth_named(words[3]).value_or(cp::SurveyDepth::kForm);
  wish.survey.ask_needed = std::strcmp(words[4], "1") == 0;
  wish.resume = std::strcmp(words[5], "1") == 0;
  wish.replace = std::strcmp(words[6], "1") == 0;
  wish.patience = std::atoi(words[7]);
  const int code = rank == 0 ? cp::deal_all(wish, ranks) : (cp::answer_blocks(wish.survey), 0);
  MPI_Finalize();
  return code;
}
