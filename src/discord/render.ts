/** How a reply looks on the platform: containers of text, table, picture and small print, then what can be pressed. */
import {
  type APIComponentInContainer,
  type APIMessageTopLevelComponent,
  ButtonStyle,
  ComponentType,
  MessageFlags,
} from 'discord.js';
import { writeActionId } from '../../shared/chat/action-id.ts';
import type { Action, Button, Reply } from '../../shared/chat/reply.ts';
import type { Picture } from '../../shared/pictures/picture.ts';
import { clip, clipLines } from '../text/clip.ts';
import { printTable } from '../text/table.ts';
import { flatten, LIMITS } from './limits.ts';
import type { MessageBody, MessageFile } from './message.ts';

/** The pictures that could be drawn; a reply's picture that is missing here is left out of its message. */
export type Drawn = ReadonlyMap<Picture, Uint8Array>;

/** Characters kept for the card before an answer, however long the answer. */
const WELCOME_ROOM = 200;

/** The pictures of one message: those of the reply, and of the card before it. */
export function picturesOf(reply: Reply): Picture[] {
  return [reply.welcome?.picture, reply.picture].filter((picture) => picture !== undefined);
}

/** A reply as a message, its welcome above it; its private part is a message of its own. */
export function render(reply: Reply, drawn: Drawn = new Map()): MessageBody {
  const { welcome } = reply;
  const purse = { text: LIMITS.text - (welcome ? WELCOME_ROOM : 0) };
  const page = renderPage(reply, fileOf(reply, drawn, ''), purse);
  if (!welcome) return messageOf([page]);
  purse.text += WELCOME_ROOM;
  return messageOf([renderPage(welcome, fileOf(welcome, drawn, 'first-'), purse), page]);
}

function messageOf(pages: readonly Page[]): MessageBody {
  const room = { components: LIMITS.components - sizeOf(pages.map(({ body }) => body)) };
  // The answer's own buttons come first where there are too many for both.
  const rows = pages
    .toReversed()
    .map((page) => fitting(page.rows, room))
    .toReversed();
  return {
    flags: MessageFlags.IsComponentsV2,
    components: pages.flatMap(({ body }, index) => [body, ...(rows[index] ?? [])]),
    files: pages.flatMap(({ files }) => files),
  };
}

const sizeOf = (components: readonly APIMessageTopLevelComponent[]): number => flatten(components).length;

/** Leaves out the rows that would be more than the platform takes. */
function fitting(rows: readonly Row[], room: { components: number }): Row[] {
  return rows.filter((row) => {
    const size = sizeOf([row]);
    if (size > room.components) return false;
    room.components -= size;
    return true;
  });
}

function fileOf({ picture }: Reply, drawn: Drawn, prefix: string): MessageFile | null {
  const bytes = picture && drawn.get(picture);
  if (!bytes) return null;
  return { name: `${prefix}${picture.name}.png`, bytes, alt: clip(picture.alt, LIMITS.alt) };
}

/** What is left of the characters that one message may hold. */
interface Purse {
  text: number;
}

interface Page {
  body: APIMessageTopLevelComponent;
  rows: readonly Row[];
  files: readonly MessageFile[];
}

const takenAway = (page: Reply): MessageFile[] =>
  (page.files ?? []).map(({ name, content }) => ({
    name,
    bytes: typeof content === 'string' ? Buffer.from(content) : content,
    alt: name,
  }));

function renderPage(page: Reply, file: MessageFile | null, purse: Purse): Page {
  const small = (page.small ?? []).flatMap((line) => line.split('\n')).filter((line) => line !== '');
  // Taken in the order of their weight, shown in the order below.
  const said = renderText(page, purse);
  const table = renderTable(page, purse);
  const print = take(
    small.map((line) => `-# ${line}`),
    purse,
  );

  const parts: APIComponentInContainer[] = [said, ...table];
  if (file) {
    const media = { url: `attachment://${file.name}` };
    parts.push({ type: ComponentType.MediaGallery, items: [{ media, description: file.alt }] });
  }
  if (print.length > 0) {
    if (!file) parts.push({ type: ComponentType.Separator });
    parts.push({ type: ComponentType.TextDisplay, content: print.join('\n') });
  }
  const away = takenAway(page);
  for (const { name } of away)
    parts.push({ type: ComponentType.File, file: { url: `attachment://${name}` } });
  const body = { type: ComponentType.Container as const, components: parts };
  return { body, rows: renderActions(page.actions ?? []), files: [...(file ? [file] : []), ...away] };
}

/** Takes the lines that fit out of the purse. */
function take(lines: readonly string[], purse: Purse): string[] {
  const kept = clipLines(lines, purse.text);
  purse.text -= kept.join('\n').length;
  return kept;
}

const BOLD = '**';

function renderText(page: Reply, purse: Purse): APIComponentInContainer {
  const room = purse.text - 2 * BOLD.length;
  const answer = clip(page.answer, Math.max(room, 1));
  const first = answer.includes(BOLD) || answer.includes('\n') ? answer : `${BOLD}${answer}${BOLD}`;
  const lines = take([first, ...(page.lines ?? []).filter((line) => line !== '')], purse);
  return { type: ComponentType.TextDisplay, content: lines.join('\n') || '…' };
}

const FENCE = '```';

function renderTable(page: Reply, purse: Purse): APIComponentInContainer[] {
  if (!page.table || page.table.length === 0) return [];
  const frame = `${FENCE}\n\n${FENCE}`.length;
  const lines = clipLines(printTable(page.table), purse.text - frame);
  if (lines.length === 0) return [];
  const content = [FENCE, ...lines, FENCE].join('\n');
  purse.text -= content.length;
  return [{ type: ComponentType.TextDisplay, content }];
}

type Row = Extract<APIMessageTopLevelComponent, { type: ComponentType.ActionRow }>;

/** Neighbouring buttons share a row, five at most; a menu has its own. */
function renderActions(actions: readonly Action[]): Row[] {
  const rows: Row[] = [];
  let buttons: Row | null = null;
  for (const action of actions) {
    if (action.kind === 'menu') {
      buttons = null;
      rows.push({
        type: ComponentType.ActionRow,
        components: [
          {
            type: ComponentType.StringSelect,
            custom_id: writeActionId(action.id),
            placeholder: clip(action.label, LIMITS.menuLabel),
            options: action.choices
              .slice(0, LIMITS.menuChoices)
              .map(({ label, value }) => ({ label: clip(label, LIMITS.menuChoice), value })),
          },
        ],
      });
      continue;
    }
    if (!buttons || buttons.components.length === LIMITS.buttonsInRow) {
      buttons = { type: ComponentType.ActionRow, components: [] };
      rows.push(buttons);
    }
    buttons.components.push(renderButton(action));
  }
  return rows;
}

function renderButton({ label, id, main }: Button): Row['components'][number] {
  const style = main ? ButtonStyle.Primary : ButtonStyle.Secondary;
  return {
    type: ComponentType.Button,
    style,
    label: clip(label, LIMITS.buttonLabel),
    custom_id: writeActionId(id),
  };
}
