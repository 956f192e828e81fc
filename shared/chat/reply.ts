/** A reply in no platform's terms: what is said, shown and offered. */
import type { Place } from '../club/store.ts';
import type { Ask, MemberError } from '../errors.ts';
import type { Picture } from '../pictures/picture.ts';

/** The numbers that a reply's text rounds, unrounded, by name; null where there is none, never NaN. */
export type Figure =
  | string
  | number
  | boolean
  | null
  | readonly Figure[]
  | { readonly [name: string]: Figure };

/** A reply's figures by name: weights in grams, shares as fractions, money in units of its currency. */
export type Figures = { readonly [name: string]: Figure };

/**
 * What a command answers. The answer stands first, small print last; a phone shows four lines before the picture.
 */
export interface Reply {
  /** The answer itself: the first line. */
  answer: string;
  /** At most four more, before the picture. */
  lines?: readonly string[];
  /** Rows of cells, the first row its head; no printed line over 38 characters. */
  table?: readonly (readonly string[])[];
  picture?: Picture;
  /** Small print, last. */
  small?: readonly string[];
  /** Files to take away, under it. */
  files?: readonly ReplyFile[];
  actions?: readonly Action[];
  figures: Figures;
  /** A second reply that its reader alone sees. */
  privately?: Reply;
  /** What somebody else is told, in a message to them alone. */
  tell?: Notice;
  /** A card that stands before this reply once: the first time in a club. */
  welcome?: Reply;
  /** The piece this is the card of: where it is posted is kept, so that a later change shows there. */
  piece?: string;
  /** Another piece that this changed: its card is shown anew where it was posted. */
  alsoChanged?: string;
  /** Cards whose pieces are gone, and what is shown in their place. */
  covers?: Covers;
  /** The options by which its command reaches the same piece again. */
  again?: Readonly<Record<string, string>>;
  /** What is still open after the piece was kept: an extra that could not be taken as typed. */
  doubts?: readonly Doubtful[];
}

/** A file that goes with a reply. */
export interface ReplyFile {
  /** With its ending: letters, digits, dots and hyphens. */
  name: string;
  /** Text goes out as UTF-8. */
  content: string | Uint8Array;
}

/** Cards in channels, the newest first, and the text that takes their place. */
export interface Covers {
  cards: readonly Place[];
  reply: Reply;
}

/** What one member is told outside of any answer. */
export interface Notice {
  member: string;
  reply: Reply;
}

/** An extra that did not hold up the weights: it was left out, and this says why. */
export interface Doubtful {
  option: string;
  /** As typed. */
  text: string;
  problem: Ask | MemberError;
  /** It was taken all the same, and only looks unlikely. */
  kept?: true;
}

/** Who may press: the member it was made for, anyone (answered privately), or a manager of the club. */
export type Presser = 'owner' | 'anyone' | 'manager';

/** A button. */
export interface Button {
  kind: 'button';
  label: string;
  id: ActionId;
  /** The one that is most likely wanted. */
  main?: boolean;
}

/** A menu of which one choice is taken; at most 25. */
export interface Menu {
  kind: 'menu';
  /** What stands in the closed menu. */
  label: string;
  id: ActionId;
  choices: readonly { label: string; value: string }[];
}

/** What can be pressed under a reply. */
export type Action = Button | Menu;

/** What a press says: which action of which command, made for whom, about what. */
export interface ActionId {
  /** `weigh`, `mine pans` */
  command: string;
  action: string;
  by: Presser;
  /** The member it was made for. */
  owner: string;
  /** Piece ids, draft ids, keys: no member's text. */
  about: readonly string[];
}

/** A form of at most five inputs; what was sent comes back as options of `command`. */
export interface Form {
  /** At most 45 characters, as each label. */
  title: string;
  id: ActionId;
  inputs: readonly Input[];
}

/** One input of a form. */
export interface Input {
  /** The option it fills; `more` is a paragraph of `name: value` lines. */
  name: string;
  label: string;
  value?: string;
  /** A hint while it is empty. */
  hint?: string;
  required?: boolean;
  paragraph?: boolean;
}
