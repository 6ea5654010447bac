/** RO-Crate 1.2: what its specification wants of the metadata file, its root and its files. */
import { beforeAll, describe, expect, it } from 'vitest';
import { payloadOf, smallChanges, sourceOf, written } from '../../tests/specimen/dossier.ts';

interface Entity {
  readonly '@id': string;
  readonly '@type': string;
  readonly [property: string]: unknown;
}

let payload: ReadonlyMap<string, Uint8Array>;
let graph: readonly Entity[];
beforeAll(async () => {
  payload = payloadOf((await written(sourceOf(smallChanges, 'p'))).bytes);
  const crate = JSON.parse(new TextDecoder().decode(payload.get('ro-crate-metadata.json')));
  expect(crate['@context']).toBe('https://w3id.org/ro/crate/1.2/context');
  graph = crate['@graph'];
}, 60_000);

function entity(id: string): Entity {
  const found = graph.find((each) => each['@id'] === id);
  if (!found) throw new Error(`the crate has no ${id}`);
  return found;
}

describe('the crate', () => {
  it('has a descriptor that leads to the root (root data entity, 1.2)', () => {
    expect(entity('ro-crate-metadata.json')).toMatchObject({
      '@type': 'CreativeWork',
      about: { '@id': './' },
      conformsTo: { '@id': 'https://w3id.org/ro/crate/1.2' },
    });
  });

  it('has a root with name, description, date of publication and terms', () => {
    const root = entity('./');
    expect(root).toMatchObject({
      '@type': 'Dataset',
      name: 'Rig',
      datePublished: '2026-03-01T09:00:00+01:00',
    });
    expect(String(root.description).length).toBeGreaterThan(20);
    expect(entity((root.license as Entity)['@id'])['@type']).toBe('CreativeWork');
  });

  it('is flat: each entity once, and no reference that leads nowhere', () => {
    const ids = graph.map((each) => each['@id']);
    expect(new Set(ids).size).toBe(ids.length);
    const references = graph
      .flatMap((each) => Object.values(each).flat())
      .filter((value) => typeof value === 'object');
    for (const reference of references as Entity[]) {
      if (!reference['@id'].startsWith('https://')) expect(ids).toContain(reference['@id']);
    }
  });

  it('has every file of the payload but itself as a part, with its size', () => {
    const parts = (entity('./').hasPart as Entity[]).map((part) => part['@id']);
    expect(parts.toSorted()).toEqual(
      [...payload.keys()].filter((path) => path !== 'ro-crate-metadata.json').toSorted(),
    );
    for (const path of parts) {
      expect(entity(path)).toMatchObject({ '@type': 'File', contentSize: String(payload.get(path)?.length) });
    }
  });
});
