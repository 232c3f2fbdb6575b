// SPDX-License-Identifier: Apache-2.0
#include "print/pdf_finish.h"

#include <algorithm>
#include <charconv>
#include <map>

#include "base/text.h"

namespace cp {

namespace {

Error unexpected(const std::string& what) {
  return Error{ErrorCode::kBug, "the PDF is not built as expected: " + what, "please report which version of cairo is installed", {}};
}

// The number that starts at `at`, after blanks; -1 if there is none.
long long number_at(std::string_view text, std::size_t at) {
  while (at < text.size() && (text[at] == ' ' || text[at] == '\n' || text[at] == '\r')) ++at;
  long long number = -1;
  std::from_chars(text.data() + at, text.data() + text.size(), number);
  return number;
}

// A PDF as cairo writes it: one table of offsets, no object streams.
class Objects {
 public:
  static Result<Objects> read(const std::string& pdf) {
    Objects found;
    const auto start = pdf.rfind("startxref");
    if (start == std::string::npos) return unexpected("no startxref");
    found.table_at = number_at(pdf, start + 9);
    const auto at = static_cast<std::size_t>(found.table_at);
    if (found.table_at < 0 || at >= pdf.size() || pdf.compare(at, 5, "xref\n") != 0) return unexpected("no table of offsets");
    const auto line = pdf.find('\n', at + 5);
    const auto blank = pdf.find(' ', at + 5);
    found.count = blank == std::string::npos ? -1 : number_at(pdf, blank);
    const auto trailer = pdf.find("trailer", at);
    if (line == std::string::npos || found.count < 1 || trailer == std::string::npos) return unexpected("a short table of offsets");
    for (long long i = 1; i < found.count; ++i) {
      const auto entry = line + 1 + static_cast<std::size_t>(i) * 20;  // every entry is 20 bytes long (7.5.4)
      if (entry + 20 > trailer) return unexpected("a short table of offsets");
      if (pdf[entry + 17] != 'n') continue;
      const auto offset = static_cast<std::size_t>(std::max(0LL, number_at(pdf, entry)));
      const auto body = pdf.find("obj\n", offset);
      const auto end = pdf.find("endobj", offset);
      if (body == std::string::npos || end == std::string::npos) return unexpected("an object without an end");
      found.bodies[i] = pdf.substr(body + 4, end - body - 4);
    }
    found.root = reference(pdf.substr(trailer), "/Root");
    found.info = reference(pdf.substr(trailer), "/Info");
    return found;
  }

  // The N of "/Name N 0 R".
  static long long reference(std::string_view text, std::string_view name) {
    const auto at = text.find(name);
    return at == std::string_view::npos ? -1 : number_at(text, at + name.size());
  }

  std::map<long long, std::string> bodies;
  long long count = 0;  // numbers of objects go below it
  long long root = -1;
  long long info = -1;
  long long table_at = -1;
};

// The text with more entries before its closing ">>".
std::string with_entries(std::string body, const std::string& entries) {
  const auto end = body.rfind(">>");
  return end == std::string::npos ? body : body.insert(end, entries);
}

void replace_once(std::string& text, const std::string& old, const std::string& fresh) {
  const auto at = text.find(old);
  if (at != std::string::npos) text.replace(at, old.size(), fresh);
}

// The list behind /K of the root of the structure, with its brackets.
std::string kids_of(const std::string& body) {
  const auto at = body.find("/K ");
  if (at == std::string::npos) return {};
  if (body[at + 3] == '[') return body.substr(at + 3, body.find(']', at) - at - 2);
  return body.substr(at + 3, body.find('R', at) - at - 2);
}

std::string padded(long long number, std::size_t width) {
  const std::string text = to_text(number);
  return std::string(width > text.size() ? width - text.size() : 0, '0') + text;
}

// The changed objects, a table of their offsets and a trailer that points to the old table.
std::string with_update(std::string pdf, const std::map<long long, std::string>& changed, const Objects& objects) {
  std::string table = "xref\n";
  for (const auto& [number, body] : changed) {
    table += to_text(number) + " 1\n" + padded(static_cast<long long>(pdf.size()), 10) + " 00000 n \n";
    pdf += to_text(number) + " 0 obj\n" + body + "endobj\n";
  }
  const auto table_at = static_cast<long long>(pdf.size());
  pdf += table + "trailer\n<< /Size " + to_text(objects.count + 1) + "\n   /Root " + to_text(objects.root) + " 0 R\n   /Info " + to_text(objects.info) +
         " 0 R\n   /Prev " + to_text(objects.table_at) + "\n>>\nstartxref\n" + to_text(table_at) + "\n%%EOF\n";
  return pdf;
}

}  // namespace

std::string pdf_text(std::string_view utf8) {
  static constexpr std::string_view kHex = "0123456789ABCDEF";
  std::string out = "<FEFF";
  const auto add = [&out](unsigned unit) {
    for (int shift = 12; shift >= 0; shift -= 4) out += kHex[(unit >> static_cast<unsigned>(shift)) & 0xFU];
  };
  for (std::size_t at = 0; at < utf8.size();) {
    const auto lead = static_cast<unsigned char>(utf8[at]);
    const std::size_t length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    unsigned code = length == 1 ? lead : lead & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length && at + i < utf8.size(); ++i) code = (code << 6U) | (static_cast<unsigned char>(utf8[at + i]) & 0x3FU);
    if (code > 0xFFFF) {
      add(0xD800U + ((code - 0x10000U) >> 10U));
      add(0xDC00U + ((code - 0x10000U) & 0x3FFU));
    } else {
      add(code);
    }
    at += length;
  }
  return out + ">";
}

Result<std::string> finished_pdf(std::string pdf, std::string_view language, const std::vector<std::string>& descriptions) {
  const Result<Objects> objects = Objects::read(pdf);
  if (!objects) return objects.error();
  if (objects->bodies.count(objects->root) == 0) return unexpected("no catalogue");
  const long long root = Objects::reference(objects->bodies.at(objects->root), "/StructTreeRoot");
  if (objects->bodies.count(root) == 0) return unexpected("no structure");
  const long long document = objects->count;
  const std::string tree = objects->bodies.at(root);
  const std::string kids = kids_of(tree);
  std::map<long long, std::string> changed;
  std::size_t figures = 0;
  for (const auto& [number, body] : objects->bodies) {
    if (body.find("/Type /StructElem") == std::string::npos) continue;
    std::string fresh = body;
    replace_once(fresh, "/P " + to_text(root) + " 0 R", "/P " + to_text(document) + " 0 R");
    if (body.find("/S /Figure") != std::string::npos && figures < descriptions.size()) fresh = with_entries(fresh, "   /Alt " + pdf_text(descriptions[figures++]) + "\n");
    if (fresh != body) changed[number] = fresh;
  }
  if (kids.empty() || figures != descriptions.size()) return unexpected("a figure is missing in the structure");
  std::string top = tree;
  replace_once(top, "/K " + kids, "/K [ " + to_text(document) + " 0 R ]");
  changed[root] = top;
  changed[document] = "<< /Type /StructElem\n   /S /Document\n   /P " + to_text(root) + " 0 R\n   /K " + kids + "\n>>\n";
  changed[objects->root] = with_entries(objects->bodies.at(objects->root), "   /Lang " + pdf_text(language) + "\n   /ViewerPreferences << /DisplayDocTitle true >>\n");
  return with_update(std::move(pdf), changed, *objects);
}

}  // namespace cp
