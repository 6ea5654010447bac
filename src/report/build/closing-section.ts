/** What every report ends with: what it is and is not, and room for the names of those who answer for it. */
import type { Block, Cell } from '../tree.ts';
import { heading } from './wording.ts';

export function signatureSection(
  rows: readonly (readonly [role: string, name: string, date: string])[],
): Block[] {
  const blank: Cell[][] = [
    ['Reviewed by', '', '', ''],
    ['Released by', '', '', ''],
  ];
  return [
    heading(1, 'Signatures'),
    {
      type: 'table',
      caption: '',
      columns: [
        { title: 'Role', align: 'left', share: 1.6 },
        { title: 'Name', align: 'left', share: 1.8 },
        { title: 'Date', align: 'left', share: 1.5 },
        { title: 'Signature', align: 'left', share: 2 },
      ],
      rows: [...rows.map(([role, name, date]): Cell[] => [role, name, date, '']), ...blank],
      leastRowHeight: 26,
    },
  ];
}

export function aboutSection(): Block[] {
  return [
    heading(1, 'What this report is, and is not'),
    {
      type: 'list',
      ordered: false,
      items: [
        [
          'It is made from what was entered in the notebook. Where an entry is wrong, so is what follows from it.',
        ],
        [
          'It records and calculates. It proves no design safe, certifies nothing and approves no test. No figure in it is a promise of safety: a margin that holds says that a stated requirement is met with the stated confidence, as far as the equations and the inputs go.',
        ],
        [
          'It stands beside law, fire and building rules, the terms of insurer and landlord, and the safety office of the institution, and replaces none of them. Where they differ, they apply.',
        ],
        [
          'Strength of an enclosure, proof of overspeed and design of guards need a competent engineer. A limit whose source is “project choice” is a proposal.',
        ],
        ['Standards and publications are named as pointers; the edition in force counts.'],
        [
          'It concerns the item identified on its first page, in the state and on the dates given, and no other. It is to be copied whole or not at all.',
        ],
      ],
    },
  ];
}
