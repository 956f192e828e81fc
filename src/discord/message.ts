/** A message as it goes to the platform: what `render` makes, `limits` checks and `post` sends. */
import type {
  APIContainerComponent,
  APIMediaGalleryComponent,
  APIMessageTopLevelComponent,
  APISectionComponent,
  APISeparatorComponent,
  APITextDisplayComponent,
  MessageFlags,
} from 'discord.js';

type Inside<T> = T extends { components: readonly (infer Inner)[] } ? Inner : never;
type Beside<T> = T extends { accessory: infer Accessory } ? Accessory : never;

/** Any component of a message, at any depth. */
export type MessagePart =
  | APIMessageTopLevelComponent
  | Inside<APIMessageTopLevelComponent>
  | Inside<Inside<APIMessageTopLevelComponent>>
  | Beside<APISectionComponent>
  | APIContainerComponent
  | APIMediaGalleryComponent
  | APISeparatorComponent
  | APITextDisplayComponent;

/** A file sent along; a component shows it as `attachment://name`. */
export interface MessageFile {
  name: string;
  bytes: Uint8Array;
  /** The picture in words; of a file to take away, its name. */
  alt: string;
}

export interface MessageBody {
  /** The new components, in every message: an old message can't put small print under its picture. */
  flags: MessageFlags.IsComponentsV2;
  components: APIMessageTopLevelComponent[];
  files: MessageFile[];
}
