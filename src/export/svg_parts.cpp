// SPDX-License-Identifier: Apache-2.0
// Colours: M. Okabe and K. Ito, "Color Universal Design" (2008): blue, orange, vermillion, bluish green. Orange is too light
// for lines on white, so edges of the right pan take a darker shade of it.
#include "export/svg_parts.h"

#include <array>

#include "base/text.h"

namespace cp {

namespace {

struct Colour {
  std::string_view name;
  std::string_view value;
};

// Values for files; pages define the same names for light and dark.
constexpr std::array<Colour, 14> kColours = {{
    {"paper", "#fffdf8"},
    {"ink", "#1b1b1b"},
    {"dim", "#5f5f5f"},
    {"hair", "#8d8676"},
    {"rule", "#1b1b1b"},
    {"left", "#0072b2"},
    {"left-tint", "#e3f0f8"},
    {"right", "#e69f00"},
    {"right-edge", "#966300"},
    {"right-tint", "#fdf1d9"},
    {"gone", "#858585"},
    {"gone-tint", "#ecebe7"},
    {"strike", "#d55e00"},
    {"ring", "#009e73"},
}};

// @name@ stands for a colour.
constexpr std::string_view kRules = R"css(.paper{fill:@paper@}
.hair{stroke:@hair@;stroke-width:1;fill:none}
.rule{stroke:@rule@;stroke-width:3;fill:none;stroke-linecap:square}
.lt{fill:@left-tint@}
.rt{fill:@right-tint@}
.xt{fill:@gone-tint@}
.hl{stroke:@left@;stroke-width:1.3;fill:none}
.hr{stroke:@right@;stroke-width:1.5;fill:none}
.hx{stroke:@gone@;stroke-width:.9;fill:none}
.hatch{fill-opacity:1}
.le{stroke:@left@;stroke-width:3;fill:none}
.re{stroke:@right-edge@;stroke-width:3;fill:none}
.lb{stroke:@left@;stroke-width:5;fill:none}
.rb{stroke:@right-edge@;stroke-width:5;fill:none;stroke-dasharray:12 6}
.focus{stroke:@ink@;stroke-width:3.5;fill:none;stroke-linejoin:round}
.label{fill:@dim@;font:16px sans-serif;text-anchor:middle}
.ltag{fill:@left@}
.rtag{fill:@right@}
.ltxt{fill:#fff;font:bold 16px sans-serif;text-anchor:middle}
.rtxt{fill:#000;font:bold 16px sans-serif;text-anchor:middle}
.given{fill:@ink@;font:bold 36px serif;text-anchor:middle}
.known{fill:@ink@;font:32px serif;text-anchor:middle}
.off{fill:@dim@}
.cand{fill:@ink@;font:18px sans-serif;text-anchor:middle}
.halo{fill:@paper@;fill-opacity:.86}
.again{fill:@ink@;font:bold 13px sans-serif;text-anchor:end}
.strike{stroke:@strike@;stroke-width:3;stroke-linecap:round}
.ring{stroke:@ring@;stroke-width:3;fill:none}
.told{stroke:@left@;stroke-width:2;fill:none}
.sum{stroke:@ink@;stroke-width:1.6;fill:none}
.key{fill:@ink@;font:17px sans-serif}
.beam{stroke:@ink@;stroke-width:5;fill:none;stroke-linecap:round;stroke-linejoin:round}
.cord{stroke:@dim@;stroke-width:1.5;fill:none}
.dish{fill:@paper@;stroke:@ink@;stroke-width:3;stroke-linejoin:round}
.post{fill:@ink@}
.weight{fill:@ink@}
.wtxt{fill:@paper@;font:bold 17px serif;text-anchor:middle}
.extra{fill:@paper@;stroke:@ink@;stroke-width:2}
.etxt{fill:@ink@;font:bold 17px serif;text-anchor:middle}
.lslot{fill:@left-tint@;stroke:@left@;stroke-width:2;stroke-dasharray:4 3}
.rslot{fill:@right-tint@;stroke:@right-edge@;stroke-width:2;stroke-dasharray:4 3}
.stxt{fill:@ink@;font:bold 17px serif;text-anchor:middle}
.note{fill:@ink@;font:17px sans-serif;text-anchor:middle}
.head{fill:@ink@;font:bold 18px sans-serif;text-anchor:middle}
.rowname{fill:@ink@;font:17px sans-serif}
.entry{fill:@ink@;font:18px serif;text-anchor:middle}
.total{fill:@ink@;font:bold 20px serif;text-anchor:middle}
)css";

}  // namespace

std::string svg_rules(SvgUse use) {
  std::string rules;
  std::string_view left = kRules;
  while (!left.empty()) {
    const auto start = left.find('@');
    rules.append(left.substr(0, start));
    if (start == std::string_view::npos) break;
    left.remove_prefix(start + 1);
    const auto end = left.find('@');
    const std::string_view name = left.substr(0, end);
    left.remove_prefix(end + 1);
    if (use == SvgUse::kInline) rules.append("var(--").append(name).append(")");
    for (const Colour& colour : kColours) {
      if (use == SvgUse::kFile && colour.name == name) rules.append(colour.value);
    }
  }
  return rules;
}

std::string hatching(std::string_view id, char which) { return "url(#" + std::string(id) + "-" + which + ")"; }

void svg_hatchings(Markup& out, std::string_view id) {
  const std::string name(id);
  out.raw("<defs>\n");
  const auto pattern = [&](char which, std::string_view style, std::string_view path) {
    out.open("pattern", {{"id", name + "-" + which}, {"width", "10"}, {"height", "10"}, {"patternUnits", "userSpaceOnUse"}});
    out.empty("path", {{"class", std::string(style)}, {"d", std::string(path)}});
    out.close("pattern");
  };
  pattern('l', "hl", "M0 10L10 0M-2 2L2 -2M8 12L12 8");
  pattern('r', "hr", "M0 0L10 10M-2 8L2 12M8 -2L12 2");
  pattern('x', "hx", "M0 10L10 0M0 0L10 10");
  out.raw("</defs>\n");
}

void svg_begin(Markup& out, const SvgFrame& frame, SvgUse use, std::string_view id) {
  const std::string name(id);
  const std::string width = to_text(frame.width);
  const std::string height = to_text(frame.height);
  const std::string box = "0 0 " + width + " " + height;
  const std::string described = name + "-t " + name + "-d";
  if (use == SvgUse::kFile) {
    out.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"}, {"width", width}, {"height", height}, {"viewBox", box}, {"role", "img"}, {"aria-labelledby", described}});
  } else {
    out.open("svg", {{"viewBox", box}, {"role", "img"}, {"aria-labelledby", described}});
  }
  out.element("title", {{"id", name + "-t"}}, frame.title);
  out.element("desc", {{"id", name + "-d"}}, frame.description);
  if (use == SvgUse::kFile) out.raw("<style>\n" + svg_rules(use) + "</style>\n");
  svg_hatchings(out, id);
  if (use == SvgUse::kFile) out.empty("rect", {{"class", "paper"}, {"width", width}, {"height", height}});
}

void svg_end(Markup& out) { out.raw("</svg>\n"); }

}  // namespace cp
