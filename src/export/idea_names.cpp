// SPDX-License-Identifier: Apache-2.0
#include "export/idea_names.h"

#include "deduce/technique.h"

namespace cp {

std::string idea_name(const Speaker& speaker, const std::string& name) {
  const auto technique = find_technique(name);
  const std::string known = "idea." + name;
  if (speaker.words().has(known)) return speaker.words().say(known);
  return speaker.technique(name, technique ? (*technique)->name : name);
}

std::string idea_names(const Speaker& speaker, const std::vector<std::string>& names) {
  std::vector<std::string> items;
  for (const std::string& name : names) items.push_back(idea_name(speaker, name));
  return speaker.words().list(items);
}

}  // namespace cp
