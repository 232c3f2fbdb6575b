// SPDX-License-Identifier: Apache-2.0
#include "print/drawing.h"

namespace cp {

void set_ink(cairo_t* canvas, const Ink& ink) { cairo_set_source_rgb(canvas, ink.red, ink.green, ink.blue); }

Error drawing_error(const std::string& what, const std::string& why) {
  return Error{ErrorCode::kBug, what + " could not be drawn: " + why, "please report the lesson", {}};
}

std::string fault_of(cairo_t* canvas) {
  const cairo_status_t status = cairo_status(canvas);
  return status == CAIRO_STATUS_SUCCESS ? std::string() : std::string(cairo_status_to_string(status));
}

cairo_status_t append_bytes(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace cp
