// SPDX-License-Identifier: Apache-2.0
// What the pages share when they are built: the script is a classic deferred one, not a module: so a page also opens from
// disk, where browsers refuse modules, and a Content-Security-Policy of 'self' is enough.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin, UserConfig } from 'vite';

const classicScript: Plugin = {
  name: 'classic-script',
  apply: 'build',
  enforce: 'post',
  transformIndexHtml: {
    order: 'post',
    handler: (html) => html
      .replace(/<script type="module" crossorigin/g, '<script defer')
      .replace(/<link rel="stylesheet" crossorigin/g, '<link rel="stylesheet"'),
  },
};

/** One page: PAGE.html with SCRIPT.js and SCRIPT.css beside it, nothing else. */
export function classicPage(page: string, script: string): UserConfig {
  return {
    base: './',
    plugins: [svelte(), classicScript],
    build: {
      target: 'es2022',
      cssCodeSplit: false,
      modulePreload: false,
      assetsInlineLimit: 0,
      outDir: 'dist',   // elsewhere: vite build --outDir FOLDER
      rolldownOptions: {
        input: page,
        output: { format: 'iife', entryFileNames: `${script}.js`, assetFileNames: `${script}.[ext]` },
      },
    },
    worker: { format: 'iife' },
  };
}
