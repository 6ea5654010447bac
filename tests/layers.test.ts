/**
 * Imports go one way. The rules are data in `src/layers.json`: which parts a part may import, which platform it may
 * touch, and through which file (its `index.ts`, or a door that is named there). No circle of files anywhere.
 */
import { readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'oxc-parser';
import { globSync } from 'tinyglobby';
import { describe, expect, it } from 'vitest';

interface Rules {
  readonly parts: Readonly<
    Record<string, { readonly imports: readonly string[]; readonly platforms?: readonly string[] }>
  >;
  readonly platforms: Readonly<Record<string, readonly string[]>>;
  readonly doors: readonly string[];
}

interface Import {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
}

const src = fileURLToPath(new URL('../src', import.meta.url));
const rules = JSON.parse(readFileSync(join(src, 'layers.json'), 'utf8')) as Rules;

/** Every import of every source file, tests beside the files left out: they may look anywhere. */
function importsOf(root: string): Import[] {
  return globSync(['**/*.ts', '**/*.tsx'], {
    cwd: root,
    ignore: ['**/*.test.ts', '**/*.test.tsx', '**/*.d.ts'],
  }).flatMap((file) => {
    const { module, errors } = parseSync(file, readFileSync(join(root, file), 'utf8'));
    if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
    const still = module.staticImports.map((each) => ({
      to: each.moduleRequest.value,
      typeOnly: each.entries.length > 0 && each.entries.every((entry) => entry.isType),
    }));
    const passed = module.staticExports.flatMap((each) =>
      each.entries.flatMap((entry) =>
        entry.moduleRequest ? [{ to: entry.moduleRequest.value, typeOnly: entry.isType }] : [],
      ),
    );
    const text = readFileSync(join(root, file), 'utf8');
    const late = module.dynamicImports.map((each) => ({
      to: text.slice(each.moduleRequest.start + 1, each.moduleRequest.end - 1),
      typeOnly: false,
    }));
    return [...still, ...passed, ...late].map(({ to, typeOnly }) => ({
      from: file.split(sep).join('/'),
      to: to.startsWith('.')
        ? relative(root, resolve(root, dirname(file), to))
            .split(sep)
            .join('/')
        : to,
      typeOnly,
    }));
  });
}

/** What is wrong with an import by the rules, or undefined. */
function fault({ from, to }: Import, { parts, platforms, doors }: Rules): string | undefined {
  const part = from.split('/')[0] ?? '';
  const rule = parts[part];
  if (!rule) return `${from}: the part “${part}” has no rule in src/layers.json`;
  const local = to.split('/')[0] ?? '';
  if (parts[local] && to.includes('.')) {
    if (local === part) return undefined;
    if (!rule.imports.includes(local)) return `${from} imports ${to}: ${part} may not know ${local}`;
    if (to !== `${local}/index.ts` && !doors.includes(to))
      return `${from} imports ${to}: go through ${local}/index.ts`;
    return undefined;
  }
  for (const [platform, patterns] of Object.entries(platforms)) {
    if (patterns.some((pattern) => matches(pattern, to)) && !rule.platforms?.includes(platform)) {
      return `${from} imports ${to}: ${part} may not touch ${platform}`;
    }
  }
  return undefined;
}

function matches(pattern: string, name: string): boolean {
  return pattern.endsWith('*') ? name.startsWith(pattern.slice(0, -1)) : name === pattern;
}

/** The first circle of files found, in order; types vanish in the build and do not count. */
function circle(imports: readonly Import[]): string[] | undefined {
  const edges = new Map<string, string[]>();
  for (const { from, to, typeOnly } of imports) {
    if (!typeOnly) edges.set(from, [...(edges.get(from) ?? []), to]);
  }
  const done = new Set<string>();
  function walk(file: string, path: readonly string[]): string[] | undefined {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (done.has(file)) return undefined;
    for (const next of edges.get(file) ?? []) {
      const found = walk(next, [...path, file]);
      if (found) return found;
    }
    done.add(file);
    return undefined;
  }
  for (const file of edges.keys()) {
    const found = walk(file, []);
    if (found) return found;
  }
  return undefined;
}

describe('the layers', () => {
  const imports = importsOf(src);

  it('are respected by every import', () => {
    expect(imports.length).toBeGreaterThan(200);
    expect(imports.flatMap((each) => fault(each, rules) ?? [])).toEqual([]);
  });

  it('have no circle of files', () => {
    expect(circle(imports)).toBeUndefined();
  });
});

describe('the check of the layers', () => {
  const check = (from: string, to: string) => fault({ from, to, typeOnly: false }, rules);

  it.each([
    ['quantity/unit.ts', 'mechanics/index.ts', 'may not know mechanics'],
    ['margins/assess.ts', 'quantity/unit.ts', 'go through quantity/index.ts'],
    ['margins/assess.ts', 'node:fs', 'may not touch node'],
    ['report/tree.ts', 'react', 'may not touch react'],
    ['renderer/app.tsx', 'electron', 'may not touch electron'],
    ['renderer/app.tsx', 'desk/index.ts', 'may not know desk'],
    ['elsewhere/file.ts', 'react', 'has no rule'],
  ])('refuses %s importing %s', (from, to, reason) => {
    expect(check(from, to)).toContain(reason);
  });

  it.each([
    ['margins/assess.ts', 'quantity/index.ts'],
    ['desk/journal.ts', 'node:fs/promises'],
    ['renderer/main.tsx', 'host/client.ts'],
  ])('allows %s importing %s', (from, to) => {
    expect(check(from, to)).toBeUndefined();
  });

  it('finds a circle of three files', () => {
    const edge = (from: string, to: string): Import => ({ from, to, typeOnly: false });
    expect(circle([edge('a', 'b'), edge('b', 'c'), edge('c', 'a')])).toEqual(['a', 'b', 'c', 'a']);
  });
});
