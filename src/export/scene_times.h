// SPDX-License-Identifier: Apache-2.0
// When each scene of a lesson begins and how long it lasts, for captions, chapters and films.
#pragma once

#include <string>
#include <vector>

#include "lesson/document.h"

namespace cp {

struct SceneTime {
  int start = 0;    // seconds from the beginning
  int seconds = 0;  // at least 1
};

// One for each scene, in order. A scene without a time of its own gets the speaking time of its words (document.h).
std::vector<SceneTime> scene_times(const Document& document);

// The end of the last scene.
int length_in_seconds(const std::vector<SceneTime>& times);

// "0:07", "12:30", "1:02:03": as people write it. With `has_hours` the hour is always there: "0:12:30".
std::string clock_text(int seconds, bool has_hours = false);

// What is said in a scene, sentence by sentence: its words for the audience, then the questions of its exercises.
std::vector<std::string> spoken_sentences(const Scene& scene);

// The first sentences, as long as they have at most `most_words` words together; at least one if there is any.
std::string first_words(const Scene& scene, int most_words);

}  // namespace cp
