// SPDX-License-Identifier: Apache-2.0
#include "stream/byte_source.h"

#include <zlib.h>
#include <zstd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>

namespace cp {

namespace {

constexpr std::size_t kPiece = std::size_t{1} << 16;
constexpr std::string_view kGzipMark = "\x1f\x8b";
constexpr std::string_view kZstdMark = "\x28\xb5\x2f\xfd";

Error cannot_read(const std::string& name, const std::string& why, std::string hint) {
  return Error{ErrorCode::kNotFound, "cannot read '" + name + "': " + why, std::move(hint), {}};
}

// The bytes as they lie in the file.
class PlainBytes : public ByteSource {
 public:
  PlainBytes(std::FILE* file, std::string name) : file_(file), name_(std::move(name)) {}
  ~PlainBytes() override {
    if (file_ != stdin) std::fclose(file_);
  }

  bool read(std::string& to) override {
    const std::size_t before = to.size();
    to.resize(before + kPiece);
    const std::size_t count = std::fread(to.data() + before, 1, kPiece, file_);
    to.resize(before + count);
    if (count == 0 && std::ferror(file_) != 0) trouble_ = cannot_read(name_, std::strerror(errno), "check the file");
    return count > 0;
  }

 private:
  std::FILE* file_;
  std::string name_;
};

// What a way of unpacking needs: packed bytes to take from, and a note when they end in the middle.
class PackedBytes : public ByteSource {
 public:
  PackedBytes(std::unique_ptr<ByteSource> packed, std::string start, std::string name) : packed_(std::move(packed)), input_(std::move(start)), name_(std::move(name)) {}

 protected:
  // Sees to it that there is input. False at its end.
  bool has_input() {
    if (used_ < input_.size()) return true;
    input_.clear();
    used_ = 0;
    if (packed_->read(input_)) return true;
    trouble_ = packed_->trouble();
    return false;
  }
  void ends_early() {
    if (!trouble_) trouble_ = cannot_read(name_, "the packed file ends in the middle", "it was cut off; fetch or pack it again");
  }
  void is_damaged(const char* why) { trouble_ = cannot_read(name_, std::string("the packed file is damaged (") + (why != nullptr ? why : "no reason given") + ")", "fetch or pack it again"); }

  std::unique_ptr<ByteSource> packed_;
  std::string input_;
  std::size_t used_ = 0;
  std::string name_;
};

// gzip; several members in a row are one text, as the format says.
class GzipBytes : public PackedBytes {
 public:
  using PackedBytes::PackedBytes;
  ~GzipBytes() override {
    if (is_open_) inflateEnd(&state_);
  }

  bool read(std::string& to) override {
    while (!trouble_) {
      if (!has_input()) {
        if (is_open_) ends_early();
        return false;
      }
      if (!is_open_ && inflateInit2(&state_, 15 + 16) != Z_OK) {
        is_damaged(state_.msg);
        return false;
      }
      is_open_ = true;
      if (unpack(to)) return true;
    }
    return false;
  }

 private:
  bool unpack(std::string& to) {
    const std::size_t before = to.size();
    to.resize(before + kPiece);
    state_.next_in = reinterpret_cast<Bytef*>(input_.data() + used_);
    state_.avail_in = static_cast<uInt>(input_.size() - used_);
    state_.next_out = reinterpret_cast<Bytef*>(to.data() + before);
    state_.avail_out = static_cast<uInt>(kPiece);
    const int said = inflate(&state_, Z_NO_FLUSH);
    used_ = input_.size() - state_.avail_in;
    to.resize(before + kPiece - state_.avail_out);
    if (said == Z_STREAM_END) {
      inflateEnd(&state_);
      state_ = {};
      is_open_ = false;
    } else if (said != Z_OK && said != Z_BUF_ERROR) {
      is_damaged(state_.msg);
    }
    return to.size() > before;
  }

  z_stream state_{};
  bool is_open_ = false;
};

// zstd; several frames in a row are one text.
class ZstdBytes : public PackedBytes {
 public:
  using PackedBytes::PackedBytes;
  ~ZstdBytes() override { ZSTD_freeDStream(state_); }

  bool read(std::string& to) override {
    while (!trouble_) {
      if (!has_input()) {
        if (is_inside_) ends_early();
        return false;
      }
      const std::size_t before = to.size();
      to.resize(before + kPiece);
      ZSTD_inBuffer in{input_.data(), input_.size(), used_};
      ZSTD_outBuffer out{to.data() + before, kPiece, 0};
      const std::size_t said = ZSTD_decompressStream(state_, &out, &in);
      used_ = in.pos;
      to.resize(before + out.pos);
      if (ZSTD_isError(said) != 0) is_damaged(ZSTD_getErrorName(said));
      is_inside_ = said != 0;
      if (out.pos > 0) return true;
    }
    return false;
  }

 private:
  ZSTD_DStream* state_ = ZSTD_createDStream();
  bool is_inside_ = false;
};

// The first bytes again, then the rest.
class StartedBytes : public ByteSource {
 public:
  StartedBytes(std::unique_ptr<ByteSource> rest, std::string start) : rest_(std::move(rest)), start_(std::move(start)) {}

  bool read(std::string& to) override {
    if (!start_.empty()) {
      to += start_;
      start_.clear();
      return true;
    }
    const bool more = rest_->read(to);
    trouble_ = rest_->trouble();
    return more;
  }

 private:
  std::unique_ptr<ByteSource> rest_;
  std::string start_;
};

}  // namespace

Result<std::unique_ptr<ByteSource>> open_bytes(const std::string& name) {
  std::error_code ignored;
  std::FILE* file = stdin;
  if (name != "-") {
    if (std::filesystem::is_directory(name, ignored)) return cannot_read(name, "it is a folder", "name a file inside it");
    file = std::fopen(name.c_str(), "rb");
    if (file == nullptr) return cannot_read(name, std::strerror(errno), "check the name and the permissions");
  }
  auto plain = std::make_unique<PlainBytes>(file, name);
  std::string start;
  while (start.size() < kZstdMark.size() && plain->read(start)) {
  }
  if (plain->trouble()) return *plain->trouble();
  std::unique_ptr<ByteSource> bytes;
  if (start.starts_with(kGzipMark)) {
    bytes = std::make_unique<GzipBytes>(std::move(plain), std::move(start), name);
  } else if (start.starts_with(kZstdMark)) {
    bytes = std::make_unique<ZstdBytes>(std::move(plain), std::move(start), name);
  } else {
    bytes = std::make_unique<StartedBytes>(std::move(plain), std::move(start));
  }
  return bytes;
}

}  // namespace cp
