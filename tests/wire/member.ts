/** A member at their phone: types commands, presses buttons, sends forms. Refuses what the platform's client would not let one do. */
import {
  type APIApplicationCommandOption,
  ComponentType,
  InteractionType,
  ApplicationCommandOptionType as OptionType,
} from 'discord.js';
import { type Attached, isAttached, keepAttachment } from './attached.ts';
import { type Exchange, Recorder, type ShownForm } from './exchange.ts';
import { type Kept, messageJson, type Pressable, pressables, type Shown, show } from './message.ts';
import { commandsOf, type KeptMember, type Pending, type State } from './state.ts';

/** Options by name: text, a yes or no, for an option of a member their id, or a file. */
export type TypedOptions = Readonly<Record<string, string | boolean | Attached>>;

export interface How {
  /** The platform delivers it twice. */
  twice?: boolean;
  /** In a private message with the bot, outside of any club. */
  outside?: boolean;
}

/** Each verb resolves once the bot has answered for good; "wait" alone is no answer. */
export interface Member {
  readonly id: string;
  /** `types('/mine units', { units: 'kilos' })`; the command must be registered, with these options. */
  types(command: string, options?: TypedOptions, how?: How): Promise<Exchange>;
  /** What is offered for `option` after `typed` is in it. */
  completes(
    command: string,
    option: string,
    typed: string,
    others?: TypedOptions,
  ): Promise<{ name: string; value: string }[]>;
  /** What the bot wrote to this member alone, outside of any answer. */
  direct(): Shown[];
  /** Takes no such messages from now on. */
  refusesDirect(): void;
  /** Is no manager of the club any more. */
  losesRole(): void;
  presses(message: Shown, label: string, how?: How): Promise<Exchange>;
  /** Takes a choice, by its label, of the menu that says `menu`. */
  selects(message: Shown, menu: string, choice: string, how?: How): Promise<Exchange>;
  /** Fills inputs by name or label; the others stay as they were filled. */
  submits(form: ShownForm, fields: Readonly<Record<string, string>>, how?: How): Promise<Exchange>;
}

export interface MemberSide {
  state: State;
  dispatch(event: string, data: object): void;
  /** How long a member looks at a phone that says nothing. */
  patienceMs: number;
}

/** What makes an interaction besides where and by whom it is. */
interface Deed {
  kind: Pending['kind'];
  type: InteractionType;
  data: object;
  onMessage?: Kept | null;
}

const MANAGE_SERVER = 1n << 5n;
const USE_COMMANDS = 1n << 31n;

export function createMember(member: KeptMember, side: MemberSide): Member {
  const { state } = side;
  const userJson = { id: member.id, username: `member-${member.id}`, discriminator: '0', avatar: null };
  let manages = member.manager;
  const memberJson = () => ({
    user: userJson,
    permissions: String(USE_COMMANDS | (manages ? MANAGE_SERVER : 0n)),
    roles: [],
    joined_at: new Date(0).toISOString(),
    deaf: false,
    mute: false,
    flags: 0,
  });

  const start = (deed: Deed, how: How): Recorder => {
    const { club } = member;
    const id = state.nextId();
    const token = `token-${id}`;
    const message = deed.onMessage ? { message: messageJson(deed.onMessage, state.bot) } : {};
    const place = how.outside
      ? { user: userJson, channel: { id: club.channel, type: 1 }, context: 1 }
      : {
          guild_id: club.id,
          guild_locale: club.locale,
          member: memberJson(),
          channel: { id: club.channel, type: 0 },
          context: 0,
        };
    const payload = {
      id,
      token,
      version: 1,
      application_id: state.application,
      type: deed.type,
      data: deed.data,
      channel_id: club.channel,
      locale: member.locale,
      app_permissions: '0',
      entitlements: [],
      authorizing_integration_owners: how.outside ? {} : { 0: club.id },
      attachment_size_limit: 10_485_760,
      ...message,
      ...place,
    };
    const deliver = (): void => side.dispatch('INTERACTION_CREATE', payload);
    const record = new Recorder(id, deliver);
    state.interactions.set(id, {
      id,
      token,
      kind: deed.kind,
      member,
      channel: club.channel,
      club: how.outside ? null : club.id,
      onMessage: deed.onMessage ?? null,
      sentAt: state.now(),
      acknowledged: false,
      original: null,
      record,
    });
    deliver();
    if (how.twice) deliver();
    return record;
  };

  const act = async (deed: Deed, how: How = {}): Promise<Recorder> => {
    const record = start(deed, how);
    await record.until(() => record.isAnswered, side.patienceMs);
    return record;
  };

  const press = (shown: Shown, pick: (what: Pressable) => object | null, how?: How): Promise<Exchange> => {
    const { kept } = shown;
    if (kept.deleted || kept.waiting) throw new Error('that message can not be pressed');
    if (kept.onlyFor !== null && kept.onlyFor !== member.id)
      throw new Error('that message is not seen by this member');
    const data = pressables(kept)
      .map(pick)
      .find((picked) => picked !== null);
    if (!data)
      throw new Error(`nothing like that to press; there is: ${shown.labels.join(', ') || 'nothing'}`);
    return act({ kind: 'press', type: InteractionType.MessageComponent, data, onMessage: kept }, how);
  };

  return {
    id: member.id,

    types: async (command, options = {}, how = {}) => {
      const data = commandData(state, member, command, options, null);
      return act({ kind: 'command', type: InteractionType.ApplicationCommand, data }, how);
    },

    completes: async (command, option, typed, others = {}) => {
      const data = commandData(state, member, command, { ...others, [option]: typed }, option);
      const type = InteractionType.ApplicationCommandAutocomplete;
      return (await act({ kind: 'complete', type, data })).completed ?? [];
    },

    direct: () => state.messages.filter(({ channel }) => channel === member.id).map(show),
    refusesDirect: () => void state.refusesDirect.add(member.id),
    losesRole: () => {
      manages = false;
    },

    presses: async (message, label, how) =>
      press(
        message,
        (what) =>
          what.kind === 'button' && what.label === label
            ? { component_type: ComponentType.Button, custom_id: what.customId }
            : null,
        how,
      ),

    selects: async (message, menu, choice, how) =>
      press(
        message,
        (what) => {
          if (what.kind !== 'menu' || what.label !== menu) return null;
          const value = what.choices.find(({ label }) => label === choice)?.value;
          if (value === undefined) return null;
          return { component_type: ComponentType.StringSelect, custom_id: what.customId, values: [value] };
        },
        how,
      ),

    submits: async (form, fields, how) => {
      const components = formData(form, fields);
      const data = { custom_id: form.modal.custom_id, components };
      return act({ kind: 'submit', type: InteractionType.ModalSubmit, data, onMessage: form.from }, how);
    },
  };
}

/** A command as the client sends it: only with what is registered. */
function commandData(
  state: State,
  { club }: KeptMember,
  line: string,
  options: TypedOptions,
  focused: string | null,
): object {
  const [name, ...path] = line.replace(/^\//, '').split(' ');
  const command = commandsOf(state, club.id).find((one) => one.name === name);
  if (!command) throw new Error(`no command ${line} is registered`);
  let declared: readonly APIApplicationCommandOption[] = command.options ?? [];
  const taken: APIApplicationCommandOption[] = [];
  for (const part of path) {
    const inner = declared.find((one) => one.name === part);
    if (!inner) throw new Error(`no command ${line} is registered`);
    taken.push(inner);
    declared = 'options' in inner ? (inner.options ?? []) : [];
  }
  const attachments: Record<string, object> = {};
  const values = Object.entries(options).map(([option, value]) => {
    if (!isAttached(value)) return optionData(line, declared, option, value, focused);
    const kept = keepAttachment(state, value);
    attachments[kept.id] = kept;
    return optionData(line, declared, option, kept.id, focused, true);
  });
  const nested = taken.reduceRight<object[]>(
    (inner, { type, name: part }) => [{ type, name: part, options: inner }],
    values,
  );
  return { id: '1000', type: 1, name: command.name, options: nested, resolved: { attachments } };
}

function optionData(
  line: string,
  declared: readonly APIApplicationCommandOption[],
  name: string,
  value: string | boolean,
  focused: string | null,
  isFile = false,
): object {
  const option = declared.find((one) => one.name === name);
  if (!option) throw new Error(`${line} has no option ${name}`);
  const isFocused = name === focused;
  if ((option.type === OptionType.Boolean) !== (typeof value === 'boolean'))
    throw new Error(`${name}: ${value}?`);
  if ((option.type === OptionType.Attachment) !== isFile) throw new Error(`${name}: a file?`);
  if (option.type !== OptionType.String) return { type: option.type, name, value };
  if (isFocused && !('autocomplete' in option && option.autocomplete))
    throw new Error(`${name} is not completed`);
  const choices = 'choices' in option ? (option.choices ?? []) : [];
  const chosen = choices.find((choice) => choice.name === value || choice.value === value);
  if (choices.length > 0 && !chosen) throw new Error(`${name} has no choice ${value}`);
  return { type: option.type, name, value: chosen?.value ?? value, ...(isFocused ? { focused: true } : {}) };
}

/** A form as the client sends it: every input, and none empty that must be filled. */
function formData(form: ShownForm, fields: Readonly<Record<string, string>>): object[] {
  const names = form.inputs.flatMap(({ name, label }) => [name, label]);
  const unknown = Object.keys(fields).find((field) => !names.includes(field));
  if (unknown !== undefined) throw new Error(`the form has no input ${unknown}; it has: ${names.join(', ')}`);
  return form.inputs.map(({ name, label, value: before, required }, index) => {
    const value = fields[name] ?? fields[label] ?? before;
    if (required && value === '') throw new Error(`${label} must be filled`);
    const component = { type: ComponentType.TextInput, id: 2 * index + 2, custom_id: name, value };
    return { type: ComponentType.Label, id: 2 * index + 1, component };
  });
}
