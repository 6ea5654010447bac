/**
 * The look of the page: a drawing sheet on paper and on screen, light and dark. Colours name roles, never verdicts. The
 * typeface is in the page, because the drawings are laid out by its widths.
 */
import type { Fonts } from '../../report/index.ts';
import { base64 } from './base64.ts';

export function styleWith({ regular, semibold }: Pick<Fonts, 'regular' | 'semibold'>): string {
  return [face(400, regular), face(600, semibold), look].join('\n');
}

function face(weight: number, font: Uint8Array): string {
  return `@font-face { font-family: "Source Sans 3"; font-weight: ${weight}; src: url(data:font/ttf;base64,${base64(font)}); }`;
}

const look = `
:root {
  color-scheme: light dark;
  --paper: light-dark(#f4f3ee, #10171a);
  --sheet: light-dark(#fdfcf8, #182124);
  --ink: light-dark(#1b2325, #e9ece6);
  --quiet: light-dark(#505b5c, #a9b4b1);
  --hairline: light-dark(#c7c9c1, #354245);
  --draw-ink: var(--ink);
  --draw-quiet: var(--quiet);
  --draw-faint: var(--hairline);
  --draw-paper: var(--sheet);
  --draw-capability: light-dark(#0d5a64, #7cc7cd);
  --draw-demand: light-dark(#7a2f0b, #f0a47c);
  --draw-band: light-dark(#6fa3a8, #3f7378);
  --draw-rotor: light-dark(#4a3d8c, #b7abf2);
  --draw-ballast: light-dark(#85570a, #e3b660);
  --draw-structure: light-dark(#6b7472, #98a3a1);
  --draw-font: "Source Sans 3", sans-serif;
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 var(--draw-font); }
main, header, footer, nav { max-width: 60rem; margin: 0 auto; padding: 0 1.5rem; }
main { background: var(--sheet); border: 1px solid var(--hairline); padding: 1rem 1.5rem 2rem; }
header { padding-top: 1.5rem; }
footer { padding-block: 1rem 2rem; color: var(--quiet); }
h1, h2, h3, h4, h5 { line-height: 1.25; font-weight: 600; margin: 1.6em 0 0.5em; }
h1 { font-size: 1.9rem; margin: 0; }
h2 { font-size: 1.4rem; border-bottom: 1px solid var(--ink); padding-bottom: 0.2em; }
h3 { font-size: 1.15rem; }
h4, h5 { font-size: 1rem; }
summary h2 { display: inline; border: 0; }
summary { margin: 1.5rem 0 0.5rem; cursor: pointer; }
p, ul, ol, figure, table, dl { margin: 0.6em 0; }
nav ul { padding: 0; display: flex; flex-wrap: wrap; gap: 0.25rem 1.25rem; list-style: none; }
a { color: var(--draw-capability); }
a:focus-visible, summary:focus-visible { outline: 2px solid var(--draw-capability); outline-offset: 2px; }
code { font-family: ui-monospace, monospace; font-size: 0.92em; overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; font-size: 0.9rem; font-variant-numeric: tabular-nums; }
caption { text-align: left; color: var(--quiet); padding-bottom: 0.3em; }
th, td { text-align: left; vertical-align: top; padding: 0.25em 0.75em 0.25em 0; border-bottom: 1px solid var(--hairline); }
thead th { border-bottom: 1px solid var(--ink); }
tbody th { font-weight: normal; }
.number { text-align: right; }
figure svg { display: block; width: 100%; height: auto; }
figure img { max-width: 100%; height: auto; }
figcaption, .quiet { color: var(--quiet); }
.equation { display: block; margin: 0.8em 0 0.8em 1.5em; max-width: 100%; }
.equation svg, .symbol svg { display: block; width: 100%; height: auto; }
.symbol { display: inline-block; }
.title-block { display: grid; grid-template-columns: repeat(auto-fill, minmax(13rem, 1fr)); border: 1px solid var(--ink); }
.title-block div { padding: 0.3em 0.6em; border: 1px solid var(--hairline); }
.title-block dt { color: var(--quiet); font-size: 0.8rem; }
.title-block dd { margin: 0; overflow-wrap: anywhere; }
.signal { border: 2px solid var(--ink); margin: 0.8em 0; padding: 0 0.8em 0.4em; }
.signal > strong { display: inline-block; margin: 0 0 0.2em -0.8em; padding: 0.1em 0.8em; color: #fff; background: #005387; }
.signal.DANGER > strong { background: #b00; }
.signal.WARNING > strong { color: #000; background: #d05d29; }
.signal.CAUTION > strong { color: #000; background: #f9a800; }
@media print { body { background: none; } main { border: 0; } nav { display: none; } h2, h3 { break-after: avoid; } figure, tr { break-inside: avoid; } }
`;
