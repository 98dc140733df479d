/** A page as the test writes it. */
export interface SmallPage {
  readonly title: string;
  /** Shown on the page. */
  readonly text?: string;
  /** Main headings, each an entry of the outline; the first has the others below it unless `flat`. */
  readonly headings?: readonly string[];
  readonly flat?: boolean;
  /** Headings of the page itself, where they are told: the file does not hold them. */
  readonly ownHeadings?: readonly (readonly string[])[];
  /** Addresses of links, or `#name` for a place on the page itself. */
  readonly links?: readonly string[];
  /** Names of places on the page. */
  readonly anchors?: readonly string[];
  /** Name of a table's heading cell that another cell names. */
  readonly cell?: string;
  /** The key of the first link: Chromium 147 counts them from 100000 on. */
  readonly firstKey?: number;
}

/**
 * A tagged PDF of one sheet in the form that Chromium writes (Skia's, seen in Chromium 147 and 156), by hand: it shares
 * no code with what reads and writes PDFs in the kit.
 */
export function writeSmallPdf(page: SmallPage): Uint8Array {
  const { title, text = 'Words', headings = [], flat = false, links = [], anchors = [], cell, firstKey = 1 } = page;
  const content = `BT /P <</MCID 0>> BDC /F1 12 Tf 72 720 Td (${text}) Tj EMC ET`;
  const linkNumber = (index: number) => 30 + index;
  const entryNumber = (index: number) => 60 + index;
  const objects = new Map<number, string>([
    [
      1,
      `<</Title (${title})\n/Creator (Mozilla/5.0 \\(Somewhere\\))\n/Producer (Skia/PDF m156)\n/CreationDate (D:20260727090000+00'00')>>`,
    ],
    [
      2,
      `<</Type /Page /MediaBox [0 0 594.95996 841.91998] /Parent 3 0 R /StructParents 0 /Tabs /S
/Resources <</Font <</F1 5 0 R>>>> /Contents 4 0 R /Annots [${links.map((_, i) => `${linkNumber(i)} 0 R`).join(' ')}]>>`,
    ],
    [3, '<</Type /Pages /Count 1 /Kids [2 0 R]>>'],
    [4, `<</Length ${content.length}>> stream\n${content}\nendstream`],
    [5, '<</Type /Font /Subtype /Type1 /BaseFont /Helvetica>>'],
    [6, `<<${anchors.map((name) => `/${name} [2 0 R /XYZ 0 700 0]`).join('\n')}>>`],
    [
      7,
      `<</Type /StructTreeRoot /K 8 0 R /ParentTreeNextKey 1 /ParentTree 9 0 R${cell === undefined ? '' : ' /IDTree 14 0 R'}>>`,
    ],
    [
      8,
      `<</Type /StructElem /S /Document /Lang (en) /P 7 0 R /K [10 0 R 11 0 R${links.map((_, i) => ` ${linkNumber(i) + 10} 0 R`).join('')}]>>`,
    ],
    [
      9,
      `<</Type /ParentTree /Nums [0 [10 0 R]${links.map((_, i) => ` ${i + firstKey} ${linkNumber(i) + 10} 0 R`).join('')}]>>`,
    ],
    [10, '<</Type /StructElem /S /Strong /P 8 0 R /Pg 2 0 R /K 0>>'],
    [11, `<</Type /StructElem /S /TR /P 8 0 R /K [12 0 R 13 0 R]>>`],
    [12, `<</Type /StructElem /S /TH /P 11 0 R${cell === undefined ? '' : ` /ID (${cell})`}>>`],
    [13, `<</Type /StructElem /S /TD /P 11 0 R /A [<</O /Table /Headers [(${cell ?? ''})]>>]>>`],
    [
      20,
      `<</Type /Catalog /Pages 3 0 R /Dests 6 0 R /MarkInfo <</Marked true>> /StructTreeRoot 7 0 R /Lang (en)${headings.length === 0 ? '' : ' /Outlines 59 0 R'}>>`,
    ],
  ]);
  if (cell !== undefined) objects.set(14, `<</Limits [(${cell}) (${cell})] /Names [(${cell}) 12 0 R]>>`);
  for (const [i, address] of links.entries()) {
    const leads = address.startsWith('#')
      ? `/Dest /${address.slice(1)}`
      : `/A <</Type /Action /S /URI /URI (${address})>>`;
    objects.set(
      linkNumber(i),
      `<</Type /Annot /Subtype /Link /F 4 /Rect [72 700 200 712] ${leads} /StructParent ${i + firstKey}>>`,
    );
    objects.set(
      linkNumber(i) + 10,
      `<</Type /StructElem /S /Link /P 8 0 R /K [<</Type /OBJR /Obj ${linkNumber(i)} 0 R /Pg 2 0 R>>]>>`,
    );
  }
  if (headings.length > 0) addOutline(objects, headings, flat, entryNumber);
  return writeFile(objects);
}

function addOutline(
  objects: Map<number, string>,
  headings: readonly string[],
  flat: boolean,
  numberOf: (index: number) => number,
): void {
  const last = headings.length - 1;
  const [below, top] = flat ? [0, last] : [last, 0];
  objects.set(59, `<</Type /Outlines /First ${numberOf(0)} 0 R /Last ${numberOf(top)} 0 R /Count ${headings.length}>>`);
  for (const [index, heading] of headings.entries()) {
    const isBelow = !flat && index > 0;
    const siblings = { from: isBelow ? 1 : 0, to: isBelow || flat ? last : 0 };
    objects.set(
      numberOf(index),
      [
        `<</Title (${heading}) /Parent ${isBelow ? numberOf(0) : 59} 0 R /Dest [2 0 R /XYZ 0 600 0]`,
        index > siblings.from ? `/Prev ${numberOf(index - 1)} 0 R` : '',
        index < siblings.to ? `/Next ${numberOf(index + 1)} 0 R` : '',
        index === 0 && below > 0 ? `/First ${numberOf(1)} 0 R /Last ${numberOf(last)} 0 R /Count ${below}` : '',
        '>>',
      ].join(' '),
    );
  }
}

/** A file with a table of its objects; numbers may be left out. */
export function writeFile(objects: ReadonlyMap<number, string>, trailer = '/Root 20 0 R /Info 1 0 R'): Uint8Array {
  let file = '%PDF-1.4\n%\u00d3\u00eb\u00e9\u00e1\n';
  const offsets = new Map<number, number>();
  for (const [number, value] of objects) {
    offsets.set(number, file.length);
    file += `${number} 0 obj\n${value}\nendobj\n`;
  }
  const size = Math.max(...objects.keys()) + 1;
  const lines = Array.from({ length: size }, (_, number) => {
    const offset = offsets.get(number);
    return offset === undefined ? '0000000000 65535 f \n' : `${String(offset).padStart(10, '0')} 00000 n \n`;
  });
  const table = file.length;
  file += `xref\n0 ${size}\n${lines.join('')}trailer\n<</Size ${size}\n${trailer}>>\nstartxref\n${table}\n%%EOF\n`;
  return Uint8Array.from(file, (letter) => letter.charCodeAt(0));
}
