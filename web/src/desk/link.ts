// SPDX-License-Identifier: Apache-2.0
// Two windows of ours on the same browser tell each other something. Without BroadcastChannel each is alone.

export interface Link<Message> { readonly tell: (message: Message) => void; readonly close: () => void }

export function openLink<Message>(name: string, hear: (message: Message) => void): Link<Message> {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {}, close: () => {} };
  const channel = new BroadcastChannel(name);
  channel.onmessage = (event: MessageEvent<Message>) => hear(event.data);
  return { tell: (message) => channel.postMessage(message), close: () => channel.close() };
}
