// SPDX-License-Identifier: Apache-2.0
// The built desk behind a small server on this machine, and a browser that may reach nothing else.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';

export const pageFolder = process.env.COUNTERPOISE_DESK_DIR ?? new URL('../../../web/dist', import.meta.url).pathname;
const folder = new URL(`file://${pageFolder}/`);

/** The bundled puzzle (data/demo.txt) and its balance, the ring theorem. */
export const ring = readFileSync(new URL('../../../data/demo.txt', import.meta.url), 'utf8').split('\n').filter((line) => line && !line.startsWith('#'))[0].trim();

export const pageFiles = Object.fromEntries([['index.html', 'text/html; charset=utf-8'], ['desk.js', 'text/javascript; charset=utf-8'], ['desk.css', 'text/css; charset=utf-8'],
  ['lessons.html', 'text/html; charset=utf-8'], ['lessons.js', 'text/javascript; charset=utf-8'], ['lessons.css', 'text/css; charset=utf-8']]
  .map(([name, type]) => [`/${name}`, { type, bytes: readFileSync(new URL(name, folder)) }]));

export async function serve() {
  const server = createServer((request, response) => {
    const file = pageFiles[request.url === '/' ? '/index.html' : request.url];
    response.writeHead(file ? 200 : 404, { 'content-type': file?.type ?? 'text/plain', 'x-content-type-options': 'nosniff' });
    response.end(file?.bytes);
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { url: `http://127.0.0.1:${server.address().port}/`, close: () => server.close() };
}

/** Opens the desk in a context of its own, or in the one given. Requests to elsewhere than `origin` are refused and noted. */
export async function openDesk(browser, url, { context: given, origin = url, ...options } = {}) {
  const context = given ?? await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const reached = [];
  const faults = [];
  await context.route('**/*', (route) => {
    const address = route.request().url();
    if (address.startsWith(origin) || address.startsWith('blob:') || address.startsWith('data:')) return route.continue();
    reached.push(address);
    return route.abort();
  });
  const page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => { if (['error', 'warning'].includes(message.type())) faults.push(message.text()); });
  await page.goto(url);
  await page.locator('main').waitFor();
  return { context, page, reached, faults };
}

/** Pastes as a person does: the clipboard's text goes to whatever has the keyboard. */
export async function paste(page, text) {
  await page.evaluate((words) => {
    const data = new DataTransfer();
    data.setData('text/plain', words);
    (document.activeElement ?? document.body).dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  }, text);
}

export const proper = (page) => page.getByText(/exactly one solution/).first().waitFor();
