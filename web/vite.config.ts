// SPDX-License-Identifier: Apache-2.0
// Builds index.html, desk.js, desk.css: the desk. The page for lessons is built after it (vite.writing.config.ts).
import { defineConfig, mergeConfig } from 'vitest/config';
import { classicPage } from './classic_page.ts';

export default defineConfig(({ mode }) => mergeConfig(classicPage('index.html', 'desk'), {
  build: { emptyOutDir: true },
  resolve: mode === 'test' ? { conditions: ['browser'] } : {},
  test: { include: ['tests/**/*.test.ts'] },
}));
