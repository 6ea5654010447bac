/**
 * The dossier described for archives and search: RO-Crate 1.2 metadata, flattened JSON-LD. The context is named by its
 * address, as the specification wants; nothing is loaded from there.
 */
export interface CrateFile {
  readonly path: string;
  readonly bytes: number;
  /** What it is, in words; its path where absent. */
  readonly name?: string | undefined;
}

export interface CrateSource {
  readonly name: string;
  readonly description: string;
  /** RFC 3339. */
  readonly datePublished: string;
  readonly author: string;
  readonly identifier: string;
  readonly files: readonly CrateFile[];
}

const VERSION = 'https://w3id.org/ro/crate/1.2';

const FORMATS: Readonly<Record<string, string>> = {
  csv: 'text/csv',
  h: 'text/x-c',
  html: 'text/html',
  jpeg: 'image/jpeg',
  jpg: 'image/jpeg',
  json: 'application/json',
  jsonl: 'application/jsonl',
  pdf: 'application/pdf',
  png: 'image/png',
  py: 'text/x-python',
  txt: 'text/plain',
};

export function roCrate({
  name,
  description,
  datePublished,
  author,
  identifier,
  files,
}: CrateSource): unknown {
  return {
    '@context': `${VERSION}/context`,
    '@graph': [
      {
        '@id': 'ro-crate-metadata.json',
        '@type': 'CreativeWork',
        about: { '@id': './' },
        conformsTo: { '@id': VERSION },
      },
      {
        '@id': './',
        '@type': 'Dataset',
        name,
        description,
        datePublished,
        identifier,
        license: { '@id': '#terms' },
        ...(author === '' ? {} : { author: { '@id': '#author' } }),
        hasPart: files.map(({ path }) => ({ '@id': path })),
      },
      {
        '@id': '#terms',
        '@type': 'CreativeWork',
        name: 'Terms not stated',
        description: 'Nobody has stated under which terms the design may be used. Ask the author.',
      },
      ...(author === '' ? [] : [{ '@id': '#author', '@type': 'Person', name: author }]),
      ...files.map(({ path, bytes, name: words }) => ({
        '@id': path,
        '@type': 'File',
        name: words ?? path,
        contentSize: String(bytes),
        encodingFormat: formatOf(path),
      })),
    ],
  };
}

function formatOf(path: string): string {
  const ending = /\.([a-z0-9]+)$/i.exec(path)?.[1]?.toLowerCase() ?? '';
  return Object.hasOwn(FORMATS, ending) ? (FORMATS[ending] ?? '') : 'application/octet-stream';
}
