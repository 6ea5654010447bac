/**
 * The built window as files: a path asked for becomes the content, its type and its headers, and never a file
 * outside the folder. Electron's protocol and the loopback host both answer from here.
 */
import { randomBytes } from 'node:crypto';
import { readFile, realpath } from 'node:fs/promises';
import { extname, isAbsolute, relative, resolve, sep } from 'node:path';
import { contentPolicy, fileHeaders } from './content-policy.ts';

export interface WindowFile {
  readonly status: 200 | 404 | 405;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array;
}

/** Endings that a built window has; anything else is not served. */
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.otf': 'font/otf',
};

/**
 * @param folder   the built window, with index.html
 * @param method   of the request; only GET is answered
 * @param rawPath  path of the request as it came, still percent-encoded, without the query
 */
export async function windowFile(folder: string, method: string, rawPath: string): Promise<WindowFile> {
  if (method !== 'GET') {
    return { status: 405, headers: { ...fileHeaders, allow: 'GET' }, body: new Uint8Array() };
  }
  const path = resolveInside(folder, rawPath);
  const type = path && types[extname(path).toLowerCase()];
  if (path === undefined || type === undefined) return notFound;
  let bytes: Uint8Array;
  try {
    // A link inside the folder must not lead out of it either.
    if (!isInside(await realpath(folder), await realpath(path))) return notFound;
    bytes = await readFile(path);
  } catch {
    return notFound;
  }
  const nonce = randomBytes(18).toString('base64');
  const isPage = type.startsWith('text/html');
  return {
    status: 200,
    headers: {
      ...fileHeaders,
      'content-type': type,
      // On scripts too: a worker takes its policy from its own file, not from the page.
      'content-security-policy': contentPolicy(nonce),
      'cache-control': !isPage && isHashed(path) ? 'max-age=31536000, immutable' : 'no-store',
    },
    body: isPage ? Buffer.from(withNonce(Buffer.from(bytes).toString('utf8'), nonce)) : bytes,
  };
}

/** The file that the path means, or `undefined` when it is no clean path inside the folder. */
export function resolveInside(folder: string, rawPath: string): string | undefined {
  let decoded: string;
  try {
    decoded = decodeURIComponent(rawPath);
  } catch {
    return undefined;
  }
  // Our own names hold none of these: a second encoding, another system's separators, drives, streams, control signs.
  if (!/^\/[A-Za-z0-9._/-]*$/.test(decoded)) return undefined;
  const steps = decoded.slice(1).split('/');
  if (decoded !== '/' && steps.some((step) => step === '' || step.startsWith('.') || step.endsWith('.'))) {
    return undefined;
  }
  const path = resolve(folder, decoded === '/' ? 'index.html' : steps.join(sep));
  return isInside(resolve(folder), path) ? path : undefined;
}

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '' && !isAbsolute(way) && way !== '..' && !way.startsWith(`..${sep}`);
}

/** Where the window's scripts look for the nonce. */
function withNonce(html: string, nonce: string): string {
  return html.replace(/<head(\s[^>]*)?>/i, (head) => `${head}<meta property="csp-nonce" nonce="${nonce}">`);
}

/** Built files carry a hash of their content in their name, so that they may be kept. */
function isHashed(path: string): boolean {
  return /-[\w-]{8,}\.\w+$/.test(path);
}

const notFound: WindowFile = {
  status: 404,
  headers: { ...fileHeaders, 'content-type': 'text/plain; charset=utf-8' },
  body: Buffer.from('Not found\n'),
};
