/** Name and kind of a new prototype. */
import { type ReactNode, useId, useRef, useState } from 'react';
import type { Prototype } from '../../notebook/index.ts';
import { prototypeKinds } from './make-prototype.ts';

export interface NamedPrototype {
  readonly name: string;
  readonly kind: Prototype['kind'];
}

/** @param children  the buttons; one of them submits */
export function PrototypeForm({
  nameLabel,
  onMake,
  children,
}: {
  nameLabel: string;
  onMake: (prototype: NamedPrototype) => void;
  children: ReactNode;
}) {
  const id = useId();
  const [name, setName] = useState('');
  const [kind, setKind] = useState<Prototype['kind']>('inline two-wheeler');
  const [unnamed, setUnnamed] = useState(false);
  const field = useRef<HTMLInputElement>(null);

  function make() {
    if (name.trim() !== '') {
      onMake({ name: name.trim(), kind });
      return;
    }
    setUnnamed(true);
    field.current?.focus();
  }

  return (
    <form
      className="dialog-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        make();
      }}
    >
      <label>
        {nameLabel}
        <input
          ref={field}
          className="text-input"
          value={name}
          maxLength={120}
          autoComplete="off"
          placeholder="such as Heron tray cart"
          aria-invalid={unnamed ? true : undefined}
          aria-describedby={unnamed ? `${id}-problem` : undefined}
          onChange={(event) => {
            setName(event.target.value);
            setUnnamed(false);
          }}
        />
      </label>
      {unnamed && (
        <p className="problem" role="alert" id={`${id}-problem`}>
          Give it a name first; it stands on every sheet and report.
        </p>
      )}
      <label>
        Kind
        <select
          value={kind}
          onChange={(event) => setKind(prototypeKinds.find((each) => each === event.target.value) ?? kind)}
        >
          {prototypeKinds.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
      {children}
    </form>
  );
}
