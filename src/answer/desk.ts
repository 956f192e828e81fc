/** The one way in: a request goes in, an answer comes out. The platform and the rehearsal both call this. */
import { isForm } from '../../shared/chat/command.ts';
import type { Answer, Coming, Desk, Request } from '../../shared/chat/request.ts';
import { MemberError } from '../../shared/errors.ts';
import { complete } from './complete.ts';
import { dueReminders } from './due.ts';
import { replied, tell } from './replied.ts';
import { type DeskParts, enter, type Room } from './room.ts';
import { type Line, run } from './run.ts';
import { type Task, taskOf } from './task.ts';

export function openDesk(parts: DeskParts): Desk {
  return {
    answer: (request) => answer(parts, request),
    complete: (completion) => complete(parts, completion),
    due: (now) => dueReminders(parts, now),
  };
}

function answer(parts: DeskParts, request: Request): Coming {
  try {
    const task = taskOf(request, parts.commands);
    return {
      audience: task.audience,
      edits: task.edits,
      answer: enter(parts, request).then((room) => perform(parts, room, task)),
    };
  } catch (problem) {
    const told = enter(parts, request).then((room) => tell(parts, room, problem));
    return { audience: 'member', edits: false, answer: told };
  }
}

async function perform(parts: DeskParts, room: Room, task: Task): Promise<Answer> {
  const line: Line = { held: null };
  try {
    const result = await run(room, task, line);
    if (!isForm(result)) return await replied(room, task, result, line);
    // Nothing in a form that was sent would only open it again, which no platform does.
    if (room.request.kind === 'submit') throw new MemberError('nothing-told', {});
    return { kind: 'form', form: result };
  } catch (problem) {
    return tell(parts, room, problem, line.held);
  }
}
