// SPDX-License-Identifier: Apache-2.0
// The text of a lesson (docs/formats/lesson_document.md), cut into scenes and pieces that can be edited one by one. The
// text is what counts: every edit replaces whole lines of it and leaves all others as they are. What the lines mean the
// engine knows; here only their first signs are looked at.

export type PieceKind = 'words' | 'note' | 'question' | 'answer' | 'directive' | 'comment';

/** Lines of one kind that belong together. */
export interface Piece {
  readonly kind: PieceKind;
  /** First and last line, counted from 1. */
  readonly from: number;
  readonly to: number;
  /** As it is edited: without marks, a paragraph a line, an empty line between paragraphs. */
  readonly text: string;
}

export interface SceneText {
  readonly heading: string;
  /** From the line of the heading to the last line before the next scene. */
  readonly from: number;
  readonly to: number;
  readonly pieces: readonly Piece[];
}

export interface Script {
  readonly lines: readonly string[];
  /** Last line before the first scene. */
  readonly headEnd: number;
  readonly scenes: readonly SceneText[];
}

export const headKeys = ['title', 'puzzle', 'idea', 'level', 'needs', 'teaches', 'language', 'minutes', 'source', 'licence'] as const;
export type HeadKey = (typeof headKeys)[number];

const width = 110;
const marks: Readonly<Record<PieceKind, string>> = { words: '', note: '| ', question: '? ', answer: '! ', directive: '@', comment: '% ' };

const isHeading = (line: string): boolean => line.trim().startsWith('==');

function kindOf(line: string): PieceKind {
  const kinds: Readonly<Record<string, PieceKind>> = { '|': 'note', '?': 'question', '!': 'answer', '@': 'directive', '%': 'comment' };
  return kinds[line.trim()[0] ?? ''] ?? 'words';
}

const bare = (kind: PieceKind, line: string): string => {
  const text = line.trim();
  if (kind === 'words') return text.startsWith('\\') ? text.slice(1).trim() : text;
  return text.slice(1).trim();
};

/** The lines as paragraphs: what is written in a row is one. */
function asText(kind: PieceKind, lines: readonly string[]): string {
  if (kind === 'directive' || kind === 'comment') return lines.map((line) => bare(kind, line)).join('\n');
  return lines.map((line) => (line.trim() ? bare(kind, line) : '')).join('\n').split(/\n{2,}/).map((paragraph) => paragraph.replace(/\n/g, ' ')).join('\n\n');
}

// Words and notes go on over an empty line; a question ends there, and every directive is alone.
function goesOn(kind: PieceKind, lines: readonly string[], at: number, end: number): number {
  if (kind === 'directive') return at;
  let last = at;
  for (let next = at + 1; next <= end; next += 1) {
    const line = lines[next - 1]!;
    if (!line.trim()) {
      if (kind !== 'words' && kind !== 'note') break;
      continue;
    }
    if (kindOf(line) !== kind) break;
    last = next;
  }
  return last;
}

function piecesOf(lines: readonly string[], from: number, to: number): Piece[] {
  const pieces: Piece[] = [];
  for (let at = from; at <= to; at += 1) {
    if (!lines[at - 1]!.trim()) continue;
    const kind = kindOf(lines[at - 1]!);
    const last = goesOn(kind, lines, at, to);
    pieces.push({ kind, from: at, to: last, text: asText(kind, lines.slice(at - 1, last)) });
    at = last;
  }
  return pieces;
}

export function readScript(text: string): Script {
  const lines = text.replace(/\r\n?/g, '\n').split('\n');
  const starts = lines.flatMap((line, i) => (isHeading(line) ? [i + 1] : []));
  const scenes = starts.map((from, i): SceneText => {
    const to = (starts[i + 1] ?? lines.length + 1) - 1;
    return { heading: lines[from - 1]!.trim().slice(2).trim(), from, to, pieces: piecesOf(lines, from + 1, to) };
  });
  return { lines, headEnd: (starts[0] ?? lines.length + 1) - 1, scenes };
}

// --- Writing

function wrapped(words: string, prefix: string): string[] {
  const rows: string[] = [];
  let row = '';
  for (const word of words.split(/\s+/).filter(Boolean)) {
    if (row && prefix.length + row.length + 1 + word.length > width) { rows.push(row); row = word; } else row = row ? `${row} ${word}` : word;
  }
  if (row) rows.push(row);
  return rows.map((each) => `${prefix}${prefix === '' && /^([%|?!@\\]|==)/.test(each) ? '\\' : ''}${each}`);
}

/** The lines that stand for an edited piece; none when nothing is left of it. */
export function pieceLines(kind: PieceKind, text: string): string[] {
  if (kind === 'directive') {
    const words = text.replace(/\s+/g, ' ').trim().replace(/^@\s*/, '');
    return words ? [`@${words}`] : [];
  }
  if (kind === 'comment') return text.split('\n').filter((line) => line.trim()).map((line) => `% ${line.trim()}`);
  const paragraphs = text.split(/\n\s*\n/).map((paragraph) => wrapped(paragraph, marks[kind])).filter((rows) => rows.length > 0);
  if (kind === 'question') return paragraphs.flat();
  return paragraphs.flatMap((rows, i) => (i === 0 ? rows : [kind === 'answer' ? '!' : '', ...rows]));
}

function replaced(lines: readonly string[], from: number, to: number, fresh: readonly string[]): string {
  return [...lines.slice(0, from - 1), ...fresh, ...lines.slice(to)].join('\n');
}

/** The text with this piece saying something else. Without words the piece is gone, and the empty line before it. */
export function editPiece(script: Script, piece: Piece, text: string): string {
  const fresh = pieceLines(piece.kind, text);
  const hasGap = fresh.length === 0 && !script.lines[piece.from - 2]?.trim() && !script.lines[piece.to]?.trim();
  return replaced(script.lines, piece.from - (hasGap ? 1 : 0), piece.to, fresh);
}

export function editHeading(script: Script, at: number, heading: string): string {
  const scene = script.scenes[at]!;
  return replaced(script.lines, scene.from, scene.from, [`== ${heading.replace(/\s+/g, ' ').replace(/^[\s=]+/, '').trim() || 'Scene'}`]);
}

/** Puts a new piece after the last one of the scene, or after this one. */
export function addPiece(script: Script, at: number, kind: PieceKind, text: string, after?: Piece): string {
  const scene = script.scenes[at]!;
  const behind = after?.to ?? scene.pieces.at(-1)?.to ?? scene.from;
  const fresh = pieceLines(kind, text);
  const before = script.lines[behind - 1] ?? '', next = script.lines[behind] ?? '';
  const isAlike = (line: string): boolean => line.trim() !== '' && !isHeading(line) && kindOf(line) === kind && kind === 'directive';
  const joins = isAlike(before) || (kind === 'answer' && kindOf(before) === 'question');
  return replaced(script.lines, behind + 1, behind, [...(joins || behind === scene.from ? [] : ['']), ...fresh, ...(next.trim() ? [''] : [])]);
}

const sceneLines = (script: Script, at: number): string[] => {
  const scene = script.scenes[at]!;
  const lines = script.lines.slice(scene.from - 1, scene.to);
  while (lines.length > 0 && !lines.at(-1)!.trim()) lines.pop();
  return lines;
};

function withScenes(script: Script, scenes: readonly (readonly string[])[]): string {
  const head = script.lines.slice(0, script.headEnd);
  while (head.length > 0 && !head.at(-1)!.trim()) head.pop();
  return [head, ...scenes].map((lines) => lines.join('\n')).join('\n\n') + '\n';
}

/** The scene comes to stand at another place. */
export function moveScene(script: Script, at: number, to: number): string {
  const all = script.scenes.map((_, i) => sceneLines(script, i));
  const [moved] = all.splice(at, 1);
  if (!moved) return script.lines.join('\n');
  all.splice(Math.max(0, Math.min(all.length, to)), 0, moved);
  return withScenes(script, all);
}

export function dropScene(script: Script, at: number): string {
  return withScenes(script, script.scenes.map((_, i) => sceneLines(script, i)).filter((_, i) => i !== at));
}

/** A new scene behind this one; -1: before all. */
export function addScene(script: Script, after: number, heading: string): string {
  const all = script.scenes.map((_, i) => sceneLines(script, i));
  all.splice(after + 1, 0, [`== ${heading}`, 'Say here what the audience is to see.']);
  return withScenes(script, all);
}

// --- The head

export function headField(script: Script, key: HeadKey): string {
  const line = script.lines.slice(0, script.headEnd).find((each) => each.trim().startsWith(`${key}:`));
  return line ? line.trim().slice(key.length + 1).trim() : '';
}

export function editHead(script: Script, key: HeadKey, value: string): string {
  const head = script.lines.slice(0, script.headEnd), words = value.replace(/\s+/g, ' ').trim();
  const at = head.findIndex((line) => line.trim().startsWith(`${key}:`));
  if (at >= 0) return replaced(script.lines, at + 1, at + 1, words ? [`${key}: ${words}`] : []);
  if (!words) return script.lines.join('\n');
  // Behind the last key that stands before it in the order of the format.
  const earlier = headKeys.slice(0, headKeys.indexOf(key));
  let behind = 1;
  head.forEach((line, i) => { if (earlier.some((each) => line.trim().startsWith(`${each}:`))) behind = i + 1; });
  return replaced(script.lines, behind + 1, behind, [`${key}: ${words}`]);
}

// --- Times

/** 90 -> "1m30s". */
export const timeWord = (seconds: number): string => `${seconds >= 60 ? `${Math.floor(seconds / 60)}m` : ''}${seconds % 60 || seconds < 60 ? `${seconds % 60}s` : ''}`;

/** 90 -> "1:30". */
export const clockWord = (seconds: number): string => `${Math.floor(Math.round(seconds) / 60)}:${String(Math.round(seconds) % 60).padStart(2, '0')}`;

/** Writes how long the scenes take, in seconds; undefined: as it is, 0: as long as their words. */
export function setTimes(script: Script, seconds: readonly (number | undefined)[]): string {
  const all = script.scenes.map((scene, i) => {
    const time = seconds[i], lines = sceneLines(script, i);
    if (time === undefined) return lines;
    const rest = lines.filter((line) => !/^\s*@time(\s|$)/.test(line));
    if (time === 0) return rest;
    // Behind @aside, which has to come first; where the old one stood if there was one.
    const old = lines.findIndex((line) => /^\s*@time(\s|$)/.test(line));
    const place = old > 0 ? old : rest.findIndex((line) => line.trim().startsWith('@aside')) + 1 || 1;
    const fresh = `@time ${timeWord(Math.max(1, Math.min(3600, Math.round(time))))}`;
    return scene.from > 0 ? [...rest.slice(0, place), fresh, ...rest.slice(place)] : lines;
  });
  return withScenes(script, all);
}

/** The scene that a line belongs to; -1 for the head. */
export const sceneAt = (script: Script, line: number): number => script.scenes.findLastIndex((scene) => scene.from <= line);

/** How many characters stand before a line and column, both counted from 1. */
export function offsetOf(text: string, line: number, column: number): number {
  let at = 0;
  for (let i = 1; i < line; i += 1) {
    const end = text.indexOf('\n', at);
    if (end < 0) return text.length;
    at = end + 1;
  }
  return Math.min(text.length, at + Math.max(0, column - 1));
}
