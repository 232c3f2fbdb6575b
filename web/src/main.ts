// SPDX-License-Identifier: Apache-2.0
import './board/board.css';
import './desk/desk.css';
import { mount } from 'svelte';
import Desk from './desk/Desk.svelte';
import { startEngine } from './engine/start';
import Notes from './stage/Notes.svelte';

try {
  document.documentElement.dataset.light = localStorage.getItem('counterpoise.light') ?? '';
} catch { /* no store: as the system has it */ }

// The second window of the stage is the same page under another name.
if (location.hash === '#notes') mount(Notes, { target: document.body });
else {
  const engine = startEngine();
  mount(Desk, { target: document.body, props: { ask: engine.ask } });
  void engine.warmUp();
}
