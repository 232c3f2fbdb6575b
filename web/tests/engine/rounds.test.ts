// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';
import { merge, rounds, type Found, type Ranked } from '../../src/engine/rounds';

const balance = (left: string, right: string, total: number, hint = 0): Ranked =>
  ({ left: left.split(' '), right: right.split(' '), tally: Array<number>(9).fill(0), load: { total }, points: { hint } });
const found = (...balances: Ranked[]): Found => ({ balances, scanned: 10, distinct: 5, examined: 2, impossible: false });
const names = ({ balances }: Found): string[] => balances.map(({ left, right }) => `${left.join(' ')} : ${right.join(' ')}`);

describe('rounds', () => {
  it('leave no number of houses out', () => {
    expect(rounds[0]![0]).toBe(0);
    expect(rounds.at(-1)![1]).toBe(99);
    for (let i = 1; i < rounds.length; i += 1) expect(rounds[i]![0]).toBe(rounds[i - 1]![1] + 1);
  });

  it('are merged by load less hint', () => {
    const merged = merge(found(balance('r1', 'c1', 12), balance('r2', 'c2', 20)), found(balance('r3', 'c3', 16, 5)), 20);
    expect(names(merged)).toEqual(['r3 : c3', 'r1 : c1', 'r2 : c2']);
    expect(merged.examined).toBe(4);
  });

  it('are merged by houses where the rank is the same: rows before columns before boxes, the lighter first', () => {
    const merged = merge(found(balance('r2', 'c1', 10), balance('b1', 'c1', 10)), found(balance('r1', 'b2', 10), balance('2*r1', 'c1', 10), balance('c1', 'r1', 10)), 0);
    expect(names(merged)).toEqual(['c1 : r1', 'r1 : b2', '2*r1 : c1', 'r2 : c1', 'b1 : c1']);
  });

  it('are cut at the limit', () => {
    expect(names(merge(found(balance('r1', 'c1', 1)), found(balance('r2', 'c2', 2), balance('r3', 'c3', 3)), 2))).toEqual(['r1 : c1', 'r2 : c2']);
  });

  it('show the impossible once it was seen', () => {
    expect(merge({ ...found(), impossible: true }, found(), 20).impossible).toBe(true);
  });
});
