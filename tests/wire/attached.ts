/** Files that members attach: kept by the stand-in, and served as the platform's own host serves them. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { State } from './state.ts';

/** A file on a member's phone. */
export interface Attached {
  name: string;
  content: Uint8Array | string;
  /** Bytes, as the platform says; as they are, unless a test lies. */
  size?: number;
  /** How it is served, where it is not simply there. */
  serve?: (response: ServerResponse) => void;
}

export interface KeptAttachment extends Attached {
  /** How often it was fetched. */
  fetched: number;
}

export const isAttached = (value: unknown): value is Attached =>
  typeof value === 'object' && value !== null && 'content' in value;

const PATH = /^\/files\/(\d+)\//;

/** Keeps a file as one that was attached, and tells it as an interaction does. */
export function keepAttachment(state: State, attached: Attached) {
  const id = state.nextId();
  state.attachments.set(id, { ...attached, fetched: 0 });
  const { name, content, size = Buffer.byteLength(content) } = attached;
  const url = `${state.origin}/files/${id}/${encodeURIComponent(name)}?ex=1&is=2&hm=3`;
  return { id, filename: name, size, url, proxy_url: url, content_type: 'text/csv', ephemeral: true };
}

/** Serves a file; false for any other request. It takes no token: its address is enough. */
export function serveAttachment(
  state: State,
  { url = '' }: IncomingMessage,
  response: ServerResponse,
): boolean {
  const id = PATH.exec(url)?.[1];
  if (id === undefined) return false;
  const kept = state.attachments.get(id);
  if (kept === undefined) response.writeHead(404).end('This content is no longer available.');
  else {
    kept.fetched += 1;
    if (kept.serve !== undefined) kept.serve(response);
    else response.writeHead(200, { 'content-type': 'text/csv' }).end(kept.content);
  }
  return true;
}
