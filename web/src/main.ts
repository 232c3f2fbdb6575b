// SPDX-License-Identifier: Apache-2.0
import './desk/desk.css';
import { mount } from 'svelte';
import Desk from './desk/Desk.svelte';

mount(Desk, { target: document.body });
