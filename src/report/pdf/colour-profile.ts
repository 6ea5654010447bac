/**
 * An ICC version 2 profile of sRGB, made here from its published figures (IEC 61966-2-1): primaries adapted to D50,
 * white point, and the transfer curve in 1024 steps. It tells a printer what the colours of the report mean.
 */

const CURVE_POINTS = 1024;
/** Columns of the sRGB → XYZ matrix after Bradford adaptation to D50. */
const RED = [0.436066, 0.222488, 0.013916] as const;
const GREEN = [0.385147, 0.716873, 0.097076] as const;
const BLUE = [0.143066, 0.060608, 0.714096] as const;
const WHITE_D50 = [0.9642, 1, 0.8249] as const;

export function srgbProfile(): Uint8Array {
  const curve = curveTag();
  const blocks: { readonly signatures: readonly string[]; readonly data: Uint8Array }[] = [
    { signatures: ['desc'], data: descriptionTag('sRGB IEC61966-2.1') },
    { signatures: ['cprt'], data: textTag('No copyright, use freely') },
    { signatures: ['wtpt'], data: xyzTag(WHITE_D50) },
    { signatures: ['rXYZ'], data: xyzTag(RED) },
    { signatures: ['gXYZ'], data: xyzTag(GREEN) },
    { signatures: ['bXYZ'], data: xyzTag(BLUE) },
    { signatures: ['rTRC', 'gTRC', 'bTRC'], data: curve },
  ];
  const entries = blocks.flatMap(({ signatures, data }) =>
    signatures.map((signature) => ({ signature, data })),
  );
  const tableEnd = 128 + 4 + 12 * entries.length;
  const places = new Map<Uint8Array, number>();
  let size = tableEnd;
  for (const { data } of blocks) {
    places.set(data, size);
    size += Math.ceil(data.length / 4) * 4;
  }
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  header(bytes, view, size);
  view.setUint32(128, entries.length);
  entries.forEach(({ signature, data }, index) => {
    const at = 132 + 12 * index;
    ascii(bytes, at, signature);
    view.setUint32(at + 4, places.get(data) ?? 0);
    view.setUint32(at + 8, data.length);
  });
  for (const [data, at] of places) bytes.set(data, at);
  return bytes;
}

function header(bytes: Uint8Array, view: DataView, size: number): void {
  view.setUint32(0, size);
  view.setUint32(8, 0x02100000); // version 2.1
  ascii(bytes, 12, 'mntrRGB XYZ ');
  [2000, 1, 1, 0, 0, 0].forEach((part, index) => {
    view.setUint16(24 + 2 * index, part);
  });
  ascii(bytes, 36, 'acsp');
  WHITE_D50.forEach((value, index) => {
    view.setInt32(68 + 4 * index, fixed(value));
  });
}

function fixed(value: number): number {
  return Math.round(value * 65536);
}

function ascii(bytes: Uint8Array, at: number, text: string): void {
  for (let i = 0; i < text.length; i += 1) bytes[at + i] = text.charCodeAt(i);
}

function tag(signature: string, length: number): { bytes: Uint8Array; view: DataView } {
  const bytes = new Uint8Array(length);
  ascii(bytes, 0, signature);
  return { bytes, view: new DataView(bytes.buffer) };
}

function xyzTag(values: readonly [number, number, number]): Uint8Array {
  const { bytes, view } = tag('XYZ ', 20);
  values.forEach((value, index) => {
    view.setInt32(8 + 4 * index, fixed(value));
  });
  return bytes;
}

function textTag(text: string): Uint8Array {
  const { bytes } = tag('text', 8 + text.length + 1);
  ascii(bytes, 8, text);
  return bytes;
}

/** ASCII description; the Unicode and script-code parts that version 2 asks for are empty. */
function descriptionTag(text: string): Uint8Array {
  const { bytes, view } = tag('desc', 12 + text.length + 1 + 8 + 70);
  view.setUint32(8, text.length + 1);
  ascii(bytes, 12, text);
  return bytes;
}

function curveTag(): Uint8Array {
  const { bytes, view } = tag('curv', 12 + 2 * CURVE_POINTS);
  view.setUint32(8, CURVE_POINTS);
  for (let i = 0; i < CURVE_POINTS; i += 1) {
    const v = i / (CURVE_POINTS - 1);
    const linear = v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    view.setUint16(12 + 2 * i, Math.round(linear * 65535));
  }
  return bytes;
}
