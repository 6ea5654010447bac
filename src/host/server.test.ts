import { mkdtemp, rm } from 'node:fs/promises';
import { type IncomingHttpHeaders, request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fetchAsPageOf } from '../../tests/contract/browser-fetch.ts';
import { deskHandlers, type OpenDesk } from '../desk/index.ts';
import type { Outcome } from '../preload/index.ts';
import { hostDesk } from './client.ts';
import { pack, unpack } from './parcel.ts';
import { type Host, startHost } from './server.ts';

const folder = fileURLToPath(new URL('../../tests/stand-in/window', import.meta.url));
let home: string;
let desk: OpenDesk;
let host: Host;
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'counterpoise-host-'));
  desk = deskHandlers({ home });
  host = await startHost({ desk: desk.handlers, folder, port: 0 });
});
afterAll(async () => {
  await host.close();
  await desk.closeAll();
  await rm(home, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

/** A request with exactly these headers, which `fetch` would not allow. */
function ask(
  method: string,
  path: string,
  headers: Readonly<Record<string, string>> = {},
  body: Uint8Array = new Uint8Array(),
): Promise<Answer> {
  const { port } = new URL(host.origin);
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, method, path, headers }, (response) => {
      const pieces: Buffer[] = [];
      response.on('data', (piece: Buffer) => pieces.push(piece));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(pieces),
        }),
      );
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

const good = (): Record<string, string> => ({ origin: host.origin, 'x-counterpoise-key': host.key });
const nothing = pack({});
const code = (answer: Answer): string => {
  const outcome = unpack(answer.body) as Outcome<unknown>;
  return outcome.ok ? 'ok' : outcome.problem.code;
};

describe('the files over loopback', () => {
  it('are the page with its content policy', async () => {
    const { status, headers, body } = await ask('GET', '/');
    expect(status).toBe(200);
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(headers['cross-origin-embedder-policy']).toBe('require-corp');
    expect(headers['cache-control']).toBe('no-store');
    expect(body.toString()).toContain('A page for tests');
    expect(body.toString(), 'the key never stands in the page').not.toContain(host.key);
  });

  it('ignore what stands behind the path', async () => {
    expect((await ask('GET', '/index.html?v=1')).status).toBe(200);
  });

  it.each(['/../package.json', '/%2e%2e/package.json', '/..%5cpackage.json', '/desk', '/none.js'])(
    'do not include %s',
    async (path) => {
      expect((await ask('GET', path)).status).toBe(404);
    },
  );

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('are not there for %s', async (method) => {
    expect((await ask(method, '/')).status).toBe(405);
  });

  it.each(['localhost', 'elsewhere.example', '127.0.0.1', '127.0.0.1:1', 'xn--127-0-0-1', '[::1]'])(
    'are not given out under the name %s',
    async (name) => {
      const { port } = new URL(host.origin);
      const names = name.includes(':') || name.startsWith('127') ? [name] : [name, `${name}:${port}`];
      for (const each of names) expect((await ask('GET', '/', { host: each })).status).toBe(403);
    },
  );
});

describe('the desk over loopback', () => {
  it('answers our own page', async () => {
    const answer = await ask('POST', '/desk/settings.read', good(), nothing);
    expect(answer.status).toBe(200);
    expect(code(answer)).toBe('ok');
    expect(answer.headers['access-control-allow-origin']).toBeUndefined();
  });

  it.each([
    ['no origin', () => ({ 'x-counterpoise-key': host.key })],
    ['another origin', () => ({ ...good(), origin: 'http://elsewhere.example' })],
    ['a look-alike origin', () => ({ ...good(), origin: `${host.origin}.elsewhere.example` })],
    ['the origin by name', () => ({ ...good(), origin: host.origin.replace('127.0.0.1', 'localhost') })],
    ['the secure origin', () => ({ ...good(), origin: host.origin.replace('http:', 'https:') })],
    ['a null origin', () => ({ ...good(), origin: 'null' })],
    ['no key', () => ({ origin: host.origin })],
    ['an empty key', () => ({ ...good(), 'x-counterpoise-key': '' })],
    ['half a key', () => ({ ...good(), 'x-counterpoise-key': host.key.slice(0, 20) })],
    ['a longer key', () => ({ ...good(), 'x-counterpoise-key': `${host.key}A` })],
    ['another name of the host', () => ({ ...good(), host: 'elsewhere.example' })],
  ])('does not answer a request with %s', async (_what, headers) => {
    const answer = await ask('POST', '/desk/notebooks.list', headers(), nothing);
    expect(answer.status).toBe(403);
    expect(code(answer)).toBe('desk.not-allowed');
  });

  it.each(['GET', 'PUT', 'OPTIONS', 'DELETE'])('does not answer %s', async (method) => {
    expect((await ask(method, '/desk/notebooks.list', good())).status).toBe(405);
  });

  it.each([
    'notebook.erase',
    '../desk/notebooks.list',
    'notebooks.list/',
    '%6eotebooks.list',
    '__proto__',
    '',
  ])('has no channel %j', async (channel) => {
    const answer = await ask('POST', `/desk/${channel}`, good(), nothing);
    expect(code(answer)).toBe('desk.bad-request');
  });

  it('refuses a body that is no parcel', async () => {
    const answer = await ask('POST', '/desk/notebooks.list', good(), Buffer.from('{"name":"x"}'));
    expect(answer.status).toBe(400);
    expect(code(answer)).toBe('desk.bad-request');
  });

  it('refuses a body that is too large, and answers the next request', async () => {
    const answer = await ask('POST', '/desk/notebooks.list', good(), new Uint8Array(16 * 1024 * 1024 + 1));
    expect(answer.status).toBe(413);
    expect(code(answer)).toBe('desk.too-large');
    expect((await ask('POST', '/desk/notebooks.list', good(), nothing)).status).toBe(200);
  });

  it('does not read the body of a request that it refuses', async () => {
    const answer = await ask('POST', '/desk/attachment.add', { origin: host.origin }, new Uint8Array(1000));
    expect(answer.status).toBe(403);
    expect(answer.headers.connection).toBe('close');
  });

  it('lives on when a request breaks off', async () => {
    const { port } = new URL(host.origin);
    await new Promise<void>((resolve) => {
      const socket = connect(Number(port), '127.0.0.1', () => {
        const head = [`POST /desk/notebooks.list HTTP/1.1`, `Host: 127.0.0.1:${port}`];
        const more = [`Origin: ${host.origin}`, `X-Counterpoise-Key: ${host.key}`, 'Content-Length: 100'];
        socket.write(`${[...head, ...more].join('\r\n')}\r\n\r\nhalf`, () => socket.destroy());
      });
      socket.on('close', () => resolve());
    });
    expect((await ask('POST', '/desk/notebooks.list', good(), nothing)).status).toBe(200);
  });
});

describe('the host', () => {
  it('listens on 127.0.0.1 alone', async () => {
    const { port } = new URL(host.origin);
    const others = Object.values(networkInterfaces())
      .flatMap((each) => each ?? [])
      .filter(({ internal, family }) => !internal && family === 'IPv4')
      .map(({ address }) => address);
    for (const address of [...others, '::1']) {
      const outcome = await new Promise<string>((resolve) => {
        const socket = connect({ host: address, port: Number(port), timeout: 2000 });
        socket.on('connect', () => resolve('connected'));
        socket.on('timeout', () => resolve('no answer'));
        socket.on('error', (error) => resolve(error.message));
        socket.on('close', () => socket.destroy());
      });
      expect(outcome, address).not.toBe('connected');
    }
  });

  it('has another key at each start, of 32 random bytes, behind the address', async () => {
    const second = await startHost({ desk: desk.handlers, folder, port: 0 });
    expect(second.key).not.toBe(host.key);
    expect(Buffer.from(second.key, 'base64url')).toHaveLength(32);
    expect(second.address).toBe(`${second.origin}/#key=${second.key}`);
    await second.close();
  });

  it('says when its port is taken', async () => {
    const port = Number(new URL(host.origin).port);
    await expect(startHost({ desk: desk.handlers, folder, port })).rejects.toThrow('EADDRINUSE');
  });
});

describe('the window in a browser', () => {
  fetchAsPageOf(() => host.origin);

  it('gets a problem, not an exception, when the host is gone', async () => {
    const gone = await startHost({ desk: desk.handlers, folder, port: 0 });
    const window = hostDesk(gone.key, gone.origin);
    await gone.close();
    expect(await window['notebooks.list']({})).toMatchObject({
      ok: false,
      problem: { code: 'desk.unreachable' },
    });
  });

  it('gets a problem with a key of an earlier start', async () => {
    expect(await hostDesk('old', host.origin)['notebooks.list']({})).toMatchObject({
      ok: false,
      problem: { code: 'desk.not-allowed' },
    });
  });
});
