// SPDX-License-Identifier: Apache-2.0
// The folder of lessons that the program which serves this page was started with (docs/formats/served_lessons.md). A page
// from elsewhere, or from disk, has none.
import type { Stored } from './kept';

export interface FolderEntry { readonly name: string; readonly title: string; readonly revision: string }
export interface Folder { readonly folder: string; readonly lessons: readonly FolderEntry[] }

export type Written = { readonly kind: 'written'; readonly stored: Stored } | { readonly kind: 'changed'; readonly revision: string } | { readonly kind: 'fault'; readonly message: string };

const isServed = (): boolean => location.protocol === 'http:' && (location.hostname === '127.0.0.1' || location.hostname === 'localhost');
const place = (name: string): string => `lessons/${encodeURIComponent(name)}`;
const bareTag = (tag: string | null): string => (tag ?? '').replace(/^W\//, '').replace(/"/g, '');

async function faultOf(answer: Response): Promise<string> {
  try {
    const { error } = await answer.json() as { error?: { message?: string; hint?: string } };
    if (error?.message) return [error.message, error.hint].filter(Boolean).join('; ');
  } catch { /* no words from the program */ }
  return `the program answered ${answer.status}`;
}

/** undefined: there is none. */
export async function readFolder(): Promise<Folder | undefined> {
  if (!isServed()) return undefined;
  try {
    const answer = await fetch('lessons', { cache: 'no-store' });
    if (!answer.ok) return undefined;
    const value = await answer.json() as Partial<Folder>;
    return typeof value.folder === 'string' && Array.isArray(value.lessons) ? value as Folder : undefined;
  } catch {
    return undefined;
  }
}

export async function readStored(name: string): Promise<{ text: string; stored: Stored } | { message: string }> {
  try {
    const answer = await fetch(place(name), { cache: 'no-store' });
    if (!answer.ok) return { message: await faultOf(answer) };
    return { text: await answer.text(), stored: { name, revision: bareTag(answer.headers.get('etag')) } };
  } catch {
    return { message: 'the program that serves this page does not answer' };
  }
}

/** Writes the file if it still is the revision that is known; without one, or when there was none to be had, only if there is no such file. */
export async function writeStored(name: string, text: string, revision: string | undefined): Promise<Written> {
  try {
    const condition: Record<string, string> = !revision ? { 'if-none-match': '*' } : { 'if-match': `"${revision}"` };
    const answer = await fetch(place(name), { method: 'PUT', headers: { 'content-type': 'text/plain; charset=utf-8', ...condition }, body: text });
    if (answer.ok) return { kind: 'written', stored: { name, revision: bareTag(answer.headers.get('etag')) } };
    if (answer.status === 412) return { kind: 'changed', revision: bareTag(answer.headers.get('etag')) };
    return { kind: 'fault', message: await faultOf(answer) };
  } catch {
    return { kind: 'fault', message: 'the program that serves this page does not answer' };
  }
}
