/** Records in the words and figures of a report. */
import { isKnown, type QuantityField } from '../../notebook/index.ts';
import {
  formatUncertain,
  formatValue,
  independent,
  standardUncertainty,
  toDisplay,
  type Uncertain,
} from '../../quantity/index.ts';
import type { Block } from '../tree.ts';
import type { ReportFrame } from './report-source.ts';

/** The first letter large, as at the head of a line of a table. */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A standard uncertainty to two digits, in the unit of its figure. */
export function uncertaintyText(u: number, display: string): string {
  return u > 0 ? formatValue(u, display, u) : '–';
}

/** A bare number in the display unit, uncertainty in brackets: for columns whose head names the unit. */
export function bareText(value: number, u: number, display: string): string {
  const width = Math.abs(toDisplay(value + u, display) - toDisplay(value, display));
  return formatUncertain(independent('x', toDisplay(value, display), width), '1');
}

export function fieldBareText(field: QuantityField | undefined, display: string): string {
  if (isKnown(field)) return bareText(field.si, field.u, display);
  return field === undefined ? '' : 'not measured';
}

/** A quantity as somebody typed it. Blank, not measured and nought are three different things. */
export function fieldText(field: QuantityField | undefined): string {
  if (isKnown(field)) return field.typed;
  if (field === undefined) return 'blank';
  return field.note ? `not measured: ${field.note}` : 'not measured';
}

/** `measured with kitchen scale on 2026-03-03` */
export function basisText(field: QuantityField | undefined): string {
  if (!isKnown(field)) return '';
  const how = [
    field.basis,
    field.instrument && `with ${field.instrument}`,
    field.on && `on ${field.on.slice(0, 10)}`,
  ];
  return how.filter(Boolean).join(' ');
}

const STATED = { standard: 'standard', bound: 'bound', resolution: 'resolution' } as const;

/** The uncertainty as it was stated, or the standard uncertainty that it came with. */
export function statedUncertaintyText(field: QuantityField | undefined, display: string): string {
  if (!isKnown(field)) return '';
  if (field.uncertainty) return `${field.uncertainty.typed} (${STATED[field.uncertainty.kind]})`;
  return field.u > 0 ? `${formatValue(field.u, display, field.u)} (standard)` : 'taken as exact';
}

/** Signed, to two decimals: a margin's bound. */
export function boundText(value: number): string {
  const text = Math.abs(value).toFixed(Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** MS with its uncertainty in brackets; very uncertain or very large ones are rounded plainly. */
export function marginText(marginOfSafety: Uncertain): string {
  return standardUncertainty(marginOfSafety) > 0
    ? formatUncertain(marginOfSafety, '1')
    : boundText(marginOfSafety.value);
}

/** Plain prose as people type it: a blank line begins a new paragraph. */
export function prose(text: string): Block[] {
  return text
    .split(/\r?\n\s*\r?\n/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => ({ type: 'paragraph', content: [part] }));
}

export function heading(level: 1 | 2 | 3, text: string): Block {
  return { type: 'heading', level, text };
}

/** Letters and figures of a name for an identification: `SANDPIPER-TOOL-C`. */
export function slug(name: string, fallback: string): string {
  const plain = name
    .normalize('NFD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toUpperCase()
    .slice(0, 18)
    .replace(/-+$/, '');
  return plain === '' ? fallback.toUpperCase() : plain;
}

/** Date and minute of issue, for an identification: `20261125-1030`. */
export function issueStamp(now: string, frame: ReportFrame): string {
  return frame.moment(now).replaceAll('-', '').replace(':', '').replace(' ', '-');
}
