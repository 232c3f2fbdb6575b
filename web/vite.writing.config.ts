// SPDX-License-Identifier: Apache-2.0
// Builds lessons.html, lessons.js, lessons.css beside the desk: the page on which lessons are written.
import { defineConfig, mergeConfig } from 'vite';
import { classicPage } from './classic_page.ts';

export default defineConfig(mergeConfig(classicPage('lessons.html', 'lessons'), { build: { emptyOutDir: false } }));
