/**
 * Names of figures for programs: the name of the figure in capitals, and its SI unit as it is written, because `m` and
 * `M` are two things. `RATE_GAIN_s`, `GIMBAL_FRICTION_N_m_s_per_rad`. Made from the program's own names of figures
 * only; nothing that a person has typed becomes part of a name.
 */

/** Letters and figures that a unit is written with where only these may stand. */
const PLAIN: Readonly<Record<string, string>> = { Ω: 'ohm', '°': 'deg', '%': 'percent', µ: 'u' };
const POWERS: Readonly<Record<string, string>> = { '²': '2', '³': '3', '⁴': '4' };

/**
 * @param name  of a figure: `rate_gain`
 * @param unit  SI unit text: `s`, `N·m·s/rad`; `1` adds nothing
 * @throws RangeError  for a unit that cannot be written with plain letters
 */
export function identifier(name: string, unit: string): string {
  const suffix = unitSuffix(unit);
  return suffix === '' ? name.toUpperCase() : `${name.toUpperCase()}_${suffix}`;
}

/** `N·m/rad` → `N_m_per_rad`, `1/s` → `per_s`, `1` → nothing. */
export function unitSuffix(unit: string): string {
  const [above = '', below, ...more] = unit.split('/');
  const written = [above === '1' ? '' : factors(above), below === undefined ? '' : `per_${factors(below)}`]
    .filter((part) => part !== '')
    .join('_');
  if (more.length > 0 || !/^\w*$/.test(written)) throw new RangeError(`the unit “${unit}” has no plain name`);
  return written;
}

function factors(text: string): string {
  return [...text.replace(/[()]/g, '').replaceAll('·', '_')]
    .map((character) => PLAIN[character] ?? POWERS[character] ?? character)
    .join('');
}
