/**
 * The window on loopback: its files, and the desk behind a door that only the page we served can open. Any
 * other page in the same browser can send requests to this address too; the checks below are against those.
 */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { answer, fileHeaders, windowFile } from '../desk/index.ts';
import type { Desk, Outcome } from '../preload/index.ts';
import { bad } from '../quantity/index.ts';
import { pack, unpack } from './parcel.ts';

export interface HostSpec {
  readonly desk: Desk;
  /** The built window, with index.html. */
  readonly folder: string;
  /** 0 for any free one. */
  readonly port: number;
}

export interface Host {
  /** `http://127.0.0.1:<port>`. */
  readonly origin: string;
  /** Secret of this start. */
  readonly key: string;
  /** What to open in a browser. */
  readonly address: string;
  close(): Promise<void>;
}

/** Bytes that a request may have, by channel. */
const largestRequest = 16 * 1024 * 1024;
const largestWithBytes = 101 * 1024 * 1024;

/** Starts on 127.0.0.1 alone. @throws when the port is taken */
export async function startHost({ desk, folder, port }: HostSpec): Promise<Host> {
  const key = randomBytes(32).toString('base64url');
  const server = createServer({ requestTimeout: 60_000, headersTimeout: 10_000 });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host: '127.0.0.1', port, exclusive: true }, resolve);
  });
  const authority = `127.0.0.1:${(server.address() as AddressInfo).port}`;
  const origin = `http://${authority}`;
  server.on('request', (request, response) => {
    // A name that leads here (DNS rebinding) is another site to the browser; its pages get nothing.
    if (request.headers.host !== authority) {
      refuse(response, 403, 'the address is not the one printed at the start');
      return;
    }
    const path = (request.url ?? '').split('?')[0] ?? '';
    const work = path.startsWith('/desk/')
      ? answerDesk(request, response, path.slice('/desk/'.length), { desk, origin, key })
      : answerFile(request, response, folder, path);
    work.catch(() => response.destroy());
  });
  return {
    origin,
    key,
    address: `${origin}/#key=${key}`,
    close: () => closeServer(server),
  };
}

async function answerFile(
  request: IncomingMessage,
  response: ServerResponse,
  folder: string,
  path: string,
): Promise<void> {
  const { status, headers, body } = await windowFile(folder, request.method ?? '', path);
  response.writeHead(status, headers).end(body);
}

async function answerDesk(
  request: IncomingMessage,
  response: ServerResponse,
  channel: string,
  { desk, origin, key }: { readonly desk: Desk; readonly origin: string; readonly key: string },
): Promise<void> {
  if (request.method !== 'POST') return refuse(response, 405, 'the desk is asked by POST');
  if (request.headers.origin !== origin) return refuse(response, 403, 'another page asked');
  if (!isKey(request.headers['x-counterpoise-key'], key)) return refuse(response, 403, 'the key is missing');
  const limit = channel === 'attachment.add' ? largestWithBytes : largestRequest;
  const body = await readBody(request, limit);
  if (body === undefined) {
    return send(response, 413, bad('desk.too-large', 'Desk', { limit: limit / 1024 / 1024 }));
  }
  let args: unknown;
  try {
    args = unpack(body);
  } catch (error) {
    const detail = error instanceof SyntaxError ? error.message : 'the request cannot be read';
    return send(response, 400, bad('desk.bad-request', 'Desk', { detail }));
  }
  send(response, 200, await answer(desk, channel, args));
}

/** Compares digests, which have one length, in a time that does not depend on where they differ. */
function isKey(given: string | string[] | undefined, key: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return typeof given === 'string' && timingSafeEqual(digest(given), digest(key));
}

/** `undefined` when the body is longer than the limit; the rest is read and dropped, so that the answer arrives. */
async function readBody(request: IncomingMessage, limit: number): Promise<Uint8Array | undefined> {
  const pieces: Buffer[] = [];
  let length = 0;
  for await (const piece of request) {
    length += (piece as Buffer).length;
    if (length > limit) pieces.length = 0;
    else pieces.push(piece as Buffer);
  }
  return length > limit ? undefined : Buffer.concat(pieces);
}

function refuse(response: ServerResponse, status: number, detail: string): void {
  send(response, status, bad('desk.not-allowed', 'Desk', { detail }));
}

function send(response: ServerResponse, status: number, outcome: Outcome<unknown>): void {
  const headers = {
    ...fileHeaders,
    'content-type': 'application/octet-stream',
    'cache-control': 'no-store',
    // A refused request may still be sending; the connection is not worth keeping.
    ...(status === 200 ? {} : { connection: 'close' }),
  };
  response.writeHead(status, headers).end(pack(outcome));
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
