/** What the data say about themselves, beside the figures concerned. */
import type { FigureGroup } from '../../margins/index.ts';
import { useAssessment } from '../store/assessment.ts';

export function Notices({ groups }: { groups: readonly FigureGroup[] }) {
  const notices = useAssessment()?.notices.filter((notice) => groups.includes(notice.group)) ?? [];
  if (notices.length === 0) return null;
  return (
    <ul className="plain notices">
      {notices.map((notice) => (
        <li key={notice.id}>{notice.text}</li>
      ))}
    </ul>
  );
}
