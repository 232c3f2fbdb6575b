// SPDX-License-Identifier: Apache-2.0
// The text of a lesson in pieces, on the lessons that come with the program.
import { describe, expect, it } from 'vitest';
import { bundled } from '../../src/writing/bundled';
import { addPiece, addScene, clockWord, dropScene, editHead, editHeading, editPiece, headField, moveScene, offsetOf, pieceLines, readScript, sceneAt, setTimes, timeWord } from '../../src/writing/script';

const text = `counterpoise lesson 1
title: A try
puzzle: ..3.1......4.1..

== First
Words that go
on here.

A second paragraph.

@singles
@claim r1c1 = 2

| A note.
? What?
! This.
!
! And that.

== Second
% nobody reads this
@aside ..3.1......4.1..
\\@ is a sign.
`;

const script = readScript(text);

describe('a lesson in pieces', () => {
  it('finds scenes and pieces with their lines', () => {
    expect(script.scenes.map(({ heading, from, to }) => [heading, from, to])).toEqual([['First', 5, 19], ['Second', 20, 24]]);
    expect(script.scenes[0]!.pieces.map(({ kind, from, to, text: words }) => [kind, from, to, words])).toEqual([
      ['words', 6, 9, 'Words that go on here.\n\nA second paragraph.'], ['directive', 11, 11, 'singles'], ['directive', 12, 12, 'claim r1c1 = 2'],
      ['note', 14, 14, 'A note.'], ['question', 15, 15, 'What?'], ['answer', 16, 18, 'This.\n\nAnd that.'],
    ]);
    expect(script.scenes[1]!.pieces.at(-1)!.text).toBe('@ is a sign.');
    expect(sceneAt(script, 12)).toBe(0);
    expect(sceneAt(script, 3)).toBe(-1);
  });

  it('writes every piece of the bundled lessons back as it was, but for where lines end', () => {
    expect(bundled.length).toBeGreaterThanOrEqual(4);
    for (const { text: lesson } of bundled) {
      const read = readScript(lesson);
      for (const scene of read.scenes) {
        for (const piece of scene.pieces) {
          const before = read.lines.slice(piece.from - 1, piece.to).join('\n'), after = pieceLines(piece.kind, piece.text).join('\n');
          expect(after.replace(/\s+[|?!]?\s*/g, ' ')).toBe(before.replace(/\s+[|?!]?\s*/g, ' '));
          expect(readScript(editPiece(read, piece, piece.text)).scenes.map((each) => each.pieces.map((one) => one.text))).toEqual(read.scenes.map((each) => each.pieces.map((one) => one.text)));
        }
      }
    }
  });

  it('changes the lines of the piece and no others', () => {
    const claim = script.scenes[0]!.pieces[2]!;
    expect(editPiece(script, claim, 'claim r1c1 = 4')).toBe(text.replace('r1c1 = 2', 'r1c1 = 4'));
    expect(editPiece(script, script.scenes[0]!.pieces[3]!, '')).toBe(text.replace('| A note.\n', ''));
    expect(editHeading(script, 1, ' == Other ')).toBe(text.replace('== Second', '== Other'));
    expect(editHead(script, 'minutes', '20')).toBe(text.replace('4.1..\n\n==', '4.1..\nminutes: 20\n\n=='));
    expect(editHead(script, 'title', 'Else')).toBe(text.replace('A try', 'Else'));
    expect(headField(script, 'title')).toBe('A try');
  });

  it('keeps words that look like something else from becoming it', () => {
    expect(pieceLines('words', '@claim is a word\n\n== and this')).toEqual(['\\@claim is a word', '', '\\== and this']);
    const long = pieceLines('words', `${'word '.repeat(21)}word? ! and @ go on`);
    for (const line of long) expect(readScript(`== x\n${line}`).scenes[0]!.pieces[0]!.kind).toBe('words');
    expect(pieceLines('directive', 'claim\nr1c1 = 2')).toEqual(['@claim r1c1 = 2']);
  });

  it('moves, adds and drops scenes and pieces', () => {
    const moved = readScript(moveScene(script, 0, 1));
    expect(moved.scenes.map(({ heading }) => heading)).toEqual(['Second', 'First']);
    expect(moved.scenes[1]!.pieces.map(({ text: words }) => words)).toEqual(script.scenes[0]!.pieces.map(({ text: words }) => words));
    expect(moveScene(moved, 1, 0)).toBe(text);
    expect(readScript(dropScene(script, 0)).scenes.map(({ heading }) => heading)).toEqual(['Second']);
    expect(readScript(addScene(script, 0, 'New')).scenes.map(({ heading }) => heading)).toEqual(['First', 'New', 'Second']);
    const added = readScript(addPiece(script, 0, 'directive', 'claim r1c2 = 1', script.scenes[0]!.pieces[2]));
    expect(added.scenes[0]!.pieces.map(({ text: words }) => words)[3]).toBe('claim r1c2 = 1');
    expect(readScript(addPiece(script, 1, 'note', 'Wait.')).scenes[1]!.pieces.at(-1)).toMatchObject({ kind: 'note', text: 'Wait.' });
  });

  it('writes times where the format wants them', () => {
    const timed = readScript(setTimes(script, [90, 45]));
    expect(timed.scenes.map(({ pieces }) => pieces.filter(({ text: words }) => words.startsWith('time')).map(({ text: words }) => words))).toEqual([['time 1m30s'], ['time 45s']]);
    // @aside stays the first directive of its scene (docs/formats/lesson_document.md)
    expect(timed.scenes[1]!.pieces.filter(({ kind }) => kind === 'directive')[0]!.text).toMatch(/^aside/);
    expect(setTimes(timed, [0, undefined])).toContain('@time 45s');
    expect(setTimes(timed, [0, 0])).toBe(text);
    expect([timeWord(90), timeWord(120), timeWord(45), timeWord(0)]).toEqual(['1m30s', '2m', '45s', '0s']);
    expect([clockWord(90), clockWord(59.6), clockWord(600)]).toEqual(['1:30', '1:00', '10:00']);
  });

  it('knows where a line and column are', () => {
    expect(text.slice(offsetOf(text, 12, 2)).startsWith('claim r1c1')).toBe(true);
    expect(offsetOf(text, 999, 1)).toBe(text.length);
  });
});
