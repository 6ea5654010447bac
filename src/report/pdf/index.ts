/**
 * The way of a report to paper. A door of its own beside `report/index.ts`, so that the window loads the PDF
 * library in the worker that draws reports and nowhere else.
 */
export { type RenderOptions, renderPdf } from './render.ts';
