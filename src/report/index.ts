/**
 * `report/`: pictures and reports as data, and their way to paper. `drawing/` lays pictures out into primitives that
 * the window draws as SVG and the report as PDF operators; `equation/` sets equations from a table of outlines made
 * in advance; `build/` turns records and assessments into drawings and documents; `pdf/`, a door of its own, lays a
 * document out on pages and writes the tagged file. No file, clock or typeface is read here: callers pass them in.
 */
export { drawsDrawing } from './build/draws-drawing.ts';
export { marginDrawing } from './build/margin-drawing.ts';
export type { ReportSource } from './build/report-source.ts';
export { revisionReport } from './build/revision-report.ts';
export { runReport } from './build/run-report.ts';
export { vehicleDrawing } from './build/vehicle-drawing.ts';
export {
  BAND_FACTOR,
  type MarginScaleInput,
  type MarginScaleOptions,
  marginScale,
} from './drawing/margin-scale.ts';
export type { Drawing, Ink, PathPrimitive, PathStep, Primitive, TextPrimitive } from './drawing/primitive.ts';
export { drawingToSvg, inkVariable, type SvgElement, svgText } from './drawing/to-svg.ts';
export type {
  Projection,
  VehicleViewInput,
  ViewBallastDrive,
  ViewBody,
  ViewCentre,
  ViewPart,
} from './drawing/vehicle.ts';
export { type VehicleViewOptions, vehicleView } from './drawing/vehicle-view.ts';
export { type VerdictWord, verdictMark } from './drawing/verdict-mark.ts';
export { type EquationDrawing, equationDrawing } from './equation/equation-drawing.ts';
export { linearEquation } from './equation/linear.ts';
export { type Face, type Fonts, fontFiles, fontPackage } from './fonts.ts';
export type {
  Block,
  Caution,
  Cell,
  Column,
  Equation,
  Heading,
  Illustration,
  Inline,
  List,
  Paragraph,
  Picture,
  ReportDocument,
  Rule,
  Table,
} from './tree.ts';
