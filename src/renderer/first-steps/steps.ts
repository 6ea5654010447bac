/**
 * From an empty prototype to a printed report, in the order in which the figures build on each other. A step is done
 * when what it is for is known, not when somebody says so.
 */
import type { Assessment } from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import type { PageId } from '../place.ts';

export interface Step {
  readonly title: string;
  readonly page: PageId;
  /** What to enter there, and what it gives. */
  readonly text: string;
  /** Only for a vehicle that has the thing. */
  readonly optional?: boolean;
  readonly done: (standing: Standing) => boolean;
}

/** What the steps are judged by. */
export interface Standing {
  readonly prototype: Prototype;
  readonly revision: Revision;
  readonly assessment: Assessment;
  /** Cards and runs of this revision. */
  readonly cards: number;
  readonly runs: number;
}

export const steps: readonly Step[] = [
  {
    title: 'Say what it has to reach',
    page: 'requirements',
    text: 'Begin with the lean to recover from and the run time; each line becomes a margin at the right.',
    done: ({ prototype }) => Object.keys(prototype.requirements).length > 0,
  },
  {
    title: 'Weigh the parts',
    page: 'masses',
    text: 'A row each: mass, how far forward, how high. Three rows will do to begin with. They give the centre of gravity.',
    done: ({ assessment }) => knows(assessment, 'cg_height'),
  },
  {
    title: 'Say which part is the ballast, and which the rotor',
    page: 'masses',
    text: 'Open the part in the last column of its row, and choose its role.',
    done: ({ revision }) => Object.values(revision.parts).some(({ role }) => role === 'ballast'),
  },
  {
    title: 'Describe the ballast',
    page: 'ballast',
    text: 'Arm or slide, where it sits, how far it travels. They give the lean that it can hold.',
    done: ({ assessment }) => knows(assessment, 'largest_lean'),
  },
  {
    title: 'Describe the rotor and its gimbal',
    page: 'rotor',
    text: 'Its sections, its material, its speed: energy and stress follow.',
    optional: true,
    done: ({ assessment }) => knows(assessment, 'rotor_energy') && knows(assessment, 'rotor_peak_stress'),
  },
  {
    title: 'Describe the loop',
    page: 'loop',
    text: 'Gains, sample time and delays, and on the page Ballast the actuator. They give the stability margins.',
    optional: true,
    done: ({ assessment }) => knows(assessment, 'gain_margin_up'),
  },
  {
    title: 'Describe the pack',
    page: 'power',
    text: 'Cells, capacity, currents: run time and cell limits follow.',
    optional: true,
    done: ({ assessment }) => knows(assessment, 'run_time'),
  },
  {
    title: 'Plan a test',
    page: 'cards',
    text: 'A test card with its predictions and abort limits, made from the figures above. Issue it, and start a run.',
    done: ({ cards }) => cards > 0,
  },
  {
    title: 'Go through the checklist',
    page: 'runs',
    text: 'Then write down what was measured and what happened, and sign the run. “Report as PDF” prints it.',
    done: ({ runs }) => runs > 0,
  },
];

function knows({ figures }: Assessment, name: string): boolean {
  return figures.get(name)?.result.ok === true;
}
