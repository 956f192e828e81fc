/** What came of one thing that a member did: everything the bot answered, in order. */
import type { APIModalInteractionResponseCallbackData as Modal } from 'discord.js';
import { type Kept, type Shown, show } from './message.ts';

/** What the bot did, or was refused (`40060`: answered twice, `10062`: too late). */
export type Step =
  | 'reply'
  | 'wait'
  | 'wait to edit'
  | 'update'
  | 'edit'
  | 'follow-up'
  | 'delete'
  | 'form'
  | 'choices'
  | `refused ${number}`;

/** A window with inputs, as a member sees it. */
export interface ShownForm {
  title: string;
  inputs: {
    name: string;
    label: string;
    value: string;
    hint: string;
    required: boolean;
    paragraph: boolean;
  }[];
  modal: Modal;
  /** The message whose button opened it. */
  from: Kept | null;
}

export interface Exchange {
  /** The interaction's id. */
  readonly id: string;
  /** All that the bot did, in order. */
  readonly steps: readonly Step[];
  /** Milliseconds until the first of it; null before that. */
  readonly acknowledgedMs: number | null;
  /** The answer. Throws where it was no message. */
  readonly message: Shown;
  /** The form that opened. Throws where none did. */
  readonly form: ShownForm;
  /** What was said after the answer: waits for the next one that was not asked for yet. */
  followUp(): Promise<Shown>;
  /** Delivers the same interaction once more, as the platform does at times. */
  again(): void;
}

/** The stand-in's side of an exchange. */
export class Recorder implements Exchange {
  readonly steps: Step[] = [];
  answer: Kept | null = null;
  opened: ShownForm | null = null;
  completed: { name: string; value: string }[] | null = null;
  readonly followUps: Kept[] = [];
  acknowledgedMs: number | null = null;
  private readonly sentAt = performance.now();
  private asked = 0;
  private readonly waiting = new Set<() => void>();

  readonly id: string;
  readonly again: () => void;

  constructor(id: string, again: () => void) {
    this.id = id;
    this.again = again;
  }

  note(step: Step): void {
    this.acknowledgedMs ??= performance.now() - this.sentAt;
    this.steps.push(step);
    for (const check of [...this.waiting]) check();
  }

  get message(): Shown {
    if (!this.answer) throw new Error(`no message was answered, but: ${this.steps.join(', ') || 'nothing'}`);
    return show(this.answer);
  }

  get form(): ShownForm {
    if (!this.opened) throw new Error(`no form was opened, but: ${this.steps.join(', ') || 'nothing'}`);
    return this.opened;
  }

  get isAnswered(): boolean {
    return this.opened !== null || this.completed !== null || (this.answer !== null && !this.answer.waiting);
  }

  /** Resolves as soon as `what` holds; throws when it does not for `patienceMs`. */
  until(what: () => boolean, patienceMs: number): Promise<void> {
    return new Promise((resolve, reject) => {
      const end = (): void => {
        clearTimeout(timer);
        this.waiting.delete(check);
      };
      const check = (): void => {
        if (!what()) return;
        end();
        resolve();
      };
      const timer = setTimeout(() => {
        end();
        reject(new Error(`the application did not respond; it did: ${this.steps.join(', ') || 'nothing'}`));
      }, patienceMs);
      this.waiting.add(check);
      check();
    });
  }

  async followUp(): Promise<Shown> {
    const index = this.asked++;
    await this.until(() => this.followUps.length > index, FOLLOW_UP_PATIENCE_MS);
    const kept = this.followUps[index];
    if (!kept) throw new Error('nothing was said after the answer');
    return show(kept);
  }
}

const FOLLOW_UP_PATIENCE_MS = 5000;
