/** What the data say about themselves, beside the figures concerned. */
import { shallow } from 'zustand/shallow';
import type { FigureGroup } from '../../margins/index.ts';
import { useAssessed } from '../store/assessment.ts';

export function Notices({ groups }: { groups: readonly FigureGroup[] }) {
  const texts = useAssessed(
    ({ notices }) => notices.filter(({ group }) => groups.includes(group)).map(({ text }) => text),
    shallow,
  );
  if (!texts || texts.length === 0) return null;
  return (
    <ul className="plain notices">
      {texts.map((text) => (
        <li key={text}>{text}</li>
      ))}
    </ul>
  );
}
