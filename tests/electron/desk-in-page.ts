/** The desk as the page has it, for the contract: arguments and outcomes cross to the test as plain data. */
import type { Page } from '@playwright/test';
import { channelNames, type Desk } from '../../src/preload/index.ts';

/** Bytes as an object that survives the crossing. */
interface Carried {
  readonly carriedBytes: number[];
}

export function deskInPage(page: Page): Desk {
  const functions = channelNames.map((channel) => [
    channel,
    async (args: object) => {
      const packed = Object.fromEntries(
        Object.entries(args).map(([key, value]) => [
          key,
          value instanceof Uint8Array ? { carriedBytes: [...value] } : value,
        ]),
      );
      const outcome = (await page.evaluate(askInPage, { channel, packed })) as { value?: unknown };
      const bytes = (outcome.value as Carried | null | undefined)?.carriedBytes;
      return bytes === undefined ? outcome : { ...outcome, value: Uint8Array.from(bytes) };
    },
  ]);
  return Object.fromEntries(functions) as Desk;
}

/** Runs in the page: everything it needs stands inside. */
async function askInPage({
  channel,
  packed,
}: {
  readonly channel: string;
  readonly packed: Readonly<Record<string, unknown>>;
}): Promise<object> {
  const desk = window.counterpoise?.desk as unknown as Readonly<
    Record<string, (args: object) => Promise<{ readonly value?: unknown }>>
  >;
  const args = Object.fromEntries(
    Object.entries(packed).map(([key, value]) => {
      const bytes = (value as { readonly carriedBytes?: number[] } | null)?.carriedBytes;
      return [key, bytes === undefined ? value : Uint8Array.from(bytes)];
    }),
  );
  const ask = desk[channel];
  if (ask === undefined) throw new Error(`the page has no ${channel}`);
  const outcome = await ask(args);
  return outcome.value instanceof Uint8Array
    ? { ...outcome, value: { carriedBytes: [...outcome.value] } }
    : outcome;
}
