/** What broke on a run, each report with the way to it. */
import { PageLink } from '../../controls/page-link.tsx';
import { useRecords } from '../../store/context.ts';

export function FailuresOfRun({ id }: { id: string }) {
  const failures = useRecords('failure');
  const broken = Object.entries(failures).filter(([, failure]) => failure.run === id);
  const shown = Object.entries(failures).filter(([, failure]) => failure.verifiedBy === id);
  return (
    <>
      {broken.length > 0 && <Reports heading="What broke" reports={broken} />}
      {shown.length > 0 && <Reports heading="What this run has shown to be mended" reports={shown} />}
    </>
  );
}

function Reports({
  heading,
  reports,
}: {
  heading: string;
  reports: readonly (readonly [
    string,
    { readonly number: number; readonly title: string; readonly status: string },
  ])[];
}) {
  return (
    <>
      <h3>{heading}</h3>
      <ul className="plain">
        {reports.map(([id, { number, title, status }]) => (
          <li key={id}>
            <PageLink to={{ page: 'failures', record: id }}>
              Report {number}: {title}
            </PageLink>{' '}
            {status}
          </li>
        ))}
      </ul>
    </>
  );
}
