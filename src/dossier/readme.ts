/** The README of a dossier: how to read it without this program, in plain words. */
import type { DossierDescription } from './description.ts';

const WIDTH = 78;

export interface ReadmeSource extends DossierDescription {
  readonly kind: string;
  readonly revisions: readonly string[];
  /** Names of the other prototypes whose changes are in the journal. */
  readonly others: readonly string[];
}

export function readme(source: ReadmeSource): string {
  const { prototype, kind, at, by, head, entries, notebook, questions, missing, others, revisions } = source;
  const name = oneLine(prototype.name);
  const paragraphs = [
    `${name.toUpperCase()}\n${'='.repeat(Math.min(WIDTH, name.length))}`,
    `This is the dossier of ${name}, a prototype of the kind “${kind}”: what was built, weighed, calculated, run and broken, revision by revision (${revisions.join(', ') || 'none yet'}). It was made from the notebook as it stood on ${oneLine(at) || 'the first day'}; the last entry is by ${oneLine(by) || 'nobody'}.`,
    'Begin with index.html: open it in any browser, no network is needed. Then reports/, which print.',
    title('What is where'),
    table([
      ['index.html', 'the design on one page: margins, views, masses, equations, log, failures'],
      [
        'reports/',
        'the same as PDF: a design record for each of the newest revisions, a report for each of the newest runs',
      ],
      [
        'tables/',
        'mass tables, figures, margins, log, runs and failures as CSV (RFC 4180, UTF-8). The unit ends the name of a column, or has a column of its own. A text that a spreadsheet would run as a formula has an apostrophe in front',
      ],
      [
        'firmware/',
        'the figures of each revision as a C header, as Python and as JSON, units in the names, with the letter and the fingerprint of the revision',
      ],
      [
        'files/',
        'pictures, drawings, firmware and logged data as they were attached; tables/files.csv gives their first names',
      ],
      [
        'records/',
        'every record as JSON; schemas/ says what each member is and in which unit (JSON Schema 2020-12)',
      ],
      ['templates/', 'the checklists and test cards that runs are made from'],
      [
        'journal/',
        'the journal of the notebook: every change in order, each line with a hash over the line before',
      ],
      [
        'dossier.json',
        'what this dossier is, for programs; ro-crate-metadata.json is the same for archives (RO-Crate)',
      ],
    ]),
    title('How far to trust it'),
    'The folder above this one is a BagIt bag (RFC 8493). To see that nothing was changed on the way, go there and run',
    '    sha512sum -c tagmanifest-sha512.txt manifest-sha512.txt',
    'or let the program do it, with the hash chain and the records too:',
    '    counterpoise dossier --verify FILE.zip',
    'Checksums and chain show damage and careless change. They are no signature: who remakes the whole dossier remakes them too. Compare the head of the journal with the sender by another way:',
    `    ${head}`,
    `It belongs to ${entries} entries of the notebook ${oneLine(notebook)}.`,
    'Figures are what somebody entered, and what follows from it. No figure is a promise of safety, and nothing here approves a test. A rotor stores energy after the power is cut.',
    title('What is in the journal'),
    `The journal is that of the whole notebook, so that its chain can be checked from the first line to the last. ${
      others.length === 0
        ? 'The notebook has no other prototype.'
        : `It therefore also tells of ${others.map(oneLine).join(', ')}; records, tables, reports and the page do not. Files that only the journal names are in journal/other-files.`
    }`,
    title('What you may want to ask'),
    ...(questions.length === 0
      ? ['Nothing was known to be open.']
      : questions.map(({ kind: what, text }) => item(`${what}: ${text}`))),
    ...(missing.length === 0
      ? []
      : [
          title('Files that the sender did not have'),
          ...missing.map(({ name: file, sha256 }) => item(`${file} (SHA-256 ${sha256})`)),
        ]),
    title('Terms'),
    'Nobody has stated under which terms the design may be used. Ask before you publish it or build for others.',
  ];
  return `${paragraphs.map(wrapped).join('\n\n')}\n`;
}

function title(text: string): string {
  return `${text}\n${'-'.repeat(text.length)}`;
}

function item(text: string): string {
  return `  - ${oneLine(text)}`;
}

function table(rows: readonly (readonly [string, string])[]): string {
  const width = Math.max(...rows.map(([name]) => name.length)) + 2;
  return rows
    .map(([name, text]) => {
      const lines = wrap(text, WIDTH - width);
      return lines.map((line, index) => `${(index === 0 ? name : '').padEnd(width)}${line}`).join('\n');
    })
    .join('\n');
}

/** Lines that are indented, ruled or laid out already stay as they are, list items hang. */
function wrapped(paragraph: string): string {
  if (paragraph.startsWith('  - '))
    return wrap(paragraph.slice(4), WIDTH - 4)
      .map((line, index) => `${index === 0 ? '  - ' : '    '}${line}`)
      .join('\n');
  return paragraph.includes('\n') || paragraph.startsWith('    ')
    ? paragraph
    : wrap(paragraph, WIDTH).join('\n');
}

function wrap(text: string, width: number): string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1) ?? '';
    if (line !== '' && line.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines;
}

/** Words of people on one line, without characters that a terminal obeys. */
function oneLine(text: string): string {
  return text
    .replace(/[\s\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/\p{Cf}/gu, '')
    .trim();
}
