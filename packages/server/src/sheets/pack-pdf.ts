/**
 * The inspection pack as a PDF: black on white, text that can be selected, tagged for screen readers, a bookmark a part, pages numbered.
 *
 * Leaves out  letters outside Western European ones are written as "?": the page's typeface is one every reader has.
 */
import type { Pack, PackPart } from '@leywright/api';
import PDFDocument from 'pdfkit';

type Doc = InstanceType<typeof PDFDocument>;

const margin = 40;
const footPt = 28;
const cellGapPt = 8;
const rowGapPt = 4;
const sizes = { title: 20, head: 14, text: 9.5, cell: 8 } as const;

export function packPdf(pack: Pack, printedAt: string): Promise<Buffer> {
  const doc = new PDFDocument({
    size: 'A4',
    layout: 'landscape',
    margins: { top: margin, bottom: margin + footPt, left: margin, right: margin },
    bufferPages: true,
    pdfVersion: '1.7',
    subset: 'PDF/UA' as never,
    tagged: true,
    lang: 'en-GB',
    displayTitle: true,
    info: {
      Title: `Inspection pack ${pack.year}, ${pack.farm}`,
      Author: pack.farm,
      Subject: `As known on ${pack.knownOn}`,
    },
  } as PDFKit.PDFDocumentOptions);
  const done = new Promise<Buffer>((resolve, reject) => {
    const pieces: Buffer[] = [];
    doc.on('data', (piece: Buffer) => pieces.push(piece));
    doc.on('end', () => resolve(Buffer.concat(pieces)));
    doc.on('error', reject);
  });
  const root = doc.struct('Document');
  doc.addStructure(root);
  front(doc, root, pack);
  for (const part of pack.parts) writePart(doc, root, part);
  root.end();
  feet(doc, `${latin(pack.farm)}, ${pack.year}, as known on ${pack.knownOn}. Printed ${printedAt}`);
  doc.end();
  return done;
}

type Struct = ReturnType<Doc['struct']>;

function tagged(doc: Doc, parent: Struct, { tag, write }: { readonly tag: string; readonly write: () => void }): void {
  const element = doc.struct(tag as never, {}, write);
  parent.add(element);
  element.end();
}

function front(doc: Doc, root: Struct, pack: Pack): void {
  tagged(doc, root, {
    tag: 'H1',
    write: () =>
      doc
        .font('Helvetica-Bold')
        .fontSize(sizes.title)
        .text(`Inspection pack ${pack.year}: ${latin(pack.farm)}`),
  });
  const sample = pack.sample ? ' This is the sample farm; all of it is invented.' : '';
  const words = `As known on ${pack.knownOn}.${sample} Fourteen parts; the last column of a line is the id of its record in the book. Households are not part of it. What nobody recorded reads "not recorded" or "unknown".`;
  tagged(doc, root, { tag: 'P', write: () => doc.font('Helvetica').fontSize(sizes.text).text(words) });
  doc.moveDown(1);
}

function writePart(doc: Doc, root: Struct, part: PackPart): void {
  if (part.number > 1) doc.addPage();
  const title = `${part.number}  ${part.title}`;
  doc.outline.addItem(title);
  const section = doc.struct('Sect');
  root.add(section);
  tagged(doc, section, {
    tag: 'H2',
    write: () => doc.font('Helvetica-Bold').fontSize(sizes.head).text(latin(title), margin),
  });
  tagged(doc, section, {
    tag: 'P',
    write: () =>
      doc
        .font('Helvetica')
        .fontSize(sizes.text)
        .text(latin(part.sentence), margin, doc.y + 2),
  });
  doc.moveDown(0.6);
  writeTable(doc, section, part);
  section.end();
}

function writeTable(doc: Doc, section: Struct, part: PackPart): void {
  const table = doc.struct('Table');
  section.add(table);
  const row = (cells: readonly string[], tag: 'TH' | 'TD') => writeRow(doc, { table, part, cells, tag });
  row(
    part.columns.map((column) => column.head),
    'TH',
  );
  for (const cells of part.rows) {
    if (doc.y + rowHeight(doc, part, cells) > doc.page.height - margin - footPt) {
      doc.addPage();
      // The heads again for the eye; readers have them already.
      const heads = part.columns.map((column) => column.head);
      row(heads, 'TH');
    }
    row(cells, 'TD');
  }
  if (part.rows.length === 0) {
    tagged(doc, section, {
      tag: 'P',
      write: () =>
        doc
          .font('Helvetica-Oblique')
          .fontSize(sizes.text)
          .text('No line.', margin, doc.y + rowGapPt),
    });
  }
  table.end();
}

const widthOf = (doc: Doc) => doc.page.width - 2 * margin;

function rowHeight(doc: Doc, part: PackPart, cells: readonly string[]): number {
  doc.font('Helvetica').fontSize(sizes.cell);
  const heights = part.columns.map((column, at) =>
    doc.heightOfString(latin(cells[at] ?? '') || ' ', { width: column.widthShare * widthOf(doc) - cellGapPt }),
  );
  const isForSigning = part.columns.some((column) => column.head === 'Signature');
  return Math.max(...heights, isForSigning ? 30 : 0) + rowGapPt;
}

interface RowParts {
  readonly table: Struct;
  readonly part: PackPart;
  readonly cells: readonly string[];
  readonly tag: 'TH' | 'TD';
}

function writeRow(doc: Doc, { table, part, cells, tag }: RowParts): void {
  const top = doc.y + rowGapPt / 2;
  const height = rowHeight(doc, part, cells);
  const line = doc.struct('TR');
  table.add(line);
  let left = margin;
  part.columns.forEach((column, at) => {
    const width = column.widthShare * widthOf(doc) - cellGapPt;
    const x = left;
    const align = column.isNumber === true ? ('right' as const) : ('left' as const);
    const font = tag === 'TH' ? 'Helvetica-Bold' : 'Helvetica';
    tagged(doc, line, {
      tag,
      write: () =>
        doc
          .font(font)
          .fontSize(sizes.cell)
          .text(latin(cells[at] ?? ''), x, top, { width, align }),
    });
    left += column.widthShare * widthOf(doc);
  });
  line.end();
  const below = top + height - rowGapPt;
  doc.markContent('Artifact', { type: 'Layout' } as never);
  doc
    .moveTo(margin, below)
    .lineTo(doc.page.width - margin, below)
    .lineWidth(tag === 'TH' ? 0.8 : 0.2)
    .stroke('black');
  doc.endMarkedContent();
  doc.x = margin;
  doc.y = top + height - rowGapPt / 2;
}

function feet(doc: Doc, words: string): void {
  const { start, count } = doc.bufferedPageRange();
  for (let at = start; at < start + count; at++) {
    doc.switchToPage(at);
    const top = doc.page.height - margin - 10;
    doc.page.margins.bottom = 0;
    doc.markContent('Artifact', { type: 'Pagination' } as never);
    doc
      .font('Helvetica')
      .fontSize(sizes.cell)
      .text(words, margin, top, { width: widthOf(doc) - 80, lineBreak: false });
    doc.text(`${at - start + 1} of ${count}`, doc.page.width - margin - 80, top, {
      width: 80,
      align: 'right',
      lineBreak: false,
    });
    doc.endMarkedContent();
  }
}

/** Letters the typeface has; dashes and quotation marks as they are meant. */
function latin(text: string): string {
  return text
    .replace(/[‐‑−]/g, '-')
    .replace(/₂/g, '2')
    .replace(/≤/g, 'at most ')
    .replace(/≥/g, 'at least ')
    .replace(/[^\u0020-\u007e\u00a0-\u00ff–—‘’“”•…€]/g, '?');
}
