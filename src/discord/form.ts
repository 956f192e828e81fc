/** How a form looks on the platform. */
import {
  type APILabelComponent,
  ComponentType,
  type APIModalInteractionResponseCallbackData as Modal,
  TextInputStyle,
} from 'discord.js';
import { writeActionId } from '../../shared/chat/action-id.ts';
import type { Form, Input } from '../../shared/chat/reply.ts';
import { clip } from '../text/clip.ts';
import { LIMITS } from './limits.ts';

/** A form as the platform's window; what is typed comes back by the names of its inputs. */
export function renderForm(form: Form): Modal {
  return {
    title: clip(form.title, LIMITS.formTitle),
    custom_id: writeActionId(form.id),
    components: form.inputs.slice(0, LIMITS.formInputs).map(renderInput),
  };
}

function renderInput({ name, label, value, hint, required, paragraph }: Input): APILabelComponent {
  return {
    type: ComponentType.Label,
    label: clip(label, LIMITS.formLabel),
    component: {
      type: ComponentType.TextInput,
      custom_id: name,
      style: paragraph ? TextInputStyle.Paragraph : TextInputStyle.Short,
      // The platform takes an input that does not say so for one that must be filled.
      required: required ?? false,
      ...(value ? { value: clip(value, LIMITS.inputValue) } : {}),
      ...(hint ? { placeholder: clip(hint, LIMITS.inputHint) } : {}),
    },
  };
}
