import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readFonts } from '../../../tests/fonts.ts';
import { requireTools, run } from '../../../tests/tools.ts';
import { type Block, marginScale, type ReportDocument } from '../index.ts';
import { renderPdf } from './render.ts';

const fonts = readFonts();
const GREEK = 'Ω ≥ 890 rad/s, φ ≤ 9.4°, ± 2 %, 3 m/s², τ₀ = 0.3 s, µm, “quoted”, final office';
const equation = String.raw`\tan\varphi_{\max} = \frac{m_b\, e}{M_0 + m_b z_b}`;

const blocks: Block[] = [
  {
    type: 'caution',
    signal: 'DANGER',
    texts: ['Stay out of the plane of the rotor.', 'Wait for standstill.'],
  },
  { type: 'heading', level: 1, text: 'Results' },
  { type: 'paragraph', content: [GREEK, ' The mass ', { math: 'm_b', spoken: 'm b' }, ' was weighed.'] },
  { type: 'heading', level: 2, text: 'Margins' },
  {
    type: 'illustration',
    drawing: marginScale(
      {
        title: 'Lean',
        unit: '°',
        capability: 9,
        capabilityU: 0.2,
        demand: 6,
        verdict: 'holds',
        marginOfSafety: 0.5,
        lowerBound: 0.4,
      },
      { width: 450, textSize: 9 },
    ),
    caption: 'Figure 1. Lean.',
  },
  { type: 'equation', tex: equation, spoken: 'tangent of phi max' },
  {
    type: 'table',
    caption: 'Table 1. Figures',
    columns: [
      { title: 'Quantity', align: 'left', share: 2 },
      { title: 'Value', align: 'decimal', share: 1 },
      { title: 'Unit', align: 'left', share: 1 },
    ],
    rows: Array.from({ length: 60 }, (_, i) => [`Row ${i + 1}`, i % 2 ? `${i}.5(12)` : `0.${i}`, 'kg']),
  },
  { type: 'list', ordered: true, items: [['first'], ['second']] },
];

const report = (change: Partial<ReportDocument> = {}): ReportDocument => ({
  title: 'Run 12 & what followed',
  identification: 'CP-0012',
  subject: 'Monorail car, revision C',
  author: 'A. Builder',
  issuedAt: '2026-11-25T10:30:00+01:00',
  paper: 'A4',
  titleBlock: [
    ['Prototype', 'Heron'],
    ['Revision', 'C'],
  ],
  blocks,
  ...change,
});

/** A picture of one colour, made here. */
function png(width: number, height: number): Uint8Array {
  const chunk = (kind: string, data: Uint8Array): Buffer => {
    const body = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
    const frame = Buffer.alloc(8);
    frame.writeUInt32BE(data.length, 0);
    frame.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const row = Buffer.concat([Buffer.from([0]), Buffer.alloc(width * 3, 120)]);
  const data = deflateSync(Buffer.concat(Array.from({ length: height }, () => row)));
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
      chunk('IHDR', header),
      chunk('IDAT', data),
      chunk('IEND', Buffer.alloc(0)),
    ]),
  );
}

/** The same, with its compressed content overwritten: sound outside, not inside. */
function damaged(bytes: Uint8Array): Uint8Array {
  return bytes.map((byte, index) => (index > 42 && index < bytes.length - 16 ? 0x55 : byte));
}

const folder = mkdtempSync(join(tmpdir(), 'report-'));
const pathOf = (name: string): string => join(folder, name);
async function bytesOf(document: ReportDocument): Promise<Uint8Array> {
  const result = await renderPdf(document, fonts);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}
async function save(name: string, document: ReportDocument): Promise<string> {
  writeFileSync(pathOf(name), await bytesOf(document));
  return pathOf(name);
}

let file = '';
beforeAll(async () => {
  requireTools('pdftotext', 'pdffonts', 'pdfinfo', 'pdfimages', 'qpdf');
  file = await save('report.pdf', report());
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

describe('a report as PDF', () => {
  it('is sound in the eyes of another program', () => {
    expect(run('qpdf', ['--check', file])).toContain('No syntax or stream encoding errors found');
  });

  it('gives its text back, Greek, signs, ligatures and equations included', () => {
    const text = run('pdftotext', ['-layout', file, '-']);
    // the micro sign and the letter mu share a glyph and may come back as either
    expect(text.replaceAll('μ', 'µ')).toContain(
      'Ω ≥ 890 rad/s, φ ≤ 9.4°, ± 2 %, 3 m/s², τ₀ = 0.3 s, µm, “quoted”, final',
    );
    expect(text).toContain('The mass m_b was weighed');
    expect(text).toContain('tan φ_max = (m_b e)/(M_0 + m_b z_b)');
    expect(text).toContain('needs 6°');
  });

  it('embeds every typeface as a subset with its way back to text', () => {
    const rows = run('pdffonts', [file]).split('\n').slice(2).filter(Boolean);
    expect(rows.length).toBeGreaterThanOrEqual(2);
    for (const row of rows)
      expect(row).toMatch(/^[A-Z]{6}\+SourceSans3\S*\s+CID TrueType\s+Identity-H\s+yes yes yes/);
  });

  it('says on every page which report it is, which page of how many, and when it was issued', () => {
    const pages = run('pdftotext', ['-layout', file, '-']).split('\f').slice(0, -1);
    expect(pages.length).toBeGreaterThan(1);
    pages.forEach((page, index) => {
      expect(page).toContain('CP-0012');
      expect(page).toContain(`page ${index + 1} of ${pages.length}`);
      expect(page).toContain('Issued 2026-11-25');
    });
  });

  it('marks its end, once, on the last page', () => {
    const pages = run('pdftotext', [file, '-']).split('\f').slice(0, -1);
    expect(pages.map((page) => page.includes('End of report CP-0012'))).toEqual(
      pages.map((_, i) => i === pages.length - 1),
    );
  });

  it('repeats the head of a table on every page that it goes on to', () => {
    const pages = run('pdftotext', ['-layout', file, '-']).split('\f').slice(0, -1);
    for (const page of pages) {
      if (/Row \d+/.test(page)) expect(page).toMatch(/Quantity\s+Value\s+Unit/);
    }
    expect(pages.filter((page) => /Row \d+/.test(page)).length).toBeGreaterThan(1);
  });

  it('is tagged: headings, table heads with scope, figures and formulas with a text in their place', () => {
    expect(run('pdfinfo', [file])).toMatch(/Tagged:\s+yes/);
    const structure = run('pdfinfo', ['-struct-text', file]);
    expect(structure).toMatch(/H1[^\n]*\n\s+"Results"/);
    expect(structure).toMatch(/H2[^\n]*\n\s+"Margins"/);
    expect(structure).toMatch(/TH[^\n]*\n\s+\/Scope \/?Column/);
    expect(structure).toMatch(/TH[^\n]*\n\s+\/Scope \/?Row/);
    expect(structure).toMatch(/Caption[^\n]*\n\s+"Table 1. Figures"/);
    expect(structure).toContain('Figure');
    expect(structure).toContain('Formula');
    expect(structure).not.toContain('page 1 of');
  });

  it('reads in the order of its content', () => {
    const structure = run('pdfinfo', ['-struct-text', file]);
    const at = (text: string): number => structure.indexOf(text);
    const order = [
      'DANGER',
      '"Results"',
      '"Margins"',
      '"Figure 1. Lean."',
      '"Table 1. Figures"',
      '"Row 60"',
      '"second"',
      '"End of report',
    ];
    expect(order.map(at)).toEqual(order.map(at).toSorted((a, b) => a - b));
    expect(Math.min(...order.map(at))).toBeGreaterThan(-1);
  });

  it('carries what PDF/A-2b and PDF/UA-1 ask of the catalogue (own check; no validator was run)', () => {
    const json = run('qpdf', ['--json=2', '--json-stream-data=inline', '--decode-level=generalized', file]);
    const { qpdf } = JSON.parse(json) as {
      qpdf: [
        unknown,
        Record<string, { value?: unknown; stream?: { dict: Record<string, unknown>; data?: string } }>,
      ];
    };
    const objects = qpdf[1];
    const values = Object.values(objects);
    const trailer = objects.trailer?.value as Record<string, unknown>;
    const catalogue = objects[`obj:${String(trailer['/Root'])}`]?.value as Record<string, unknown>;
    expect(catalogue['/Lang']).toBe('u:en-GB');
    expect(catalogue['/MarkInfo']).toEqual({ '/Marked': true });
    expect(catalogue['/ViewerPreferences']).toMatchObject({ '/DisplayDocTitle': true });
    expect(catalogue['/PageMode']).toBe('/UseOutlines');
    expect(JSON.stringify(catalogue['/OutputIntents'])).toContain('/GTS_PDFA1');
    expect(trailer['/ID']).toHaveLength(2);
    expect(trailer['/Encrypt']).toBeUndefined();
    const metadata = objects[`obj:${String(catalogue['/Metadata'])}`]?.stream;
    expect(metadata?.dict['/Filter']).toBeUndefined();
    const xmp = Buffer.from(metadata?.data ?? '', 'base64').toString('utf8');
    expect(xmp).toContain('<pdfaid:part>2</pdfaid:part>');
    expect(xmp).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(xmp).toContain('Run 12 &amp; what followed');
    expect(xmp).toContain('2026-11-25T10:30:00+01:00');
    const pages = values.filter(
      ({ value }) => (value as Record<string, unknown> | undefined)?.['/Type'] === '/Page',
    );
    for (const { value } of pages) expect(value).toMatchObject({ '/Tabs': '/S' });
  });

  it('gives every marked content of a page to an element, and nothing to two', () => {
    const plain = pathOf('plain.pdf');
    run('qpdf', ['--qdf', '--object-streams=disable', file, plain]);
    const text = run('qpdf', ['--json=2', '--json-stream-data=inline', '--decode-level=generalized', file]);
    const { qpdf } = JSON.parse(text) as {
      qpdf: [unknown, Record<string, { value?: Record<string, unknown>; stream?: { data?: string } }>];
    };
    const objects = qpdf[1];
    const pages = Object.values(objects).flatMap(({ value }) =>
      value?.['/Type'] === '/Page' ? [value] : [],
    );
    for (const page of pages) {
      const content = Buffer.from(
        objects[`obj:${String(page['/Contents'])}`]?.stream?.data ?? '',
        'base64',
      ).toString('latin1');
      const marks = [...content.matchAll(/\/MCID (\d+)/g)].map(([, n]) => Number(n));
      expect(marks).toEqual(marks.map((_, index) => index));
      expect(content.match(/\b(BDC|BMC)\b/g)?.length).toBe(content.match(/\bEMC\b/g)?.length);
      // nothing is drawn outside of a tag or an artifact
      const outside = content.replace(/\/\S+ (?:<<.*?>> BDC|BMC)[\s\S]*?EMC/g, '');
      expect(outside).not.toMatch(/\b(Tj|TJ|Do|S|f|B)\b/);
    }
  });

  it('is the same to the byte for the same document, and another for another', async () => {
    const [one, two] = await Promise.all([bytesOf(report()), bytesOf(report())]);
    expect(Buffer.compare(one, two)).toBe(0);
    const other = await bytesOf(report({ author: 'B. Friend' }));
    expect(Buffer.compare(one, other)).not.toBe(0);
  });

  it('fits Letter as well', async () => {
    const letter = await save('letter.pdf', report({ paper: 'Letter' }));
    expect(run('pdfinfo', [letter])).toMatch(/Page size:\s+612 x 792/);
  });

  it('prints a row taller than a page over several pages without losing a word', async () => {
    const words = Array.from({ length: 1500 }, (_, i) => `word${i}`).join(' ');
    const tall = await save(
      'tall.pdf',
      report({
        blocks: [
          {
            ...(blocks[6] as Extract<Block, { type: 'table' }>),
            rows: [
              ['Tall', '1', words],
              ['After', '2', 'x'],
            ],
          },
        ],
      }),
    );
    const text = run('pdftotext', [tall, '-']);
    for (let i = 0; i < 1500; i += 1) expect(text).toContain(`word${i}`);
  });
});

describe('characters that the typeface lacks', () => {
  const strange = report({ blocks: [{ type: 'paragraph', content: ['shaft ⌀ 8 mm, 漢 and 漢 again'] }] });

  it('are printed by number and listed, never left out; those with a stand-in are replaced', async () => {
    const text = run('pdftotext', ['-layout', await save('strange.pdf', strange), '-']);
    expect(text).toContain('shaft Ø 8 mm, [U+6F22] and [U+6F22] again');
    expect(text).toMatch(/lacks some characters[\s\S]*\[U\+6F22\]/);
  });

  it('stop the report when that is asked for, and are named', async () => {
    const result = await renderPdf(strange, fonts, { unknownCharacters: 'refuse' });
    expect(result).toMatchObject({
      ok: false,
      problem: { code: 'report.unknown-character', figures: { character: '漢', code: 'U+6F22' } },
    });
  });
});

describe('pictures', () => {
  const picture = (bytes: Uint8Array, caption: string): Block => ({
    type: 'picture',
    bytes,
    mediaType: 'image/png',
    caption,
  });

  it('are embedded once, however often they are shown', async () => {
    const bytes = png(300, 200);
    const path = await save(
      'pictures.pdf',
      report({
        blocks: [picture(bytes, 'One'), picture(bytes.slice(), 'Two'), picture(png(50, 40), 'Three')],
      }),
    );
    const rows = run('pdfimages', ['-list', path]).split('\n').slice(2).filter(Boolean);
    const objects = new Set(rows.map((row) => row.trim().split(/\s+/)[10]));
    expect(rows.length).toBe(3);
    expect(objects.size).toBe(2);
  });

  it.each([
    ['cut short', png(300, 200).slice(0, 90), 'ends too early'],
    ['damaged inside', damaged(png(300, 200)), 'damaged'],
    ['something else', new Uint8Array(100), 'no PNG'],
  ])('that are %s are named instead of ending the report half way', async (_, bytes, detail) => {
    const result = await renderPdf(report({ blocks: [picture(bytes, 'The broken bracket')] }), fonts);
    expect(result).toMatchObject({
      ok: false,
      problem: { code: 'report.unreadable-picture', place: 'The broken bracket' },
    });
    expect(result.ok ? '' : String(result.problem.figures.detail)).toContain(detail);
  });
});

describe('the date of issue', () => {
  it('has to be one', async () => {
    expect(await renderPdf(report({ issuedAt: 'soon' }), fonts)).toMatchObject({
      ok: false,
      problem: { code: 'report.bad-date' },
    });
  });
});
