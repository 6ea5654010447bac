/**
 * Draws the picture that the demo notebook's first entry carries, `templates/demo/first-weighing.png`, from the demo's
 * own revision A: `npx tsx tests/generated/demo-picture.ts`. To be drawn anew when the story's revision A or the
 * views change; needs Chromium, and the pixels differ a little from one to the next, so that no test compares them.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { demoEntries } from '../../src/desk/demo-notebook.ts';
import type { Story } from '../../src/desk/demo-story.ts';
import { assess } from '../../src/margins/index.ts';
import { replay } from '../../src/notebook/index.ts';
import { drawingToSvg, svgText, vehicleDrawing } from '../../src/report/index.ts';
import { readFonts } from '../fonts.ts';

const WIDTH = 600; // CSS pixels, at two device pixels each
const MARGIN = 16;

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

function page(): string {
  const story = JSON.parse(readFileSync(at('templates/demo/story.json'), 'utf8')) as Story;
  const entries = demoEntries(story, new Map()).map((entry, index) => ({ ...entry, seq: index + 1 }));
  const { state } = replay(entries);
  const revision = Object.values(state.revision).find(({ letter }) => letter === 'A');
  const prototype = revision && state.prototype[revision.prototype];
  if (!revision || !prototype) throw new Error('the story has no revision A');
  const drawing = vehicleDrawing(prototype.name, revision, assess(prototype, revision), {
    width: WIDTH - 2 * MARGIN,
    largestHeight: 300,
  });
  const { regular, semibold } = readFonts();
  const face = (bytes: Uint8Array, weight: number): string =>
    `@font-face { font-family: "Source Sans 3"; font-weight: ${weight}; src: url(data:font/ttf;base64,${Buffer.from(bytes).toString('base64')}); }`;
  return `<!doctype html><html lang="en" data-theme="light"><meta charset="utf-8"><style>
    ${face(regular, 400)} ${face(semibold, 600)} ${readFileSync(at('src/renderer/design/tokens.css'), 'utf8')}
    body { margin: 0; padding: ${MARGIN}px; background: var(--sheet); } svg { display: block; width: 100%; }
    </style><body>${svgText(drawingToSvg(drawing))}</body></html>`;
}

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
try {
  const tab = await browser.newPage({ viewport: { width: WIDTH, height: 100 }, deviceScaleFactor: 2 });
  await tab.setContent(page());
  await tab.evaluate(() => document.fonts.ready);
  const path = at('templates/demo/first-weighing.png');
  const { length } = await tab.screenshot({ path, fullPage: true });
  process.stdout.write(`${path}: ${length} bytes\n`);
} finally {
  await browser.close();
}
