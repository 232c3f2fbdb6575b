// SPDX-License-Identifier: Apache-2.0
// What the page says to pupils. What the engine says itself is English.

const english = {
  tryIt: 'Try it yourself',
  cell: 'Cell',
  pointAt: 'Point at a cell of the board, or name it.',
  strikeOut: 'strike out',
  putIn: 'put in',
  hint: 'A hint',
  claim: 'Your claim',
  claimExample: 'for example r3c4 != 5',
  check: 'Check it',
  veil: 'Hide what falls, and find it',
  unveil: 'Show what falls',
  thinking: 'Thinking ...',
  noCell: 'There is no such cell.',
  isFilled: 'This cell is filled.',
  rightHere: 'Yes: {what}. That is what this scene is about. {count} of {all} found.',
  allFound: 'Yes: {what}. That was all of it.',
  shown: 'Yes: {what}. {name} shows it.',
  shownByBalance: 'Yes: {what}. A balance shows it.',
  notYet: 'No step shows {what} at this point.',
  notSo: 'No: {what} is not so.',
  proved: 'Proved.',
  refuted: 'Not so.',
  open: 'Does not follow.',
  aboutDigits: 'It is about {digits}.',
  aboutCells: 'Look at {cells}.',
  tellOut: '{digit} leaves {cells}.',
  tellIn: '{digit} goes into {cells}.',
  aboutTechnique: 'Look for this: {name}.',
  noHint: 'No single step of the catalogue fires here: weigh houses against one another.',
  failed: 'The engine could not say: {why}',
  leaves: '{digit} leaves {cell}',
  goesIn: '{digit} goes into {cell}',
} as const;

type Key = keyof typeof english;

const german: Record<Key, string> = {
  tryIt: 'Selbst versuchen',
  cell: 'Feld',
  pointAt: 'Zeig auf ein Feld des Bretts oder nenne es.',
  strikeOut: 'streichen',
  putIn: 'eintragen',
  hint: 'Ein Tipp',
  claim: 'Deine Behauptung',
  claimExample: 'zum Beispiel r3c4 != 5',
  check: 'Prüfen',
  veil: 'Verdecken, was fällt, und selbst finden',
  unveil: 'Zeigen, was fällt',
  thinking: 'Einen Augenblick ...',
  noCell: 'So ein Feld gibt es nicht.',
  isFilled: 'Dieses Feld ist schon besetzt.',
  rightHere: 'Ja: {what}. Darum geht es in dieser Szene. {count} von {all} gefunden.',
  allFound: 'Ja: {what}. Das war alles.',
  shown: 'Ja: {what}. Das zeigt: {name}.',
  shownByBalance: 'Ja: {what}. Das zeigt eine Waage.',
  notYet: 'Noch zeigt kein Schritt: {what}.',
  notSo: 'Nein, es stimmt nicht: {what}.',
  proved: 'Bewiesen.',
  refuted: 'Stimmt nicht.',
  open: 'Folgt nicht.',
  aboutDigits: 'Es geht um {digits}.',
  aboutCells: 'Sieh dir {cells} an.',
  tellOut: '{digit} fällt in {cells}.',
  tellIn: '{digit} kommt in {cells}.',
  aboutTechnique: 'Such danach: {name}.',
  noHint: 'Kein einzelner Schritt des Katalogs greift hier: wäge Häuser gegeneinander.',
  failed: 'Das Rechenwerk konnte es nicht sagen: {why}',
  leaves: '{digit} fällt in {cell}',
  goesIn: '{digit} kommt in {cell}',
};

export type Say = (key: Key, fills?: Readonly<Record<string, string | number>>) => string;

/** The sentences in the language of a tag, English when it does not come along. */
export function sayIn(language: string): Say {
  const words: Record<Key, string> = /^de\b/i.test(language) ? german : english;
  return (key, fills = {}) => words[key].replace(/\{(\w+)\}/g, (_, name: string) => String(fills[name] ?? ''));
}
