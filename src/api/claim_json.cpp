// SPDX-License-Identifier: Apache-2.0
#include "api/claim_json.h"

#include "api/parts.h"
#include "base/text.h"
#include "claim/certificate_text.h"
#include "speak/certificate_words.h"
#include "speak/naming.h"

namespace cp::api {

namespace {

using Kind = CertificateFact::Kind;

std::string_view kind_name(Kind kind) {
  switch (kind) {
    case Kind::kHouse: return "house";
    case Kind::kMarks: return "marks";
    case Kind::kBalance: return "balance";
    case Kind::kClaim: return "claim";
  }
  return "claim";
}

Json fact_json(const Shape& shape, const CertificateFact& fact) {
  Json json = Json::object();
  json["kind"] = kind_name(fact.kind);
  if (fact.kind == Kind::kHouse) json["name"] = shape.name_of(fact.house);
  else if (fact.kind == Kind::kMarks) json["name"] = shape.name_of(fact.cell);
  else json["name"] = fact.name;
  json["text"] = fact_in_words(shape, fact);
  return json;
}

Json facts_json(const Shape& shape, const std::vector<CertificateFact>& facts) {
  Json list = Json::array();
  for (const CertificateFact& fact : facts) list.push_back(fact_json(shape, fact));
  return list;
}

Json reason_json(const Shape& shape, const ClaimAnswer& answer) {
  const ClaimWords words = certificate_words(shape, *answer.certificate, answer.verdict == Verdict::kProved || answer.is_contradiction);
  Json json = Json::object();
  json["facts"] = facts_json(shape, answer.certificate->facts);
  json["minimal"] = answer.is_smallest ? "smallest" : answer.is_irreducible ? "irreducible" : "not settled";
  json["spoken"] = words.spoken;
  json["written"] = words.written;
  json["certificate"] = certificate_text(shape, *answer.certificate);
  return json;
}

Json addition_json(const Shape& shape, const Addition& addition) {
  Json json = Json::object();
  json["facts"] = facts_json(shape, addition.facts);
  if (addition.elimination) json["eliminations"] = candidates_json(shape, {*addition.elimination});
  json["text"] = addition.elimination ? eliminations_in_words(shape, {*addition.elimination}) : facts_in_words(shape, addition.facts);
  return json;
}

// The cells that break a claim about values come first.
std::string counter_words(const Shape& shape, const Claim& claim, const std::vector<Candidate>& counter) {
  std::vector<Candidate> breaking;
  std::vector<Candidate> others;
  for (const Candidate& each : counter) (claim.kind == Claim::Kind::kValues && !claim.digits.has(each.digit) ? breaking : others).push_back(each);
  if (breaking.empty()) return placements_in_words(shape, others);
  if (others.empty()) return placements_in_words(shape, breaking);
  std::vector<std::string> rest;
  for (const Candidate& each : others) rest.push_back(shape.name_of(each.cell) + " = " + digit_name(each.digit));
  return placements_in_words(shape, breaking) + ", with " + listed(rest);
}

std::string text_of(const Board& board, const Claim& claim, const ClaimAnswer& answer, const std::vector<int>& unproved) {
  const Shape& shape = board.position.shape();
  std::string text;
  if (answer.verdict == Verdict::kProved) text = "Proved.";
  if (answer.verdict == Verdict::kRefuted) text = board.truth ? "False: the solution is otherwise." : "False: no grid that keeps to the footing is like that.";
  if (answer.verdict == Verdict::kOpen) text = board.truth ? "Open: true in the solution, but the footing does not imply it." : "Open: the footing implies neither the claim nor its contrary.";
  if (answer.is_contradiction) text += " The footing contradicts itself, so it would prove anything.";
  if (!unproved.empty()) {
    std::vector<std::string> numbers;
    for (const int number : unproved) numbers.push_back(to_text(number));
    text += " This rests on " + std::string(numbers.size() == 1 ? "claim " : "claims ") + listed(numbers) + ", not proved " + (numbers.size() == 1 ? "itself." : "themselves.");
  }
  if (answer.certificate) text += " " + certificate_words(shape, *answer.certificate, answer.verdict == Verdict::kProved || answer.is_contradiction).spoken;
  if (!answer.counter.empty()) text += " It could be that " + counter_words(shape, claim, answer.counter) + ".";
  if (answer.verdict != Verdict::kOpen) return text;
  std::vector<std::string> additions;
  for (const Addition& addition : answer.additions) additions.push_back(addition_json(shape, addition).at("text").get<std::string>());
  if (!additions.empty()) text += " What would close it: " + listed(additions, "or") + ".";
  return text;
}

}  // namespace

std::string_view name_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::kProved: return "proved";
    case Verdict::kRefuted: return "refuted";
    case Verdict::kOpen: return "open";
  }
  return "open";
}

Json claim_json(const Board& board, const ScriptClaim& claim, const ClaimAnswer& answer, int number, const std::vector<int>& unproved) {
  const Shape& shape = board.position.shape();
  Json json = Json::object();
  json["number"] = number;
  json["line"] = claim.line;
  json["claim"] = claim.text;
  json["footing"] = claim.footing_text;
  json["verdict"] = name_of(answer.verdict);
  json["text"] = text_of(board, claim.claim, answer, unproved);
  if (answer.certificate) json["reason"] = reason_json(shape, answer);
  if (!answer.counter.empty()) json["counter"] = candidates_json(shape, answer.counter);
  if (answer.verdict == Verdict::kOpen) {
    Json additions = Json::array();
    for (const Addition& addition : answer.additions) additions.push_back(addition_json(shape, addition));
    json["additions"] = std::move(additions);
  }
  if (answer.is_contradiction) json["contradiction"] = true;
  if (!unproved.empty()) json["rests_on_unproved"] = unproved;
  return json;
}

}  // namespace cp::api
