/** A drawing of `report/` as elements of the page. */
import { createElement, type ReactNode } from 'react';
import { type Drawing, drawingToSvg, type SvgElement } from '../../report/index.ts';

export function DrawingView({ drawing }: { drawing: Drawing }) {
  return toElement(drawingToSvg(drawing), 0);
}

function toElement(node: SvgElement | string, key: number): ReactNode {
  if (typeof node === 'string') return node;
  return createElement(node.tag, { ...node.attributes, key }, ...node.children.map(toElement));
}
