/** The text of an entry to be read: typeset Markdown, with the results under each calculation. */
import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { Assessment } from '../../../../margins/index.ts';
import { findCalcBlocks } from '../calculation/calc-blocks.ts';
import { calculate } from '../calculation/calculate.ts';
import type { ShownLine } from '../calculation/shown-result.ts';
import { figuresOf } from '../figures-in-scope.ts';
import { CalcResults } from './calc-results.tsx';
import { markdownElements } from './markdown-elements.tsx';
import { definitionsOf, markdownTree } from './markdown-tree.ts';

export function EntryText({ text, assessment }: { text: string; assessment: Assessment | undefined }) {
  const tree = useMemo(() => markdownTree(text), [text]);
  const calculated = useCalculated(text, assessment);
  const underCalculation = (offset: number): ReactNode => (
    <CalcResults lines={calculated.get(offset) ?? []} />
  );
  if (text.trim() === '') return <p className="quiet">This entry has no text yet.</p>;
  return (
    <div className="entry-text">
      {markdownElements(tree.children, { definitions: definitionsOf(tree), underCalculation })}
    </div>
  );
}

const NOTHING: ReadonlyMap<number, readonly ShownLine[]> = new Map();

/** Results by the offset at which their block begins. */
function useCalculated(
  text: string,
  assessment: Assessment | undefined,
): ReadonlyMap<number, readonly ShownLine[]> {
  const [results, setResults] = useState(NOTHING);
  useEffect(() => {
    let wanted = true;
    const blocks = findCalcBlocks(text);
    if (!assessment || blocks.length === 0) {
      setResults(NOTHING);
      return undefined;
    }
    const codes = blocks.map(({ code }) => code);
    void calculate(codes, figuresOf(assessment)).then((evaluated) => {
      if (!wanted) return;
      setResults(new Map(blocks.map(({ from }, index) => [from, evaluated[index]?.lines ?? []])));
    });
    return () => {
      wanted = false;
    };
  }, [text, assessment]);
  return results;
}
