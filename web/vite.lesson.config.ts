// SPDX-License-Identifier: Apache-2.0
// Builds pupil.js, the one script that goes into lesson pages: a classic script
// without a single "</script", because it stands inside an element.
import type { Plugin } from 'vite';
import { defineConfig } from 'vite';

const insideAnElement: Plugin = {
  name: 'inside-an-element',
  generateBundle(_, bundle) {
    for (const file of Object.values(bundle)) {
      if (file.type === 'chunk') file.code = file.code.replace(/<\/(script)/gi, '<\\/$1');
    }
  },
};

export default defineConfig({
  plugins: [insideAnElement],
  build: {
    target: 'es2022',
    outDir: 'dist-lesson',   // elsewhere: vite build -c vite.lesson.config.ts --outDir FOLDER
    emptyOutDir: true,
    rolldownOptions: {
      input: 'src/lesson/pupil.ts',
      output: { format: 'iife', entryFileNames: 'pupil.js' },
    },
  },
  worker: { format: 'iife' },
});
