/** Saying something on an interaction, however it stands: not answered yet, told to wait, or answered. */
import {
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  type Message,
  MessageFlags,
  type ModalMessageModalSubmitInteraction,
  type ModalSubmitInteraction,
  type StringSelectMenuInteraction,
} from 'discord.js';
import type { MessageBody } from './message.ts';

/** What a member can do that is answered with a message. */
export type Answerable =
  | ChatInputCommandInteraction
  | ButtonInteraction
  | StringSelectMenuInteraction
  | ModalSubmitInteraction;

type OnMessage = ButtonInteraction | StringSelectMenuInteraction | ModalMessageModalSubmitInteraction;

/** Whether there is a message that was pressed, which an answer can take the place of. */
export function isOnMessage(interaction: Answerable): interaction is OnMessage {
  return interaction.isMessageComponent() || (interaction.isModalSubmit() && interaction.isFromMessage());
}

/** Nobody is ever called by what we say; said on every message and edit, since an edit that is silent calls everybody. */
const NOBODY = { parse: [] };

const filesOf = (body: MessageBody) =>
  body.files.map(({ name, bytes, alt }) => ({ attachment: Buffer.from(bytes), name, description: alt }));

const created = (body: MessageBody, privately: boolean) => ({
  components: body.components,
  files: filesOf(body),
  allowedMentions: NOBODY,
  flags: [body.flags, ...(privately ? [MessageFlags.Ephemeral as const] : [])],
});

/** The files of before go: those still shown are sent again. */
const edited = (body: MessageBody) => ({
  components: body.components,
  files: filesOf(body),
  attachments: [],
  allowedMentions: NOBODY,
  flags: body.flags,
});

/** Tells the platform that an answer will come. Who sees it is fixed from here on. */
export async function defer(
  interaction: Answerable,
  way: { edits: boolean; privately: boolean },
): Promise<void> {
  if (way.edits && isOnMessage(interaction)) await interaction.deferUpdate();
  else if (way.privately) await interaction.deferReply({ flags: MessageFlags.Ephemeral });
  else await interaction.deferReply();
}

/**
 * Says it, as the answer or after it, and returns the message that shows it.
 *
 * Private words never become public: where everyone was told to wait, the waiting is taken away first, since the
 * first message after it would be as public as it was.
 */
export async function say(
  interaction: Answerable,
  body: MessageBody,
  { edits, privately }: { edits: boolean; privately: boolean },
): Promise<Message | null> {
  if (!interaction.deferred && !interaction.replied) {
    if (edits && isOnMessage(interaction)) {
      await interaction.update(edited(body));
      return interaction.message;
    }
    const response = await interaction.reply({ ...created(body, privately), withResponse: true });
    return response.resource?.message ?? null;
  }
  if (interaction.deferred && !interaction.replied) {
    // An update that was put off has no waiting message of its own: it says nothing about who sees it.
    const waiting = interaction.ephemeral !== null;
    if (edits || (waiting && (!privately || interaction.ephemeral)))
      return interaction.editReply(edited(body));
    if (waiting) await interaction.deleteReply();
  }
  return interaction.followUp(created(body, privately));
}

/** Shows a message of this interaction once more, with its pictures. */
export async function sayAnew(interaction: Answerable, message: Message, body: MessageBody): Promise<void> {
  // What was pressed is known to the press as its original alone.
  const pressed = isOnMessage(interaction) && interaction.message.id === message.id;
  await interaction.editReply({ ...edited(body), message: pressed ? '@original' : message.id });
}
