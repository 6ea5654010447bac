/** What each field of a failure report is given. */
import type { FailureReport } from '../../../notebook/index.ts';

export interface FieldProps {
  readonly failure: FailureReport;
  readonly disabled: boolean;
  /** Records one of its values; a blank one is taken out. */
  readonly record: (path: keyof FailureReport) => (value: string) => void;
}
