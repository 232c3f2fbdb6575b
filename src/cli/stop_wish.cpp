// SPDX-License-Identifier: Apache-2.0
#include "cli/stop_wish.h"

#include <array>
#include <csignal>

namespace cp::cli {

namespace {

constexpr std::array<int, 3> kSignals = {SIGINT, SIGTERM, SIGHUP};
volatile std::sig_atomic_t came = 0;
std::array<struct sigaction, kSignals.size()> earlier{};

void note_signal(int signal) { came = signal; }

}  // namespace

StopWish::StopWish() {
  came = 0;
  struct sigaction note {};
  note.sa_handler = note_signal;
  sigemptyset(&note.sa_mask);
  for (std::size_t i = 0; i < kSignals.size(); ++i) {
    sigaction(kSignals[i], nullptr, &earlier[i]);
    if (earlier[i].sa_handler != SIG_IGN) sigaction(kSignals[i], &note, nullptr);  // nohup stays nohup
  }
}

StopWish::~StopWish() {
  for (std::size_t i = 0; i < kSignals.size(); ++i) sigaction(kSignals[i], &earlier[i], nullptr);
}

int StopWish::signal() { return static_cast<int>(came); }

void end_by(int signal) {
  std::signal(signal, SIG_DFL);
  std::raise(signal);
}

}  // namespace cp::cli
