/** Unit texts as the SI Brochure prints them, from whatever the keyboard allowed: `kg*m^2` becomes kg·m². */
import { superscript } from './dimension.ts';
import { oneSpelling } from './unit.ts';

const WORDS: Readonly<Record<string, string>> = {
  deg: '°',
  degree: '°',
  degrees: '°',
  degC: '°C',
  degF: '°F',
  ohm: 'Ω',
  ohms: 'Ω',
  Ohm: 'Ω',
  RPM: 'rpm',
};

/** @param unit  a text that `parseUnit` takes */
export function printedUnit(unit: string): string {
  return oneSpelling(unit.trim())
    .replace(
      / *(?:\^|\*\*) *\(?([-−]?\d+)(?![\d.])\)?|(?<=\p{L})([-−]?\d+)/gu,
      (_, power?: string, bare?: string) => superscript(Number((power ?? bare ?? '').replace('−', '-'))),
    )
    .replace(/ *\/ */g, '/')
    .replace(/ *[⋅∙*×·] *|(?<=\S) +(?=\S)|(?<=\p{L})-(?=\p{L})/gu, '·')
    .replace(/\p{L}+/gu, (word) => (Object.hasOwn(WORDS, word) ? (WORDS[word] ?? word) : word));
}
