/**
 * HTML that is safe by construction: a string is always text and is written so that no browser takes it for anything
 * else; only what `element` has made stands as markup.
 */

export interface Markup {
  readonly markup: string;
}

export type Content = string | Markup | readonly Content[];

type TextTag = 'a' | 'code' | 'em' | 'h1' | 'h2' | 'h3' | 'h4' | 'h5' | 'hr' | 'p' | 'span' | 'strong';
type ListTag = 'dd' | 'dl' | 'dt' | 'li' | 'ol' | 'ul';
type TableTag = 'caption' | 'table' | 'tbody' | 'td' | 'th' | 'thead' | 'tr';
type PictureTag = 'figcaption' | 'figure' | 'img';
type PartTag = 'details' | 'div' | 'footer' | 'header' | 'main' | 'nav' | 'section' | 'summary';

/** Nothing that runs, loads or submits is among them. */
export type SafeTag = TextTag | ListTag | TableTag | PictureTag | PartTag;

export interface Attributes {
  readonly id?: string;
  readonly class?: string;
  /** Written by this program only: widths of drawings. */
  readonly style?: string;
  /** Inside the page or the dossier: `#log`, `reports/run-1.pdf`. */
  readonly href?: string;
  readonly src?: string;
  readonly alt?: string;
  readonly scope?: 'col' | 'row';
  readonly open?: boolean;
  readonly start?: number;
  readonly 'aria-label'?: string;
}

const VOID: ReadonlySet<SafeTag> = new Set(['hr', 'img']);
/** A link leads to a place in the page or to a file beside it; a picture is in the page. */
const LINK = /^(#[\w-]+|[\w-]+(\/[\w.-]+)+)$/;
const PICTURE = /^data:image\/(png|jpeg);base64,[A-Za-z0-9+/=]*$/;

/** @throws RangeError  for an address that leads out of the dossier */
export function element(tag: SafeTag, attributes: Attributes, ...content: readonly Content[]): Markup {
  const { href, src } = attributes;
  if (href !== undefined && !LINK.test(href)) throw new RangeError(`“${href}” is no place in the dossier`);
  if (src !== undefined && !PICTURE.test(src)) throw new RangeError('a picture has to be in the page');
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined && value !== false)
    .map(([name, value]) => (value === true ? ` ${name}` : ` ${name}="${escaped(String(value))}"`))
    .join('');
  const end = VOID.has(tag) ? '' : `${inside(content)}</${tag}>`;
  return { markup: `<${tag}${written}>${end}` };
}

/** Markup and text one after the other. */
export function inside(content: Content): string {
  if (typeof content === 'string') return escaped(content);
  if ('markup' in content) return content.markup;
  return content.map(inside).join('');
}

/** Characters that mean something to HTML as their names; those that turn or hide text are left out. */
export function escaped(text: string): string {
  return text
    .replace(/[^\P{Cc}\n\t]|[\u202a-\u202e\u2066-\u2069]|\p{Cs}/gu, '\ufffd')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
