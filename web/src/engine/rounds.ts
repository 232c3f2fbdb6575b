// SPDX-License-Identifier: Apache-2.0
// The finder in rounds: first balances of few houses, which takes an eighth of the time, then everything. Each round
// answers for all before it, so a screen shows the newest (docs/formats/weigh.md).

/** How many houses a balance of each round may have; none: any number. */
export const rounds: readonly { readonly most_houses?: number }[] = [{ most_houses: 3 }, {}];
