/** Colours, colour profile and picture headers: what the paper is promised, against what is published. */
import { describe, expect, it } from 'vitest';
import type { Ink } from '../drawing/primitive.ts';
import { srgbProfile } from './colour-profile.ts';
import { type Colour, INK_COLOURS, SIGNAL_COLOURS, tinted } from './palette.ts';
import { pictureSize } from './picture-size.ts';

/** WCAG 2.2, relative luminance and contrast ratio. */
function luminance(colour: Colour): number {
  const [r = 0, g = 0, b = 0] = colour.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: Colour, b: Colour): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].toSorted((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}
const WHITE: Colour = [1, 1, 1];
const grey = (level: number): Colour => [level / 255, level / 255, level / 255];

describe('contrast on paper', () => {
  it.each([
    // W3C, WCAG 2.2 1.4.3: #767676 passes 4.5 : 1 on white, #777777 does not
    [0x76, 4.542],
    [0x77, 4.478],
    [0x59, 7.005],
  ])('is measured as published: grey %i', (level, ratio) => {
    expect(contrast(grey(level), WHITE)).toBeCloseTo(ratio, 3);
  });

  it.each(['ink', 'quiet', 'capability', 'demand', 'rotor', 'ballast', 'structure'] satisfies Ink[])(
    'text in %s passes 4.5 : 1',
    (ink) => {
      expect(contrast(INK_COLOURS[ink], WHITE)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it('signal words pass 4.5 : 1 on their panels', () => {
    for (const { panel, word } of Object.values(SIGNAL_COLOURS)) {
      expect(contrast(panel, word)).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('a tint is a solid colour between the ink and the paper', () => {
    tinted('band', 0.5).forEach((part, i) => {
      expect(part).toBeCloseTo((1 + (INK_COLOURS.band[i] ?? 0)) / 2, 9);
    });
    expect(tinted('ink', 0)).toEqual([1, 1, 1]);
  });
});

describe('the colour profile', () => {
  const bytes = srgbProfile();
  const view = new DataView(bytes.buffer);
  const text = (at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
  const tags = new Map(
    Array.from({ length: view.getUint32(128) }, (_, i) => {
      const at = 132 + 12 * i;
      return [text(at), view.getUint32(at + 4)] as const;
    }),
  );
  const xyz = (name: string): number[] =>
    [0, 1, 2].map((i) => view.getInt32((tags.get(name) ?? 0) + 8 + 4 * i) / 65536);

  it('is a display profile of version 2 with the tags that one has to have (ICC.1:2001-04, 6.3.3)', () => {
    expect(view.getUint32(0)).toBe(bytes.length);
    expect(text(12) + text(16) + text(20)).toBe('mntrRGB XYZ ');
    expect(bytes[8]).toBe(2);
    expect([...tags.keys()].sort()).toEqual([
      'bTRC',
      'bXYZ',
      'cprt',
      'desc',
      'gTRC',
      'gXYZ',
      'rTRC',
      'rXYZ',
      'wtpt',
    ]);
  });

  it('adds its primaries up to the white of the connection space, D50', () => {
    const sum = [0, 1, 2].map((i) => (xyz('rXYZ')[i] ?? 0) + (xyz('gXYZ')[i] ?? 0) + (xyz('bXYZ')[i] ?? 0));
    [0.9642, 1, 0.8249].forEach((white, i) => {
      expect(Math.abs((sum[i] ?? 0) - white)).toBeLessThan(3e-4);
    });
  });

  it('has the transfer curve of IEC 61966-2-1: 0.5 is 0.2140 of full light', () => {
    const start = (tags.get('rTRC') ?? 0) + 12;
    const points = view.getUint32(start - 4);
    const at = (level: number): number =>
      view.getUint16(start + 2 * Math.round(level * (points - 1))) / 65535;
    expect(at(0)).toBe(0);
    expect(at(1)).toBe(1);
    expect(at(0.5)).toBeCloseTo(0.214, 2);
  });
});

describe('a photograph', () => {
  /** The head of a JPEG, 4000 × 3000, with the orientation that a camera wrote. */
  function jpeg(orientation: number, little = false): Uint8Array {
    const exif = new DataView(new ArrayBuffer(32));
    exif.setUint32(0, 0x45786966);
    exif.setUint16(6, little ? 0x4949 : 0x4d4d);
    exif.setUint16(8, 42, little);
    exif.setUint32(10, 8, little);
    exif.setUint16(14, 1, little);
    exif.setUint16(16, 0x0112, little);
    exif.setUint16(18, 3, little);
    exif.setUint32(20, 1, little);
    exif.setUint16(24, orientation, little);
    return new Uint8Array([
      ...[0xff, 0xd8, 0xff, 0xe1, 0, 34],
      ...new Uint8Array(exif.buffer),
      ...[0xff, 0xc0, 0, 17, 8, 0x0b, 0xb8, 0x0f, 0xa0, 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1],
      ...[0xff, 0xd9],
    ]);
  }

  it.each([
    [1, 4000, 3000, 0],
    [3, 4000, 3000, 2],
    [6, 3000, 4000, 1],
    [8, 3000, 4000, 3],
  ])('taken with orientation %i stands upright', (orientation, width, height, turns) => {
    for (const little of [false, true]) {
      expect(pictureSize(jpeg(orientation, little), 'image/jpeg')).toEqual({ width, height, turns });
    }
  });

  it('whose file is cut short anywhere is refused or measured, never a crash', () => {
    const whole = jpeg(6);
    for (let length = 0; length <= whole.length; length += 1) {
      const size = pictureSize(whole.slice(0, length), 'image/jpeg');
      expect(typeof size === 'string' || size.width === 3000).toBe(true);
    }
  });

  it('in printing colours is refused with a word on what to do', () => {
    const bytes = jpeg(1);
    bytes[bytes.length - 12] = 4;
    expect(pictureSize(bytes, 'image/jpeg')).toContain('RGB');
  });
});
