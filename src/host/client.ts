/**
 * The desk as the window sees it in a browser: the same functions as inside Electron, over requests to the
 * host that served the page. No Node here.
 */

import type { Channel, Desk, Outcome, Surroundings } from '../preload/bridge.ts';
import { channelNames } from '../preload/channel-names.ts';
import type { Problem } from '../quantity/index.ts';
import { pack, unpack } from './parcel.ts';

const keyName = 'counterpoise-key';

/**
 * The key that the start put behind the address (`#key=…`), taken out of the address bar and kept for this
 * tab, so that a reload works and a copied address does not carry it. `undefined` when there is none.
 */
export function takeKey(): string | undefined {
  const inAddress = new URLSearchParams(location.hash.slice(1)).get('key');
  if (inAddress !== null && inAddress !== '') {
    sessionStorage.setItem(keyName, inAddress);
    history.replaceState(null, '', location.pathname + location.search);
  }
  return sessionStorage.getItem(keyName) ?? undefined;
}

/** The desk behind the host at `origin`; every outcome is a value, a host that is gone too. */
export function hostDesk(key: string, origin: string = location.origin): Desk {
  const ask = (channel: Channel, args: object): Promise<Outcome<unknown>> => post(origin, key, channel, args);
  const desk = Object.fromEntries(
    channelNames.map((channel) => [channel, (args: object) => ask(channel, args)]),
  );
  // The host answers with the outcome that the channel's own type says; it is the same program.
  return Object.freeze({ ...desk, 'file.save': save }) as unknown as Desk;
}

/** What a browser can do besides. */
export function browserSurroundings(): Surroundings {
  return { kind: 'browser', version: navigator.userAgent };
}

async function post(origin: string, key: string, channel: Channel, args: object): Promise<Outcome<unknown>> {
  let response: Response;
  try {
    response = await fetch(`${origin}/desk/${channel}`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream', 'x-counterpoise-key': key },
      body: pack(args),
      cache: 'no-store',
      redirect: 'error',
    });
  } catch (error) {
    return unreachable(error instanceof Error ? error.message : String(error));
  }
  try {
    return unpack(new Uint8Array(await response.arrayBuffer())) as Outcome<unknown>;
  } catch {
    return unreachable(`it answered ${response.status} without an outcome`);
  }
}

/** A browser has its own way of saving: the file goes where the person's downloads go. */
async function save({
  suggestedName,
  bytes,
}: {
  readonly suggestedName: string;
  readonly bytes: Uint8Array;
}): Promise<Outcome<string | null>> {
  const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)]));
  const link = document.createElement('a');
  link.href = address;
  link.download = suggestedName;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000); // the browser reads it after the click
  return { ok: true, value: suggestedName };
}

function unreachable(detail: string): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: { code: 'desk.unreachable', place: 'Desk', figures: { detail } } };
}
