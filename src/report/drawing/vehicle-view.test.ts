import { describe, expect, it } from 'vitest';
import { spread } from './part-labels.ts';
import type { Drawing, PathPrimitive } from './primitive.ts';
import type { VehicleViewInput, ViewPart } from './vehicle.ts';
import { vehicleView } from './vehicle-view.ts';

const block: ViewPart = {
  name: 'Block',
  role: 'structure',
  mass: 1,
  x: 0.1,
  y: 0,
  z: 0.1,
  body: { shape: 'box', length: 0.2, width: 0.1, height: 0.05 },
};
const vehicle: VehicleViewInput = {
  title: 'Test vehicle',
  parts: [
    block,
    {
      ...block,
      name: 'Pod',
      role: 'rotor',
      y: 0.08,
      z: 0.12,
      body: { shape: 'cylinder', axis: 'x', diameter: 0.04, length: 0.06 },
    },
  ],
  centreOfGravity: { x: 0.1, y: 0, z: 0.12, ux: 0.002, uy: 0.002, uz: 0.004 },
  ballast: { kind: 'arm', pivotHeight: 0.1, armLength: 0.08, direction: 1, travel: Math.PI / 4 },
  limitLean: 0.15,
};

function extent(path: PathPrimitive): { left: number; right: number; top: number; bottom: number } {
  const numbers = path.steps.flatMap((step) => step.slice(1) as number[]);
  const xs = numbers.filter((_, index) => index % 2 === 0);
  const ys = numbers.filter((_, index) => index % 2 === 1);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
const filled = (
  drawing: Drawing,
  ink: string,
): { left: number; right: number; top: number; bottom: number }[] =>
  drawing.primitives.flatMap((primitive) =>
    primitive.type === 'path' && primitive.fill === ink && primitive.stroke === ink
      ? [extent(primitive)]
      : [],
  );
const words = (drawing: Drawing): string[] =>
  drawing.primitives.flatMap((primitive) => (primitive.type === 'text' ? [primitive.text] : []));

describe('views of a vehicle', () => {
  const both = vehicleView(vehicle, { width: 800 });
  const [side, rear] = filled(both, 'structure');

  it('draw both views to one scale', () => {
    const scale = ((side?.right ?? 0) - (side?.left ?? 0)) / 0.2;
    expect(scale).toBeGreaterThan(100);
    expect(((rear?.right ?? 0) - (rear?.left ?? 0)) / 0.1).toBeCloseTo(scale, 6);
    expect(((side?.bottom ?? 0) - (side?.top ?? 0)) / 0.05).toBeCloseTo(scale, 6);
    expect(side?.top).toBeCloseTo(rear?.top ?? Number.NaN, 6);
  });

  it('put what is on the left of the vehicle on the left of the rear view', () => {
    const view = vehicleView(vehicle, { width: 400, views: ['rear view'] });
    const [body] = filled(view, 'structure');
    const [pod] = filled(view, 'rotor');
    expect(pod?.right).toBeLessThan(body?.right ?? Number.NaN);
    expect(((pod?.left ?? 0) + (pod?.right ?? 0)) / 2).toBeLessThan(
      ((body?.left ?? 0) + (body?.right ?? 0)) / 2,
    );
  });

  it('put what is forward on the right of the side view', () => {
    const forward = { ...block, name: 'Nose', role: 'rotor' as const, x: 0.4 };
    const view = vehicleView({ ...vehicle, parts: [block, forward] }, { width: 500, views: ['side view'] });
    expect(filled(view, 'rotor')[0]?.left).toBeGreaterThan(filled(view, 'structure')[0]?.right ?? Number.NaN);
  });

  it('dimension the centre of gravity, the ballast travel and the limit lean', () => {
    // e = L sin 45° = 0.08 · 0.7071 = 56.6 mm; 0.15 rad = 8.6°
    expect(words(both)).toEqual(expect.arrayContaining(['120', '100', '57', '±8.6°']));
    expect(both.description).toContain('120 mm above the ground');
  });

  it('name each part with its number in the mass table', () => {
    const numbered = vehicleView({ ...vehicle, parts: [{ ...block, item: 7 }] }, { width: 600 });
    expect(words(numbered).map((text) => text.replaceAll('\u00a0', ' '))).toContain('7  Block');
  });

  it('stay inside the picture, also without parts', () => {
    for (const input of [vehicle, { title: 'Nothing yet', parts: [] }]) {
      for (const width of [320, 454, 900]) {
        const drawing = vehicleView(input, { width });
        for (const primitive of drawing.primitives) {
          if (primitive.type !== 'path') continue;
          const { left, right, top, bottom } = extent(primitive);
          expect(left).toBeGreaterThanOrEqual(-0.5);
          expect(right).toBeLessThanOrEqual(width + 0.5);
          expect(top).toBeGreaterThanOrEqual(-0.5);
          expect(bottom).toBeLessThanOrEqual(drawing.height + 0.5);
        }
      }
    }
  });
});

describe('labels in a column', () => {
  it('keep their order and their distance between the ends', () => {
    const places = spread([10, 11, 12, 95, 96], 10, 0, 100);
    places.slice(1).forEach((place, index) => {
      expect(place - (places[index] ?? 0)).toBeGreaterThanOrEqual(10 - 1e-9);
    });
    expect(Math.max(...places)).toBeLessThanOrEqual(100);
  });

  it('stay where they are when there is room', () => {
    expect(spread([10, 40, 90], 10, 0, 100)).toEqual([10, 40, 90]);
  });
});
