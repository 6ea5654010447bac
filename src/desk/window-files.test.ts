import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { resolveInside, windowFile } from './window-files.ts';

let parent: string;
let folder: string;
beforeAll(async () => {
  parent = await mkdtemp(join(tmpdir(), 'counterpoise-window-'));
  folder = join(parent, 'window');
  await mkdir(join(folder, 'assets'), { recursive: true });
  await writeFile(
    join(folder, 'index.html'),
    '<!doctype html><html><head lang="x"><title>W</title></head></html>',
  );
  await writeFile(join(folder, 'assets', 'main-Bq3x_9zA.js'), 'export {};');
  await writeFile(join(folder, 'assets', 'notes.txt'), 'not served');
  await writeFile(join(parent, 'secret.html'), 'secret');
  await symlink(join(parent, 'secret.html'), join(folder, 'link.html'));
});
afterAll(() => rm(parent, { recursive: true, force: true }));

const text = (body: Uint8Array): string => Buffer.from(body).toString('utf8');

describe('the files of the window', () => {
  it('are the page for the bare address', async () => {
    const file = await windowFile(folder, 'GET', '/');
    expect(file.status).toBe(200);
    expect(file.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(file.headers['cache-control']).toBe('no-store');
    expect(text(file.body)).toContain('<title>W</title>');
  });

  it('carry types, and may be kept when their name holds their hash', async () => {
    expect((await windowFile(folder, 'GET', '/assets/main-Bq3x_9zA.js')).headers).toMatchObject({
      'content-type': 'text/javascript; charset=utf-8',
      'cache-control': 'max-age=31536000, immutable',
      'x-content-type-options': 'nosniff',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-embedder-policy': 'require-corp',
    });
  });

  it('are read only', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'HEAD', 'OPTIONS', '']) {
      expect((await windowFile(folder, method, '/')).status).toBe(405);
    }
  });

  it.each([
    ['/../secret.html'],
    ['/%2e%2e/secret.html'],
    ['/%2E%2E%2Fsecret.html'],
    ['/..%2fsecret.html'],
    ['/..%5csecret.html'],
    ['/..\\secret.html'],
    ['/assets/../../secret.html'],
    ['/assets/./../../secret.html'],
    ['//secret.html'],
    ['/assets//main-Bq3x_9zA.js'],
    ['/%252e%252e/secret.html'],
    ['/index.html%00.js'],
    ['/index.html\u0000'],
    ['/C:/secret.html'],
    ['/index.html::$DATA'],
    ['/index.html.'],
    ['/index.html '],
    ['/.git/config'],
    ['/assets/.hidden.js'],
    ['/%'],
    ['/%ff'],
    ['/assets'],
    ['/assets/'],
    ['/assets/notes.txt'],
    ['/none.html'],
    ['/link.html'],
    [''],
    ['index.html'],
    ['http://elsewhere/index.html'],
  ])('do not include %j', async (path) => {
    const file = await windowFile(folder, 'GET', path);
    expect(file.status).toBe(404);
    expect(text(file.body)).not.toContain('secret');
  });

  it('are resolved inside the folder or not at all', () => {
    expect(resolveInside('/window', '/assets/a.js')).toBe('/window/assets/a.js');
    expect(resolveInside('/window', '/')).toBe('/window/index.html');
    expect(resolveInside('/window', '/assets/%61.js')).toBe('/window/assets/a.js');
  });
});

describe('the content policy', () => {
  it('allows our own files, no code from text, and styles by a nonce that the page carries', async () => {
    const { headers, body } = await windowFile(folder, 'GET', '/');
    const policy = headers['content-security-policy'] ?? '';
    const [, nonce] = /style-src 'self' 'nonce-([A-Za-z0-9+/]{24})'/.exec(policy) ?? [];
    expect(text(body)).toContain(`<head lang="x"><meta property="csp-nonce" nonce="${nonce}">`);
    expect(policy).not.toContain('unsafe');
    expect(policy).not.toMatch(/https?:|\*/);
    for (const part of [
      "default-src 'none'",
      "script-src 'self'",
      "connect-src 'self'",
      "worker-src 'self'",
      "frame-ancestors 'none'",
      "base-uri 'none'",
      "form-action 'none'",
      "require-trusted-types-for 'script'",
      'trusted-types default',
    ]) {
      expect(policy.split('; ')).toContain(part);
    }
  });

  it('has a fresh nonce for each load', async () => {
    const policies = await Promise.all([1, 2, 3].map(() => windowFile(folder, 'GET', '/')));
    expect(new Set(policies.map(({ headers }) => headers['content-security-policy'])).size).toBe(3);
  });

  it('stands on scripts too: a worker takes its policy from its own file', async () => {
    const { headers } = await windowFile(folder, 'GET', '/assets/main-Bq3x_9zA.js');
    expect(headers['content-security-policy']).toContain("default-src 'none'");
  });
});
