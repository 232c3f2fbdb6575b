// SPDX-License-Identifier: Apache-2.0
// A text becomes a file among the downloads of the browser.

export function saveAs(name: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/plain' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
