/** Fills density, strength and Poisson ratio from the material table, as data-sheet values that stay editable. */
import { type Material, materials } from '../../../mechanics/index.ts';
import { type KnownQuantity, set } from '../../../notebook/index.ts';
import { toDisplay } from '../../../quantity/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { useChosenPiece, useLocked, useNotebook } from '../../store/context.ts';

const OWN = '';

export function MaterialChoice() {
  const store = useNotebook();
  const id = useChosenPiece((chosen) => chosen.id);
  const named = useChosenPiece(({ revision }) => revision.rotor?.material);
  const locked = useLocked();
  if (id === undefined) return null;
  const material = materials.find((each) => each.name === named);

  function choose(name: string) {
    const next = materials.find((each) => each.name === name);
    store.change([set('revision', id ?? '', next ? valuesOf(next) : { 'rotor/material': '' })]);
  }

  return (
    <>
      <Choice
        label="material"
        value={material?.name ?? OWN}
        choices={[OWN, ...materials.map((each) => each.name)]}
        names={{ [OWN]: 'other, figures typed in' }}
        disabled={locked}
        onChoose={choose}
      />
      {material && (
        <p className="quiet small">
          {material.note} Source: {material.source}. Read the certificate of the bar at hand where there is
          one.
        </p>
      )}
    </>
  );
}

function valuesOf(material: Material) {
  return {
    'rotor/material': material.name,
    'rotor/density': fromTable(material.density, 'kg/m³'),
    'rotor/yieldStrength': fromTable(material.yieldStrength, 'MPa'),
    'rotor/poissonRatio': fromTable(material.poissonRatio, '1'),
  };
}

function fromTable(si: number, display: string): KnownQuantity {
  const typed = display === '1' ? String(si) : `${toDisplay(si, display)} ${display}`;
  return { typed, si, u: 0, basis: 'data sheet' };
}
