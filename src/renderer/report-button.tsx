/** Makes the PDF report of a run or a revision, in a worker, and hands it over. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { type Problem, phrase } from '../quantity/index.ts';
import { useNotebook, useSurface } from './store/context.ts';
import { makeReport, type ReportSubject } from './store/report.ts';

export function ReportButton({ subject }: { subject: ReportSubject }) {
  const store = useNotebook();
  const { desk, settings } = useSurface();
  const [busy, setBusy] = useState(false);
  const [saved, setSaved] = useState<string>();
  const [problem, setProblem] = useState<Problem>();

  async function make() {
    setBusy(true);
    setSaved(undefined);
    setProblem(undefined);
    const report = await makeReport(desk, store.getState(), subject, settings);
    const outcome = report.ok ? await desk['file.save'](report.value) : report;
    setBusy(false);
    if (!outcome.ok) setProblem(outcome.problem);
    else if (outcome.value !== null) setSaved(outcome.value);
  }

  return (
    <>
      <Button className="plain-button" isDisabled={busy} onPress={() => void make()}>
        {busy ? 'Making the report' : 'Report as PDF'}
      </Button>
      <span role="status" className="small">
        {saved && `Saved: ${saved}`}
        {problem && `${phrase(problem).reason} ${phrase(problem).remedy}`}
      </span>
    </>
  );
}
