/**
 * Reports from the window: the document tree is built here from the recorded state, its pages are drawn in a worker.
 * The moment of issue is that of the newest journal entry, so that the same notebook gives the same bytes.
 */
import { wrap } from 'comlink';
import type { Arguments, Desk, Settings } from '../../preload/index.ts';
import { good, type Result } from '../../quantity/index.ts';
import { type ReportSource, revisionReport, runReport } from '../../report/index.ts';
import type { NotebookView } from './notebook-store.ts';
import { now } from './record-id.ts';
import type { ReportWorker } from './report-worker.ts';

export interface ReportSubject {
  readonly kind: 'run' | 'revision';
  readonly id: string;
}

export type PrintedReport = Arguments<'file.save'>;

export async function makeReport(
  desk: Desk,
  { recorded, session, entries }: NotebookView,
  { kind, id }: ReportSubject,
  { author, paper }: Settings,
): Promise<Result<PrintedReport>> {
  const source: ReportSource = {
    state: recorded,
    author,
    now: entries.at(-1)?.at ?? now(),
    paper,
    async attachment(sha256) {
      const read = await desk['attachment.read']({ session, sha256 });
      return read.ok ? read.value : undefined;
    },
  };
  const built = await (kind === 'run' ? runReport : revisionReport)(source, id);
  if (!built.ok) return built;
  const drawn = await worker().render(built.value);
  return drawn.ok ? good({ suggestedName: `${built.value.identification}.pdf`, bytes: drawn.value }) : drawn;
}

let started: ReturnType<typeof wrap<ReportWorker>> | undefined;

/** Started with the first report and kept: the typefaces are read once. */
function worker(): ReturnType<typeof wrap<ReportWorker>> {
  started ??= wrap<ReportWorker>(
    new Worker(new URL('./report-worker.ts', import.meta.url), { type: 'module', name: 'reports' }),
  );
  return started;
}
