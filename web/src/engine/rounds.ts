// SPDX-License-Identifier: Apache-2.0
// The finder in rounds: balances of few houses first. The rounds together find what one search finds, in the same order
// (docs/formats/weigh.md), so the list on the screen only ever grows better.

export interface Ranked {
  readonly left: readonly string[];
  readonly right: readonly string[];
  readonly tally: readonly number[];
  readonly load: { readonly total: number };
  readonly points: { readonly hint: number };
}

export interface Found<B extends Ranked = Ranked> {
  readonly balances: readonly B[];
  readonly scanned: number;
  readonly distinct: number;
  readonly examined: number;
  readonly impossible: boolean;
  readonly position?: string;
}

/** How many houses each round looks at, least and most. */
export const rounds: readonly (readonly [number, number])[] = [[0, 4], [5, 6], [7, 99]];

export const rankOf = (balance: Ranked): number => balance.load.total - balance.points.hint;

/** The houses as numbers: 2 for each house (its place and its weight), in the order rows, columns, boxes. */
function weightsOf(balance: Ranked): number[] {
  const side = balance.tally.length;
  const read = (name: string, sign: number): [number, number] => {
    const [, times = '1', kind = 'r', number = '1'] = /^(?:(\d+)\*)?([rcb])(\d+)$/.exec(name) ?? [];
    return ['rcb'.indexOf(kind) * side + Number(number), sign * Number(times)];
  };
  return [...balance.left.map((name) => read(name, 1)), ...balance.right.map((name) => read(name, -1))].sort((a, b) => a[0] - b[0]).flat();
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return a.length - b.length;
}

/** Two rounds as one. A limit of 0 keeps everything. */
export function merge<B extends Ranked>(a: Found<B> | undefined, b: Found<B>, limit: number): Found<B> {
  if (!a) return b;
  const keyed = [...a.balances, ...b.balances].map((balance) => ({ balance, rank: rankOf(balance), weights: weightsOf(balance) }));
  keyed.sort((one, two) => one.rank - two.rank || compareLists(one.weights, two.weights));
  const balances = keyed.map(({ balance }) => balance);
  return { ...b, balances: limit > 0 ? balances.slice(0, limit) : balances, examined: a.examined + b.examined, impossible: a.impossible || b.impossible };
}
