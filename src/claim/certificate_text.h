// SPDX-License-Identifier: Apache-2.0
// Certificates as text: docs/formats/certificate.md.
#pragma once

#include <string>

#include "grid/shape.h"
#include "step/certificate.h"

namespace cp {

// Ends with a line end. The program that reads it back is tests/oracle/certificate_checker.py, which shares no code.
std::string certificate_text(const Shape& shape, const Certificate& certificate);

}  // namespace cp
