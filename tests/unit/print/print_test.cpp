// SPDX-License-Identifier: Apache-2.0
// Handouts and stills from the inside. What outside programs say to them is tested under tests/cli.
#include <gtest/gtest.h>

#include <algorithm>

#include "print/handout_pdf.h"
#include "print/pdf_finish.h"
#include "print/still_png.h"
#include "support/count_of.h"
#include "support/sample_lesson.h"

namespace cp {
namespace {

using support::count_of;

// Big-endian, as PNG writes its numbers.
unsigned number_at(const std::string& bytes, std::size_t at) {
  unsigned number = 0;
  for (std::size_t i = 0; i < 4; ++i) number = number << 8U | static_cast<unsigned char>(bytes[at + i]);
  return number;
}

Document with_exercise() {
  Document document = support::sample_lesson();
  document.scenes[2].exercises.push_back({"Which cells cancel?", "The crossings.\n\nAll of them.", {}, {}, {}});
  return document;
}

TEST(Handout, IsTheSameEveryTime) {
  const auto first = handout_pdf(with_exercise());
  const auto second = handout_pdf(with_exercise());
  ASSERT_TRUE(first.is_ok()) << first.error().message;
  EXPECT_EQ(*first, *second);
}

TEST(Handout, DescribesEveryFigure) {
  const auto pdf = handout_pdf(with_exercise());
  ASSERT_TRUE(pdf.is_ok());
  // Each figure stands in the file as cairo wrote it and once more with its description.
  const int described = count_of(*pdf, "/Alt <FEFF");
  EXPECT_GT(described, 5);
  EXPECT_EQ(count_of(*pdf, "/S /Figure"), 2 * described);
  EXPECT_NE(pdf->find("/Lang " + pdf_text("en")), std::string::npos);
}

TEST(Handout, LetterIsOtherPaper) {
  const auto pdf = handout_pdf(support::sample_lesson(), {Paper::kLetter, false});
  ASSERT_TRUE(pdf.is_ok());
  EXPECT_NE(pdf->find("/MediaBox [ 0 0 612 792 ]"), std::string::npos);
}

TEST(Handout, AWorksheetNeedsNoExercises) {
  EXPECT_TRUE(handout_pdf(support::sample_lesson(), {Paper::kA4, true}).is_ok());
  EXPECT_TRUE(handout_pdf(with_exercise(), {Paper::kA4, true}).is_ok());
}

// ISO 32000-1, 7.9.2.2: UTF-16BE behind FEFF; U+1D11E as a pair of surrogates (Unicode Standard, table 3-5: D834 DD1E).
TEST(PdfText, IsUtf16) {
  EXPECT_EQ(pdf_text("A\u00e9"), "<FEFF004100E9>");
  EXPECT_EQ(pdf_text("\U0001D11E"), "<FEFFD834DD1E>");
}

TEST(PdfFinish, RefusesWhatCairoDidNotWrite) {
  EXPECT_FALSE(finished_pdf("%PDF-1.5\nno table", "en", {}).is_ok());
  EXPECT_FALSE(finished_pdf("startxref\n99999\n%%EOF", "en", {}).is_ok());
  EXPECT_FALSE(finished_pdf("xref\n0 2\n0000000000 65535 f \n0000000000 00000 n \ntrailer\nstartxref\n0\n%%EOF", "en", {}).is_ok());
  EXPECT_FALSE(finished_pdf("xref\nstartxref\n0\n%%EOF", "en", {}).is_ok());
}

// PNG specification, 11.2.2: width and height follow the eight-byte signature and "IHDR"; colour type 2 has no alpha, 6 has.
TEST(Stills, HaveTheSizeAskedFor) {
  const Document document = support::sample_lesson();
  for (const int height : {720, 2160}) {
    const bool is_transparent = height == 720;
    const auto png = still_png(document, 3, {height, is_transparent});
    ASSERT_TRUE(png.is_ok());
    EXPECT_EQ(png->substr(12, 4), "IHDR");
    EXPECT_EQ(number_at(*png, 16), static_cast<unsigned>(height * 16 / 9));
    EXPECT_EQ(number_at(*png, 20), static_cast<unsigned>(height));
    EXPECT_EQ((*png)[25], is_transparent ? 6 : 2);
  }
}

TEST(Stills, AreTheSameEveryTime) {
  const Document document = support::sample_lesson();
  EXPECT_EQ(*still_png(document, 4, {360, true}), *still_png(document, 4, {360, true}));
}

TEST(Stills, DoNotShowTheSolution) {
  Document document = support::sample_lesson();
  Scene& last = document.scenes.back();
  ASSERT_TRUE(last.answer);
  const auto with = still_png(document, document.scenes.size() - 1, {360, false});
  last.answer.reset();
  EXPECT_EQ(*with, *still_png(document, document.scenes.size() - 1, {360, false}));
}

TEST(Stills, RefuseWhatCanNotBeDrawn) {
  const Document document = support::sample_lesson();
  EXPECT_FALSE(still_png(document, 99).is_ok());
  EXPECT_FALSE(still_png(document, 0, {10, false}).is_ok());
  EXPECT_FALSE(still_png(document, 0, {100000, false}).is_ok());
}

// Hebrew, Arabic, Greek and Cyrillic, a very long word, and no words at all.
TEST(Stills, TakeAnyWords) {
  Document document = support::sample_lesson();
  document.language = "he";
  document.is_right_to_left = true;
  document.scenes[0].heading = "\u05d4\u05de\u05d0\u05d6\u05e0\u05d9\u05d9\u05dd r3c4";
  document.scenes[0].paragraphs = {{std::string(400, 'w'), ""}};
  document.scenes[1].paragraphs.clear();
  document.scenes[1].heading.clear();
  for (const std::size_t scene : {0U, 1U, 2U}) EXPECT_TRUE(still_png(document, scene, {360, false}).is_ok());
  EXPECT_TRUE(handout_pdf(document).is_ok());
}

}  // namespace
}  // namespace cp
