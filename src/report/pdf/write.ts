/**
 * The one file that knows the PDF library: pages of operators, structure tree, outline, fonts, pictures and metadata
 * become a file. The same input gives the same bytes: nothing here asks for the time or for chance.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import {
  type PDFContext,
  type PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  type PDFPage,
  type PDFRef,
  PDFString,
} from 'pdf-lib';
import { ProblemError } from '../../quantity/index.ts';
import type { Face } from '../fonts.ts';
import { type Canvas, FONT_NAMES, type Typefaces } from './canvas.ts';
import { srgbProfile } from './colour-profile.ts';
import { type Metadata, xmpPacket } from './metadata.ts';
import { type OutlineEntry, outlineTree } from './outline.ts';
import { StructureElement } from './structure.ts';
import type { Typeface } from './typeface.ts';

export interface FilePicture {
  readonly name: string;
  /** What people call it, for a message. */
  readonly title: string;
  readonly bytes: Uint8Array;
  readonly mediaType: 'image/png' | 'image/jpeg';
}

export interface FileParts {
  readonly canvases: readonly Canvas[];
  readonly faces: Typefaces;
  readonly structure: StructureElement;
  readonly outline: readonly OutlineEntry[];
  readonly pictures: readonly FilePicture[];
  readonly metadata: Metadata;
}

/** @throws ProblemError `report.unreadable-picture` for one whose outside is sound and whose inside is not */
export async function writeFile(parts: FileParts): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const { context } = document;
  const fonts = context.register(
    context.obj(
      Object.fromEntries(
        (Object.entries(parts.faces) as [Face, Typeface][])
          .filter(([, face]) => face.glyphs().length > 0)
          .map(([name, face]) => [FONT_NAMES[name], writeFont(context, face)]),
      ),
    ),
  );
  const pictures = await embedPictures(document, parts.pictures);
  const pages = parts.canvases.map((canvas) => writePage(document, canvas, fonts, pictures));
  writeStructure(document, parts, pages);
  writeOutline(document, parts, pages);
  writeMetadata(document, parts);
  await document.flush();
  return document.save({
    useObjectStreams: true,
    addDefaultPage: false,
    updateFieldAppearances: false,
    objectsPerTick: Number.POSITIVE_INFINITY,
  });
}

function writePage(
  document: PDFDocument,
  canvas: Canvas,
  fonts: PDFRef,
  pictures: ReadonlyMap<string, PDFRef>,
): PDFPage {
  const { context } = document;
  const page = document.addPage([canvas.width, canvas.height]);
  const used = [...canvas.pictures].flatMap((name) => {
    const ref = pictures.get(name);
    return ref ? [[name, ref] as const] : [];
  });
  page.node.set(PDFName.of('Contents'), context.register(context.flateStream(canvas.content())));
  page.node.set(
    PDFName.of('Resources'),
    context.obj({ Font: fonts, ...(used.length > 0 ? { XObject: Object.fromEntries(used) } : {}) }),
  );
  page.node.set(PDFName.of('StructParents'), context.obj(canvas.page));
  page.node.set(PDFName.of('Tabs'), PDFName.of('S'));
  return page;
}

async function embedPictures(
  document: PDFDocument,
  pictures: readonly FilePicture[],
): Promise<Map<string, PDFRef>> {
  const refs = new Map<string, PDFRef>();
  for (const { name, title, bytes, mediaType } of pictures) {
    try {
      const image =
        mediaType === 'image/png' ? await document.embedPng(bytes) : await document.embedJpg(bytes);
      await image.embed();
      refs.set(name, image.ref);
    } catch (error) {
      const detail = `its content is damaged (${error instanceof Error ? error.message : String(error)})`;
      throw new ProblemError({ code: 'report.unreadable-picture', place: title, figures: { detail } });
    }
  }
  return refs;
}

/** A composite font of the glyphs used, with the way back from glyphs to text. */
function writeFont(context: PDFContext, face: Typeface): PDFRef {
  const glyphs = face.glyphs();
  const file = face.file();
  const name = `${subsetTag(file)}+${face.name}`;
  const descriptor = context.register(
    context.obj({
      Type: 'FontDescriptor',
      FontName: name,
      Flags: 4 + (face.italicAngle === 0 ? 0 : 64), // symbolic: glyphs are addressed by number
      FontBBox: [...face.box],
      ItalicAngle: face.italicAngle,
      Ascent: face.ascent,
      Descent: face.descent,
      CapHeight: face.capHeight,
      XHeight: face.xHeight,
      StemV: 80,
      FontFile2: context.register(context.flateStream(file, { Length1: file.length })),
    }),
  );
  const widths: (number | number[])[] = [];
  let last = Number.NaN;
  for (const { code, width } of glyphs) {
    if (code === last + 1) (widths.at(-1) as number[]).push(width);
    else widths.push(code, [width]);
    last = code;
  }
  const descendant = context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'CIDFontType2',
      BaseFont: name,
      CIDToGIDMap: 'Identity',
      CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
      FontDescriptor: descriptor,
      DW: 1000,
      W: widths,
    }),
  );
  return context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'Type0',
      BaseFont: name,
      Encoding: 'Identity-H',
      DescendantFonts: [descendant],
      ToUnicode: context.register(context.flateStream(toUnicode(glyphs))),
    }),
  );
}

/** Six letters that tell one subset from another (ISO 32000-1 9.6.4), from the subset itself. */
function subsetTag(file: Uint8Array): string {
  return [...sha256(file).subarray(0, 6)].map((byte) => String.fromCharCode(65 + (byte % 26))).join('');
}

function toUnicode(glyphs: ReturnType<Typeface['glyphs']>): string {
  const hex = (value: number): string => value.toString(16).padStart(4, '0');
  const rows = glyphs.map(({ code, unicode }) => {
    const units = Array.from({ length: unicode.length }, (_, i) => hex(unicode.charCodeAt(i))).join('');
    return `<${hex(code)}> <${units}>`;
  });
  const sections: string[] = [];
  for (let i = 0; i < rows.length; i += 100) {
    const section = rows.slice(i, i + 100);
    sections.push(`${section.length} beginbfchar\n${section.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange
${sections.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}

function writeStructure(document: PDFDocument, parts: FileParts, pages: readonly PDFPage[]): void {
  const { context, catalog } = document;
  const root = context.obj({ Type: 'StructTreeRoot' }) as PDFDict;
  const rootRef = context.register(root);
  const refs = new Map<StructureElement, PDFRef>();

  const write = (element: StructureElement, parent: PDFRef): PDFRef => {
    const ref = context.nextRef();
    refs.set(element, ref);
    const home = element.children.find((child) => !(child instanceof StructureElement));
    const homePage = home && !(home instanceof StructureElement) ? home.page : undefined;
    const children = element.children
      .filter((child) => !(child instanceof StructureElement) || hasContent(child))
      .map((child) =>
        child instanceof StructureElement
          ? write(child, ref)
          : child.page === homePage
            ? context.obj(child.mark)
            : context.obj({ Type: 'MCR', Pg: pages[child.page]?.ref, MCID: child.mark }),
      );
    const { alternate, scope, numbering } = element.attributes;
    const attributes = [
      ...(scope ? [{ O: 'Table', Scope: scope }] : []),
      ...(numbering ? [{ O: 'List', ListNumbering: numbering }] : []),
      ...(element.box ? [{ O: 'Layout', Placement: element.placement, BBox: [...element.box] }] : []),
    ];
    const dict = context.obj({
      Type: 'StructElem',
      S: element.role,
      P: parent,
      K: children,
      ...(homePage === undefined ? {} : { Pg: pages[homePage]?.ref }),
      ...(alternate === undefined ? {} : { Alt: PDFHexString.fromText(alternate) }),
      ...(attributes.length > 0 ? { A: attributes } : {}),
    });
    context.assign(ref, dict);
    return ref;
  };
  const top = write(parts.structure, rootRef);
  const numbers = parts.canvases.flatMap((canvas) => [
    context.obj(canvas.page),
    context.register(
      context.obj(
        canvas.marks.flatMap((element) => {
          const ref = refs.get(element);
          return ref ? [ref] : [];
        }),
      ),
    ),
  ]);
  root.set(PDFName.of('K'), context.obj([top]));
  root.set(PDFName.of('ParentTree'), context.register(context.obj({ Nums: numbers })));
  root.set(PDFName.of('ParentTreeNextKey'), context.obj(parts.canvases.length));
  catalog.set(PDFName.of('StructTreeRoot'), rootRef);
  catalog.set(PDFName.of('MarkInfo'), context.obj({ Marked: true }));
}

/** An element that nothing was drawn for (an empty cell apart) would only confuse a reader of the tree. */
function hasContent(element: StructureElement): boolean {
  return (
    element.role === 'TD' ||
    element.role === 'TH' ||
    element.children.some((child) => !(child instanceof StructureElement) || hasContent(child))
  );
}

function writeOutline(document: PDFDocument, parts: FileParts, pages: readonly PDFPage[]): void {
  const { context, catalog } = document;
  const tree = outlineTree(parts.outline);
  if (tree.length === 0) return;
  type Node = (typeof tree)[number];
  const write = (nodes: readonly Node[], parent: PDFRef): { first: PDFRef; last: PDFRef; count: number } => {
    const refs = nodes.map(() => context.nextRef());
    let count = 0;
    nodes.forEach((node, index) => {
      const ref = refs[index] ?? parent;
      const inside = node.children.length > 0 ? write(node.children, ref) : undefined;
      count += 1 + (inside?.count ?? 0);
      const { text, page, top } = node.entry;
      const target = pages[page];
      context.assign(
        ref,
        context.obj({
          Title: PDFHexString.fromText(text),
          Parent: parent,
          ...(index > 0 ? { Prev: refs[index - 1] } : {}),
          ...(index < nodes.length - 1 ? { Next: refs[index + 1] } : {}),
          ...(inside ? { First: inside.first, Last: inside.last, Count: inside.count } : {}),
          Dest: [target?.ref ?? null, 'XYZ', null, (parts.canvases[page]?.height ?? 0) - top + 4, null],
        }),
      );
    });
    return { first: refs[0] ?? parent, last: refs.at(-1) ?? parent, count };
  };
  const ref = context.nextRef();
  const { first, last, count } = write(tree, ref);
  context.assign(ref, context.obj({ Type: 'Outlines', First: first, Last: last, Count: count }));
  catalog.set(PDFName.of('Outlines'), ref);
  catalog.set(PDFName.of('PageMode'), PDFName.of('UseOutlines'));
}

function writeMetadata(document: PDFDocument, parts: FileParts): void {
  const { context, catalog } = document;
  const { metadata } = parts;
  const text = (value: string): PDFHexString => PDFHexString.fromText(value);
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: text(metadata.title),
      Author: text(metadata.author),
      Subject: text(metadata.subject),
      Creator: text(metadata.producer),
      Producer: text(metadata.producer),
      CreationDate: PDFString.of(metadata.created.pdf),
      ModDate: PDFString.of(metadata.created.pdf),
    }),
  );
  const packet = context.stream(utf8ToBytes(xmpPacket(metadata)), { Type: 'Metadata', Subtype: 'XML' });
  catalog.set(PDFName.of('Metadata'), context.register(packet));
  catalog.set(PDFName.of('Lang'), PDFString.of(metadata.language));
  catalog.set(PDFName.of('ViewerPreferences'), context.obj({ DisplayDocTitle: true }));
  const profile = context.register(context.flateStream(srgbProfile(), { N: 3 }));
  catalog.set(
    PDFName.of('OutputIntents'),
    context.obj([
      {
        Type: 'OutputIntent',
        S: 'GTS_PDFA1',
        OutputConditionIdentifier: PDFString.of('sRGB IEC61966-2.1'),
        Info: PDFString.of('sRGB IEC61966-2.1'),
        DestOutputProfile: profile,
      },
    ]),
  );
  const id = PDFHexString.of(contentHash(parts));
  context.trailerInfo.ID = context.obj([id, id]);
}

/** Identity of the file: 32 hexadecimal digits of the hash over everything that is drawn or said in it. */
function contentHash(parts: FileParts): string {
  const hash = sha256.create();
  hash.update(utf8ToBytes(xmpPacket(parts.metadata)));
  for (const canvas of parts.canvases) hash.update(utf8ToBytes(canvas.content()));
  for (const { bytes } of parts.pictures) hash.update(bytes);
  return bytesToHex(hash.digest()).slice(0, 32);
}
