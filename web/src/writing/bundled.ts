// SPDX-License-Identifier: Apache-2.0
// The lessons that come with the program, as text.
const files = import.meta.glob<string>('../../../data/series/*.lesson', { query: '?raw', import: 'default', eager: true });

export const bundled: readonly { readonly name: string; readonly text: string }[] =
  Object.entries(files).map(([path, text]) => ({ name: path.split('/').at(-1)!, text })).sort((a, b) => a.name.localeCompare(b.name));
