/** Moments as PDF and XMP write them, from RFC 3339; the clock is never read. */

const RFC3339 = /^(\d{4})-(\d\d)-(\d\d)(?:[Tt ](\d\d):(\d\d):(\d\d)(?:\.\d+)?([Zz]|[+-]\d\d:\d\d)?)?$/;

export interface Instant {
  /** `D:20261125103000+01'00'` */
  readonly pdf: string;
  readonly xmp: string;
  /** `2026-11-25`, as printed. */
  readonly day: string;
}

/** Undefined where the text is no RFC 3339 date or time. */
export function instant(text: string): Instant | undefined {
  const match = RFC3339.exec(text);
  if (!match) return undefined;
  const [, year, month, day, hour = '00', minute = '00', second = '00', zone = 'Z'] = match;
  const utc = zone === 'Z' || zone === 'z';
  return {
    pdf: `D:${year}${month}${day}${hour}${minute}${second}${utc ? 'Z' : `${zone.slice(0, 3)}'${zone.slice(4)}'`}`,
    xmp: `${year}-${month}-${day}T${hour}:${minute}:${second}${utc ? 'Z' : zone}`,
    day: `${year}-${month}-${day}`,
  };
}
