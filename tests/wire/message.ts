/** A message as the stand-in keeps it, and as a member sees it. */
import { type APIMessageTopLevelComponent, ComponentType, MessageFlags } from 'discord.js';
import { flatten } from '../../src/discord/limits.ts';

export interface KeptFile {
  id: string;
  name: string;
  alt: string;
  bytes: Uint8Array;
}

/** What the platform keeps of one message. */
export interface Kept {
  id: string;
  channel: string;
  club: string | null;
  flags: number;
  components: APIMessageTopLevelComponent[];
  files: KeptFile[];
  /** The member who alone sees it; null where everyone does. */
  onlyFor: string | null;
  /** Shown as "thinking", until it is filled. */
  waiting: boolean;
  deleted: boolean;
  edits: number;
}

/** A message as a member sees it: a live view, which changes when the bot edits it. */
export interface Shown {
  readonly id: string;
  readonly channel: string;
  /** All its text, in order, as it was sent: with its markup. */
  readonly text: string;
  /** Labels of its buttons and menus, in order. */
  readonly labels: string[];
  readonly pictures: { name: string; alt: string; bytes: Uint8Array }[];
  /** Files to take away. */
  readonly files: { name: string; bytes: Uint8Array }[];
  /** Whether one member alone sees it. */
  readonly isPrivate: boolean;
  readonly isWaiting: boolean;
  readonly isDeleted: boolean;
  /** How often it was changed after it was first shown. */
  readonly edits: number;
  readonly components: readonly APIMessageTopLevelComponent[];
  /** The platform's own record, for what is not named here. */
  readonly kept: Kept;
}

export type Pressable = { label: string; customId: string } & (
  | { kind: 'button' }
  | { kind: 'menu'; choices: { label: string; value: string }[] }
);

/** What of a message can be pressed. */
export function pressables(kept: Kept): Pressable[] {
  return flatten(kept.components).flatMap((part): Pressable[] => {
    if (part.type === ComponentType.Button && 'custom_id' in part) {
      return [{ kind: 'button', label: part.label ?? '', customId: part.custom_id }];
    }
    if (part.type !== ComponentType.StringSelect) return [];
    return [{ kind: 'menu', label: part.placeholder ?? '', customId: part.custom_id, choices: part.options }];
  });
}

const takenAway = (kept: Kept): string[] =>
  flatten(kept.components).flatMap((part) =>
    part.type === ComponentType.File ? [part.file.url.replace('attachment://', '')] : [],
  );

export function show(kept: Kept): Shown {
  return {
    kept,
    id: kept.id,
    channel: kept.channel,
    get text() {
      return flatten(kept.components)
        .flatMap((part) => (part.type === ComponentType.TextDisplay ? [part.content] : []))
        .join('\n');
    },
    get labels() {
      return pressables(kept).map(({ label }) => label);
    },
    get pictures() {
      return kept.files
        .filter(({ name }) => !takenAway(kept).includes(name))
        .map(({ name, alt, bytes }) => ({ name, alt, bytes }));
    },
    get files() {
      return kept.files
        .filter(({ name }) => takenAway(kept).includes(name))
        .map(({ name, bytes }) => ({ name, bytes }));
    },
    get isPrivate() {
      return kept.onlyFor !== null;
    },
    get isWaiting() {
      return kept.waiting;
    },
    get isDeleted() {
      return kept.deleted;
    },
    get edits() {
      return kept.edits;
    },
    get components() {
      return kept.components;
    },
  };
}

/** A message as the platform's interface tells it. */
export function messageJson(kept: Kept, bot: string): object {
  return {
    id: kept.id,
    type: 0,
    channel_id: kept.channel,
    author: { id: bot, username: 'tally', discriminator: '0', avatar: null, global_name: null, bot: true },
    content: '',
    timestamp: new Date(0).toISOString(),
    edited_timestamp: null,
    tts: false,
    mention_everyone: false,
    mentions: [],
    mention_roles: [],
    embeds: [],
    pinned: false,
    flags: kept.flags | (kept.waiting ? MessageFlags.Loading : 0),
    components: kept.components,
    attachments: kept.files.map(({ id, name, alt, bytes }) => {
      const url = `http://files.invalid/${kept.id}/${name}`;
      return { id, filename: name, description: alt, size: bytes.length, url, proxy_url: url };
    }),
  };
}
