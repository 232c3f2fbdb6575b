// SPDX-License-Identifier: Apache-2.0
// The page on which lessons are written, rehearsed and presented. It carries a module of its own that has the commands
// for lessons; the desk is left as small as it is.
import './desk/desk.css';
import './writing/writing.css';
import { mount } from 'svelte';
import { startLessonEngine } from './engine/start_lessons';
import Audience from './writing/Audience.svelte';
import Writing from './writing/Writing.svelte';

try {
  document.documentElement.dataset.light = localStorage.getItem('counterpoise.light') ?? '';
} catch { /* no store: as the system has it */ }

// The window for the audience is the same page under another name.
if (location.hash === '#audience') mount(Audience, { target: document.body });
else mount(Writing, { target: document.body, props: { ask: startLessonEngine().ask } });
