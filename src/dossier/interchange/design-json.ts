/** The figures of a revision as JSON: the same as in C and Python, with titles and how each was got. */
import type { DesignFigure, DesignFigures } from './design-figures.ts';

export const figuresFormat = 'counterpoise figures';

export function designJson(design: DesignFigures): unknown {
  const { prototype, letter, status, issuedAt, fingerprint, figures, parts } = design;
  return {
    format: figuresFormat,
    version: 1,
    prototype,
    revision: letter,
    status,
    ...(issuedAt === undefined ? {} : { issuedAt }),
    fingerprint,
    figures: figures.map(described),
    parts: parts.map((part) => ({ ...part, figures: part.figures.map(described) })),
  };
}

/** A figure that is not known has the value null; an uncertainty that nobody has stated is left out. */
function described({ identifier, name, title, unit, value, uncertainty, how }: DesignFigure) {
  const standardUncertainty = uncertainty > 0 ? { standardUncertainty: uncertainty } : {};
  return { identifier, name, title, unit, value: value ?? null, ...standardUncertainty, how };
}
