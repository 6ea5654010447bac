/** An equation or a symbol, typeset, at the size of the text around it. */
import { equationDrawing, linearEquation } from '../../report/index.ts';
import { DrawingView } from './drawing-view.tsx';

const SIZE = 11; // the drawing's own type size; the page scales it to its text

export function EquationView({
  tex,
  label,
  inline = false,
}: {
  tex: string;
  label: string;
  inline?: boolean;
}) {
  const drawing = equationDrawing(tex, SIZE);
  if (!drawing) return <span className={inline ? undefined : 'equation'}>{linearEquation(tex)}</span>;
  const scale = inline ? 1 : 1.3;
  return (
    <span
      className={inline ? 'symbol' : 'equation'}
      style={{
        width: `${(scale * drawing.width) / SIZE}em`,
        ...(inline ? { verticalAlign: `${(drawing.baseline - drawing.height) / SIZE}em` } : {}),
      }}
    >
      <DrawingView drawing={{ ...drawing, title: label, description: linearEquation(tex) }} />
    </span>
  );
}
