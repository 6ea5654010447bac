/** Names of files in a dossier: plain letters, so that every computer can unpack them, and no two alike. */
import { pathFault, sameOnSomeDisk } from './archive/safe-path.ts';

const LONGEST_STEM = 60;

/** Letters, figures, dots and dashes of a name as somebody typed it; the ending stays. */
export function plainName(name: string, fallback: string): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9._-]+/g, '-');
  const [, stem = '', ending = ''] = /^(.*?)(\.[A-Za-z0-9]{1,10})?$/.exec(plain) ?? [];
  const trimmed = stem
    .replace(/^[-.]+/, '')
    .slice(0, LONGEST_STEM)
    .replace(/[-.]+$/, '');
  const made = `${trimmed === '' ? fallback : trimmed}${ending}`;
  return pathFault(made) === undefined ? made : `${fallback}-${made}`;
}

/** Gives out each path once; one that is taken, on some disk at least, gets a number. */
export class FreePaths {
  private readonly taken = new Set<string>();

  /** @param ending  with its dot, or empty */
  path(stem: string, ending: string): string {
    for (let number = 1; ; number++) {
      const path = number === 1 ? `${stem}${ending}` : `${stem}-${number}${ending}`;
      const key = sameOnSomeDisk(path);
      if (this.taken.has(key)) continue;
      this.taken.add(key);
      return path;
    }
  }
}
