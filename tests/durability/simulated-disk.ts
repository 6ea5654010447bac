/**
 * A disk in memory that tells apart what was written from what is safe. Content is safe after its file was
 * synced, names after their folder was; a power cut at any call loses, tears or keeps the rest as the test asks.
 * Each call can also fail once or for ever, or write too little.
 */
import { dirname } from 'node:path';
import type { FileFacts, Files, OpenFile } from '../../src/desk/index.ts';

/** What the power cut does to everything that was not synced. */
export type Aftermath = 'lost' | 'kept' | 'torn' | 'holed';

export interface Plan {
  /** From this call on, counted from 1, the machine is off. */
  readonly powerCutAt?: number;
  /** This call fails with the code, once; with `forEver` each later one that changes something too. */
  readonly failAt?: { readonly call: number; readonly code: string; readonly forEver?: boolean };
  /** Bytes that are written of a write too many. */
  readonly shortWriteAt?: { readonly call: number; readonly bytes: number };
}

export class PowerCut extends Error {}

interface Content {
  cached: Uint8Array;
  safe: Uint8Array;
}
type FileNode = { readonly kind: 'file' } & Content;
type Node = { readonly kind: 'folder' } | FileNode;

const identities = new WeakMap<object, string>();
let made = 0;
function factsOf(node: Node): FileFacts {
  const identity = identities.get(node) ?? String(++made);
  identities.set(node, identity);
  const size = node.kind === 'file' ? node.cached.length : 0;
  return { kind: node.kind, size, changedAt: new Date(0), identity };
}

export interface SimulatedDisk {
  readonly files: Files;
  /** Calls so far that change something. */
  readonly calls: () => number;
  /** The same calls by name, for messages. */
  readonly log: readonly string[];
  plan(plan: Plan): void;
  /** The disk after a power cut, on a machine that is on again. `random` in [0, 1). */
  afterPowerCut(aftermath: Aftermath, random: () => number): SimulatedDisk;
  /** Reads a file, or puts another one in its place, past every plan, as other programs would. */
  peek(path: string): Uint8Array;
  poke(path: string, bytes: Uint8Array): void;
}

export function simulatedDisk(
  safeNames: Map<string, Node> = new Map([
    ['/', { kind: 'folder' }],
    ['/home', { kind: 'folder' }],
  ]),
): SimulatedDisk {
  const names = new Map(safeNames);
  const log: string[] = [];
  let plan: Plan = {};
  let count = 0;

  /** Counts a call that changes something; the power may go, or the disk refuse. */
  function change(what: string): void {
    count += 1;
    log.push(what);
    if (plan.powerCutAt !== undefined && count >= plan.powerCutAt) throw new PowerCut(`power cut at ${what}`);
    const { failAt } = plan;
    if (failAt && (failAt.forEver ? count >= failAt.call : count === failAt.call)) throw failure(failAt.code);
  }
  function look(): void {
    if (plan.powerCutAt !== undefined && count >= plan.powerCutAt) throw new PowerCut('the machine is off');
  }
  function fileAt(path: string): FileNode {
    const node = names.get(path);
    if (node === undefined) throw failure('ENOENT');
    if (node.kind === 'folder') throw failure('EISDIR');
    return node;
  }
  function inFolder(path: string): void {
    if (names.get(dirname(path))?.kind !== 'folder') throw failure('ENOENT');
  }

  const files: Files = {
    async read(path) {
      look();
      return new Uint8Array(fileAt(path).cached);
    },
    async list(path) {
      look();
      if (names.get(path)?.kind !== 'folder') throw failure('ENOENT');
      return [...names.keys()]
        .filter((name) => name !== '/' && dirname(name) === path)
        .map((name) => name.slice(path.length + 1));
    },
    async facts(path): Promise<FileFacts | undefined> {
      look();
      const node = names.get(path);
      if (node === undefined) return undefined;
      return factsOf(node);
    },
    async makeFolder(path) {
      change(`make folder ${path}`);
      if (names.has(path)) throw failure('EEXIST');
      inFolder(path);
      names.set(path, { kind: 'folder' });
    },
    async open(path, mode): Promise<OpenFile> {
      if (mode === 'new') {
        change(`create ${path}`);
        if (names.has(path)) throw failure('EEXIST');
        inFolder(path);
        names.set(path, { kind: 'file', cached: new Uint8Array(), safe: new Uint8Array() });
      } else look();
      return openFile(path, fileAt(path));
    },
    async rename(from, to) {
      change(`rename ${from} to ${to}`);
      const node = names.get(from);
      if (node === undefined) throw failure('ENOENT');
      names.set(to, node);
      names.delete(from);
    },
    async remove(path) {
      change(`remove ${path}`);
      if (!names.delete(path)) throw failure('ENOENT');
    },
    async syncFolder(path) {
      change(`sync folder ${path}`);
      for (const [name, node] of names) if (dirname(name) === path) safeNames.set(name, node);
      for (const name of [...safeNames.keys()]) {
        if (name !== '/' && dirname(name) === path && !names.has(name)) safeNames.delete(name);
      }
    },
  };

  function openFile(path: string, content: FileNode): OpenFile {
    return {
      async write(bytes, position) {
        const { shortWriteAt } = plan;
        const short =
          shortWriteAt?.call === count + 1 ? Math.min(shortWriteAt.bytes, bytes.length) : undefined;
        const piece = bytes.subarray(0, short ?? bytes.length);
        try {
          change(`write ${path}`);
        } catch (error) {
          // When the power goes during a write, any part of it may have been handed over.
          if (error instanceof PowerCut && count === plan.powerCutAt) put(content, piece, position);
          throw error;
        }
        put(content, piece, position);
        return piece.length;
      },
      async sync() {
        change(`sync ${path}`);
        content.safe = content.cached.slice();
      },
      async truncate(length) {
        change(`truncate ${path}`);
        content.cached = content.cached.slice(0, length);
      },
      async facts() {
        look();
        return factsOf(content);
      },
      async close() {},
    };
  }

  return {
    files,
    calls: () => count,
    log,
    plan(next) {
      plan = next;
      count = 0;
    },
    afterPowerCut(aftermath, random) {
      const settled = new Map<string, Node>();
      const surviving = aftermath === 'kept' ? names : safeNames;
      for (const [name, node] of surviving) settled.set(name, node);
      if (aftermath === 'torn' || aftermath === 'holed') {
        for (const [name, node] of names) {
          if (!settled.has(name) && random() < 0.5 && settled.has(dirname(name))) settled.set(name, node);
        }
      }
      for (const [name, node] of settled) {
        if (node.kind !== 'file') continue;
        const bytes = settle(node, aftermath, random);
        settled.set(name, { kind: 'file', cached: bytes, safe: bytes });
      }
      return simulatedDisk(settled);
    },
    peek: (path) => new Uint8Array(fileAt(path).cached),
    poke(path, bytes) {
      const node: Node = { kind: 'file', cached: bytes, safe: bytes };
      names.set(path, node);
      safeNames.set(path, node);
    },
  };
}

function settle({ cached, safe }: Content, aftermath: Aftermath, random: () => number): Uint8Array {
  const common = Math.min(cached.length, safe.length);
  const added = cached.length - common;
  const kept = common + Math.floor(random() * (added + 1));
  switch (aftermath) {
    case 'lost':
      return safe.slice();
    case 'kept':
      return cached.slice();
    case 'torn':
      return added > 0 ? cached.slice(0, kept) : safe.slice();
    case 'holed': {
      // The length reached the medium, some of the content did not: zero bytes stand there.
      const holed = added > 0 ? cached.slice() : safe.slice();
      const from = common + Math.floor(random() * added);
      holed.fill(0, from, Math.max(from, kept));
      return holed;
    }
  }
}

function put(content: Content, bytes: Uint8Array, position: number): void {
  const longer = new Uint8Array(Math.max(content.cached.length, position + bytes.length));
  longer.set(content.cached);
  longer.set(bytes, position);
  content.cached = longer;
}

function failure(code: string): Error {
  return Object.assign(new Error(`${code}: simulated`), { code });
}
