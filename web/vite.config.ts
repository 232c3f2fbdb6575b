// SPDX-License-Identifier: Apache-2.0
// Builds web/dist: index.html, desk.js, desk.css and nothing else. The script is
// a classic deferred one, not a module: so the page also opens from disk, where
// browsers refuse modules, and a Content-Security-Policy of 'self' is enough.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

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

export default defineConfig(({ mode }) => ({
  base: './',
  plugins: [svelte(), classicScript],
  build: {
    target: 'es2022',
    cssCodeSplit: false,
    modulePreload: false,
    assetsInlineLimit: 0,
    outDir: 'dist',   // elsewhere: vite build --outDir FOLDER
    emptyOutDir: true,
    rolldownOptions: {
      output: {
        format: 'iife',
        entryFileNames: 'desk.js',
        assetFileNames: 'desk.[ext]',
      },
    },
  },
  worker: { format: 'iife' },
  resolve: mode === 'test' ? { conditions: ['browser'] } : {},
  test: { include: ['tests/**/*.test.ts'] },
}));
