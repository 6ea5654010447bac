/** The names that a calculation may use, with what they stand for and their present values. */
import { useDeferredValue, useState } from 'react';
import type { Assessment } from '../../../margins/index.ts';
import { namesOf } from './figures-in-scope.ts';

export function NamesList({ assessment, letter }: { assessment: Assessment; letter: string }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="names" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Names you can use</summary>
      {open && <Names assessment={assessment} letter={letter} />}
    </details>
  );
}

function Names({ assessment, letter }: { assessment: Assessment; letter: string }) {
  const [filter, setFilter] = useState('');
  const wanted = useDeferredValue(filter).trim().toLowerCase();
  const names = namesOf(assessment).filter(({ name, title }) =>
    `${name} ${title}`.toLowerCase().includes(wanted),
  );
  return (
    <>
      <p className="quiet small">
        Write a block that begins with <code>```calc</code> and ends with <code>```</code>, one formula a
        line: <code>reach = ballast_mass * 120 mm in kg·m</code>. A unit stands directly behind its number;{' '}
        <code>in</code> asks for the result in a unit; <code>#</code> begins a remark. The values are those of
        revision {letter}.
      </p>
      <input
        type="text"
        className="text-input"
        aria-label="Find a name"
        placeholder="Find a name"
        value={filter}
        onChange={(event) => setFilter(event.target.value)}
      />
      <table className="data">
        <thead>
          <tr>
            <th scope="col">name</th>
            <th scope="col">figure</th>
            <th scope="col" className="number">
              value
            </th>
          </tr>
        </thead>
        <tbody>
          {names.map(({ name, title, value, lacking }) => (
            <tr key={name}>
              <td>
                <code>{name}</code>
              </td>
              <td>{title}</td>
              <td className="number">
                {value ?? (
                  <span className="quiet" title={lacking}>
                    unknown
                  </span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {names.length === 0 && <p className="quiet">No name holds “{filter}”.</p>}
    </>
  );
}
