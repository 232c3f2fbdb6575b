// SPDX-License-Identifier: Apache-2.0
// How pictures of lessons look here: by the rules that the engine gives with them, in the colours of this page.

const sheets = new Map<string, CSSStyleSheet>();

export function sheetFor(rules: string): CSSStyleSheet {
  let sheet = sheets.get(rules);
  if (!sheet) {
    sheet = new CSSStyleSheet();
    sheet.replaceSync(`:host{display:block}svg{display:block;width:100%;height:100%;max-height:inherit}${rules}.ltxt{fill:var(--on-left)}`);
    sheets.set(rules, sheet);
  }
  return sheet;
}
