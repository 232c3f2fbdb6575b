// SPDX-License-Identifier: Apache-2.0
// A lesson as one HTML file that needs no network, and its figures as separate SVG files. See docs/formats/lesson_page.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "lesson/document.h"

namespace cp {

// A page beside this one; without an address there is none.
struct PageLink {
  std::string address;
  std::string title;
};

struct PageOptions {
  bool with_notes = false;      // print the teacher's private notes too
  std::string_view engine = {};  // the script with the engine inside (web/src/lesson); empty: a page without, which says so
  PageLink series = {};          // the page of the series that the lesson belongs to, and the lessons before and after it
  PageLink previous = {};
  PageLink next = {};
};

std::string page_html(const Document& document, const PageOptions& options = {});

// A file to be written by the caller.
struct ExportFile {
  std::string name;  // plain file name, e.g. "scene-03-board.svg"
  std::string text;
};

// Every picture of the lesson, in the order of the scenes. The solution's is the last one.
std::vector<ExportFile> figure_files(const Document& document);

}  // namespace cp
