// SPDX-License-Identifier: Apache-2.0
#include "sweep/sweep.h"

#include <atomic>

#include <tbb/global_control.h>
#include <tbb/info.h>
#include <tbb/parallel_pipeline.h>

namespace cp {

Result<SweepEnd> sweep(const SweepWish& wish, const SweepWatch& watch) {
  auto source = LineSource::open(wish.input);
  if (!source) return source.error();
  auto output = ScanOutput::open(wish);
  if (!output) return output.error();
  BlockReader reader(std::move(source).value(), lines_in_block(wish.survey));
  if (auto error = reader.skip_to(output->start())) return *error;

  const auto threads = static_cast<std::size_t>(wish.threads > 0 ? wish.threads : tbb::info::default_concurrency());
  const tbb::global_control limit(tbb::global_control::max_allowed_parallelism, threads);
  SweepEnd end;
  end.before = output->count();
  std::optional<Error> error;         // only the writer touches it
  std::atomic<bool> has_error = false;  // what the reader sees of it
  const auto read = [&](tbb::flow_control& control) {
    if (!has_error && !(end.was_stopped = end.was_stopped || watch.wants_stop())) {
      if (auto block = reader.next()) return std::move(*block);
    }
    control.stop();
    return ScanBlock{};
  };
  const auto work = [&](const ScanBlock& block) { return answer_block(block, wish.survey); };
  const auto write = [&](BlockAnswer answer) {
    if (!error) error = output.value().take(std::move(answer));
    has_error = error.has_value();
    watch.progress(output->count());
  };
  // Some blocks wait for each thread, so that one slow block does not stop the others.
  tbb::parallel_pipeline(4 * threads, tbb::make_filter<void, ScanBlock>(tbb::filter_mode::serial_in_order, read) &
                                          tbb::make_filter<ScanBlock, BlockAnswer>(tbb::filter_mode::parallel, work) &
                                          tbb::make_filter<BlockAnswer, void>(tbb::filter_mode::serial_in_order, write));
  if (error) return *error;
  const bool is_complete = !end.was_stopped && !reader.trouble();
  if (auto failed = output.value().finish(is_complete)) return *failed;
  if (reader.trouble()) return *reader.trouble();
  end.count = output->count();
  return end;
}

}  // namespace cp
