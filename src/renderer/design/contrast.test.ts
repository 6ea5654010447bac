import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** WCAG 2.2, relative luminance of `#rrggbb`. */
function luminance(hex: string): number {
  const channel = (from: number): number => {
    const c = Number.parseInt(hex.slice(from, from + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

type Colours = Readonly<Record<string, string>>;

/** The tokens of `tokens.css` as one paper has them, references to other tokens followed. */
function coloursOn(paper: 'light' | 'dark' | 'high contrast'): Colours {
  const css = readFileSync(new URL('tokens.css', import.meta.url), 'utf8');
  const blocks = [...css.matchAll(/(:root[^{]*)\{([^}]*)\}/g)];
  const wanted = blocks.filter(
    ([, selector = '']) =>
      selector.trim() === ':root' || (paper === 'high contrast' && selector.includes('high contrast')),
  );
  const colours: Record<string, string> = {};
  for (const [, , body = ''] of wanted) {
    for (const [, name = '', value = ''] of body.matchAll(/--([a-z-]+):\s*([^;]+);/g)) {
      const pair = /light-dark\(([^,]+),\s*([^)]+)\)/.exec(value);
      colours[name] = (pair?.[paper === 'dark' ? 2 : 1] ?? value).trim();
    }
  }
  const follow = (value: string): string => {
    const other = /var\(--([a-z-]+)\)/.exec(value)?.[1];
    return other === undefined ? value : follow(colours[other] ?? '');
  };
  return Object.fromEntries(Object.entries(colours).map(([name, value]) => [name, follow(value)]));
}

const grounds = ['paper', 'sheet'];
const on = (inks: readonly string[], papers: readonly string[]) =>
  inks.flatMap((ink) => papers.map((paper) => [ink, paper] as const));

/** What is read. */
const text = [
  ...on(['ink', 'quiet', 'accent', 'alert'], [...grounds, 'accent-wash']),
  ...on(['ink'], ['alert-wash']),
  ...on(['draw-ink', 'draw-quiet', 'draw-capability', 'draw-demand'], grounds),
  ['accent-ink', 'accent'],
  ['sheet', 'ink'],
  ['signal-black', 'signal-warning'],
  ['signal-black', 'signal-caution'],
  ['signal-white', 'signal-notice'],
] as const;

/** What is only seen: edges of fields, the ring of the focus, lines of drawings. */
const shapes = [
  ...on(['line'], grounds),
  ...on(['focus'], [...grounds, 'accent-wash']),
  ...on(['draw-rotor', 'draw-ballast', 'draw-structure'], grounds),
] as const;

describe('contrast', () => {
  // Published ratios on white, to three decimals.
  it.each([
    ['#000000', 21],
    ['#767676', 4.542],
    ['#777777', 4.478],
    ['#949494', 3.033],
    ['#959595', 2.995],
    ['#595959', 7.005],
    ['#ff0000', 3.998],
    ['#0000ff', 8.592],
  ])('of %s on white is %f', (colour, ratio) => {
    expect(contrast(colour, '#ffffff')).toBeCloseTo(ratio, 3);
  });

  describe.each(['light', 'dark', 'high contrast'] as const)('on %s paper', (paper) => {
    const colours = coloursOn(paper);
    const ratio = (a: string, b: string): number => contrast(colours[a] ?? '', colours[b] ?? '');

    it.each(text)('%s can be read on %s (4.5 : 1, WCAG 1.4.3)', (ink, ground) => {
      expect(ratio(ink, ground)).toBeGreaterThanOrEqual(4.5);
    });

    it.each(shapes)('%s can be seen on %s (3 : 1, WCAG 1.4.11)', (ink, ground) => {
      expect(ratio(ink, ground)).toBeGreaterThanOrEqual(3);
    });
  });

  it('is 7 : 1 for all that is read on high-contrast paper', () => {
    const colours = coloursOn('high contrast');
    const own = text.filter(([ink]) => !ink.startsWith('signal'));
    const low = own.filter(([a, b]) => contrast(colours[a] ?? '', colours[b] ?? '') < 7);
    expect(low).toEqual([]);
  });
});
