/** The part that broke, and how grave it is: severity and probability in the levels of MIL-STD-882E. */
import { probabilities, riskOf, severities } from '../../../checklist/index.ts';
import type { FailureReport } from '../../../notebook/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { useRecord } from '../../store/context.ts';
import type { FieldProps } from './field-props.ts';

const NOT_ONE = '';
const severityChoices = ['I', 'II', 'III', 'IV'] as const;
const probabilityChoices = ['A', 'B', 'C', 'D', 'E'] as const;
const severityNames = Object.fromEntries(
  severityChoices.map((each) => [
    each,
    `${each}, ${severities[each].name.toLowerCase()}: ${severities[each].injury}`,
  ]),
);
const probabilityNames = Object.fromEntries(
  probabilityChoices.map((each) => [
    each,
    `${each}, ${probabilities[each].name.toLowerCase()}: ${probabilities[each].meaning}`,
  ]),
);

export function PartChoice({ failure, disabled, record }: FieldProps) {
  const parts = Object.entries(useRecord('revision', failure.revision)?.parts ?? {});
  return (
    <Choice
      label="which part"
      value={failure.part ?? NOT_ONE}
      choices={[NOT_ONE, ...parts.map(([id]) => id)]}
      names={{ [NOT_ONE]: 'not one part', ...Object.fromEntries(parts.map(([id, { name }]) => [id, name])) }}
      disabled={disabled}
      onChoose={record('part')}
    />
  );
}

export function SeverityChoice({ failure, disabled, record }: FieldProps) {
  return (
    <Choice
      label="severity"
      value={failure.severity}
      choices={severityChoices}
      names={severityNames}
      disabled={disabled}
      onChoose={record('severity')}
    />
  );
}

export function ProbabilityChoice({ failure, disabled, record }: FieldProps) {
  return (
    <Choice
      label="probability"
      value={failure.probability}
      choices={probabilityChoices}
      names={probabilityNames}
      disabled={disabled}
      onChoose={record('probability')}
    />
  );
}

export function RiskLine({ failure: { severity, probability } }: { failure: FailureReport }) {
  return (
    <p>
      Risk {severity}
      {probability}: <strong>{riskOf(severity, probability).toLowerCase()}</strong>
    </p>
  );
}
