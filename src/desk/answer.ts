/** The one door between a window and the desk: what comes in is checked, what goes out is always an outcome. */
import { type Channel, channelNames, channels, type Desk, type Outcome } from '../preload/index.ts';
import { bad } from '../quantity/index.ts';

/**
 * Runs the channel's function with checked arguments. Never throws: a failure of the program itself becomes a
 * problem too, because an exception would cross to the window as a bare line of text.
 */
export async function answer(desk: Desk, channel: string, args: unknown): Promise<Outcome<unknown>> {
  if (!isChannel(channel)) return bad('desk.bad-request', 'Desk', { detail: `there is no “${channel}”` });
  try {
    return await run(desk, channel, args);
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    return bad('desk.defect', channel, { detail });
  }
}

function isChannel(name: string): name is Channel {
  return (channelNames as readonly string[]).includes(name);
}

async function run<C extends Channel>(desk: Desk, channel: C, args: unknown): Promise<Outcome<unknown>> {
  const parsed = channels[channel].safeParse(args);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const where = issue?.path.join('/') ?? '';
    const detail = `${channel}${where === '' ? '' : `, ${where}`}: ${issue?.message ?? 'unknown form'}`;
    return bad('desk.bad-request', 'Desk', { detail });
  }
  // The schema of a channel and its function belong together by construction of `channels` and `Desk`.
  const handler = desk[channel] as (checked: unknown) => Promise<Outcome<unknown>>;
  return handler(parsed.data);
}
