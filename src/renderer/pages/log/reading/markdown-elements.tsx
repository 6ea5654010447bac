/**
 * A Markdown tree as elements of the page. Nothing in it leads anywhere: a link is its text with the address
 * behind it, a picture by address is its description, HTML is text.
 */
import type { Nodes, Parents, Table } from 'mdast';
import { createElement, Fragment, type ReactNode } from 'react';
import { type Definitions, isCalculation } from './markdown-tree.ts';

export interface Reading {
  readonly definitions: Definitions;
  /** What stands under the calculation that begins at that offset of the text. */
  readonly underCalculation: (offset: number) => ReactNode;
}

export function markdownElements(nodes: readonly Nodes[], reading: Reading): ReactNode {
  return nodes.map((node, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a tree that is read has no other identity than its order
    <Fragment key={index}>{element(node, reading)}</Fragment>
  ));
}

function element(node: Nodes, reading: Reading): ReactNode {
  const within = ({ children }: Parents): ReactNode => markdownElements(children, reading);
  switch (node.type) {
    case 'text':
      return node.value;
    case 'html':
      return node.value;
    case 'paragraph':
      return <p>{within(node)}</p>;
    case 'heading':
      return createElement(`h${Math.min(node.depth + DEPTH_ABOVE, 6)}`, {}, within(node));
    case 'emphasis':
      return <em>{within(node)}</em>;
    case 'strong':
      return <strong>{within(node)}</strong>;
    case 'delete':
      return <del>{within(node)}</del>;
    case 'inlineCode':
      return <code>{node.value}</code>;
    case 'break':
      return <br />;
    case 'thematicBreak':
      return <hr />;
    case 'blockquote':
      return <blockquote>{within(node)}</blockquote>;
    case 'list':
      return node.ordered ? (
        <ol start={node.start ?? 1}>{within(node)}</ol>
      ) : (
        <ul
          className={node.children.some(({ checked }) => typeof checked === 'boolean') ? 'tasks' : undefined}
        >
          {within(node)}
        </ul>
      );
    case 'listItem':
      return (
        <li>
          {typeof node.checked === 'boolean' && <TaskBox done={node.checked} />}
          {within(node)}
        </li>
      );
    case 'code':
      return (
        <>
          <pre className={isCalculation(node) ? 'calculation' : undefined}>
            <code>{node.value}</code>
          </pre>
          {isCalculation(node) && reading.underCalculation(node.position?.start.offset ?? -1)}
        </>
      );
    case 'table':
      return <ReadTable table={node} reading={reading} />;
    case 'link':
      return <Link address={node.url}>{within(node)}</Link>;
    case 'linkReference':
      return <Link address={reading.definitions.addresses.get(node.identifier)}>{within(node)}</Link>;
    case 'image':
      return <Picture description={node.alt} address={node.url} />;
    case 'imageReference':
      return <Picture description={node.alt} address={reading.definitions.addresses.get(node.identifier)} />;
    case 'footnoteReference':
      return <sup>[{reading.definitions.notes.indexOf(node.identifier) + 1}]</sup>;
    case 'footnoteDefinition':
      return (
        <div className="footnote">
          <sup>[{reading.definitions.notes.indexOf(node.identifier) + 1}]</sup>
          {within(node)}
        </div>
      );
    default:
      return 'children' in node ? within(node) : null; // definitions say nothing by themselves
  }
}

/** The window has the name of the page and the title of the entry above an entry's own headings. */
const DEPTH_ABOVE = 2;

function TaskBox({ done }: { done: boolean }) {
  return (
    <span className="task">
      <span aria-hidden="true">{done ? '☑' : '☐'} </span>
      <span className="visually-hidden">{done ? 'done: ' : 'to do: '}</span>
    </span>
  );
}

function Link({ address, children }: { address: string | undefined; children: ReactNode }) {
  if (address === undefined) return children;
  return (
    <>
      {children} <span className="address">&lt;{address}&gt;</span>
    </>
  );
}

function Picture({
  description,
  address,
}: {
  description: string | null | undefined;
  address: string | undefined;
}) {
  return (
    <span className="address">
      [{description || 'picture'}
      {address !== undefined && `, ${address}`}]
    </span>
  );
}

function ReadTable({ table, reading }: { table: Table; reading: Reading }) {
  const [head, ...rows] = table.children;
  const cells = (kind: 'th' | 'td', row: Table['children'][number] | undefined): ReactNode =>
    row?.children.map((cell, column) =>
      createElement(
        kind,
        {
          key: column,
          className: alignment(table.align?.[column]),
          ...(kind === 'th' ? { scope: 'col' } : {}),
        },
        markdownElements(cell.children, reading),
      ),
    );
  return (
    <table className="data">
      <thead>
        <tr>{cells('th', head)}</tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no other identity than their order
          <tr key={index}>{cells('td', row)}</tr>
        ))}
      </tbody>
    </table>
  );
}

function alignment(align: 'left' | 'right' | 'center' | null | undefined): string | undefined {
  return align === 'right' ? 'number' : align === 'center' ? 'centred' : undefined;
}
