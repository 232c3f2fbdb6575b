// SPDX-License-Identifier: Apache-2.0
// For tsc, which does not read components; svelte-check does.
declare module '*.svelte' {
  import type { Component } from 'svelte';
  const component: Component<Record<string, never>>;
  export default component;
}
