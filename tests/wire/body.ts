/** What the bot sends, read off the wire and checked as the platform would check it. */
import type { IncomingMessage } from 'node:http';
import { type APIMessageTopLevelComponent, MessageFlags } from 'discord.js';
import { overLimits } from '../discord/over-limits.ts';
import type { Kept, KeptFile } from './message.ts';

export interface Sent {
  json: Record<string, unknown>;
  files: Map<string, Uint8Array>;
  fileNames: Map<string, string>;
}

/** Reads a request's body: JSON, or a form of JSON and files. */
export async function readBody(request: IncomingMessage): Promise<Sent> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(Buffer.from(chunk));
  const body = Buffer.concat(chunks);
  const type = request.headers['content-type'] ?? '';
  const files = new Map<string, Uint8Array>();
  const fileNames = new Map<string, string>();
  if (!type.startsWith('multipart/')) {
    const json = body.length > 0 ? JSON.parse(body.toString()) : {};
    return { json: Array.isArray(json) ? { list: json } : json, files, fileNames };
  }
  const form = await new Response(body, { headers: { 'content-type': type } }).formData();
  let json: Record<string, unknown> = {};
  for (const [name, value] of form) {
    const index = /^files\[(.+)\]$/.exec(name)?.[1];
    if (typeof value === 'string') json = JSON.parse(value);
    else if (index !== undefined) {
      files.set(index, new Uint8Array(await value.arrayBuffer()));
      fileNames.set(index, value.name);
    }
  }
  return { json, files, fileNames };
}

/** The part of a message that a request writes anew. */
export interface Written {
  components: APIMessageTopLevelComponent[];
  files: KeptFile[];
  flags: number;
  complaints: string[];
}

/** What the platform does not take together with the new components. */
const OLD_FIELDS = ['content', 'embeds', 'poll', 'sticker_ids'];

/**
 * What a request makes of a message (`before`, where it edits one), and all that is wrong with it: the platform's
 * limits, its rules for the new components, and our own rule that nobody is ever called.
 */
export function readMessage(data: Record<string, unknown>, sent: Sent, before: Kept | null): Written {
  const named = Array.isArray(data.attachments)
    ? (data.attachments as { id: unknown; description?: string }[])
    : null;
  const uploaded = [...sent.files].map(([id, bytes]): KeptFile => {
    const alt = named?.find((file) => String(file.id) === id)?.description ?? '';
    return { id: `new-${id}`, name: sent.fileNames.get(id) ?? '', alt, bytes };
  });
  const stays = (file: KeptFile) => named === null || named.some(({ id }) => String(id) === file.id);
  const files = [...(before?.files ?? []).filter(stays), ...uploaded];
  const components = (data.components ?? before?.components ?? []) as APIMessageTopLevelComponent[];
  const flags = Number(data.flags ?? 0) | ((before?.flags ?? 0) & MessageFlags.IsComponentsV2);

  const complaints = overLimits({ flags, components, files });
  for (const field of OLD_FIELDS) {
    const value = data[field];
    if (Array.isArray(value) ? value.length > 0 : value)
      complaints.push(`${field} beside the new components`);
  }
  const mentions = data.allowed_mentions as { parse?: unknown[] } | undefined;
  if (mentions?.parse?.length !== 0) complaints.push('a message that may call somebody');
  for (const { name, alt } of files) if (alt === '') complaints.push(`${name} has no words`);
  return { components, files, flags, complaints };
}
