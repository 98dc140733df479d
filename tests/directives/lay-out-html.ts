const BLOCKS =
  /^(?:address|article|aside|blockquote|div|dl|figure|footer|h[1-6]|header|hr|li|main|nav|ol|p|pre|section|svg|table|tbody|td|th|thead|tr|ul)$/;
const EMPTY = /^(?:br|hr|img|input|meta)$/;

/**
 * HTML of one of our pages with each block on a line of its own, so that a difference can be read. Words and attributes
 * stay as they are; only white space at the ends of lines goes, and what is drawn inside an SVG picture, which has tests
 * of its own: its title stays.
 */
export function layOutHtml(html: string): string {
  const lines: string[] = [];
  let line = '';
  let depth = 0;
  const breakLine = () => {
    if (line.trim() !== '') lines.push(`${' '.repeat(depth)}${line.trim()}`);
    line = '';
  };
  for (const [piece, closing, name = ''] of leaveOutDrawings(html).matchAll(/<(\/?)([a-zA-Z0-9]+)[^>]*>|[^<]+/g)) {
    const block = BLOCKS.test(name);
    if (block && closing === '') {
      breakLine();
      line = piece;
      if (EMPTY.test(name)) breakLine();
      else {
        breakLine();
        depth += 1;
      }
    } else if (block) {
      breakLine();
      depth -= 1;
      line = piece;
      breakLine();
    } else line += piece.replaceAll('\n', ' ');
  }
  breakLine();
  return joinShort(`${lines.join('\n')}\n`);
}

/** A block with one line in it that opens no other block stands on one line. */
function joinShort(text: string): string {
  return text.replace(/^( *)(<([a-z0-9]+)\b[^>]*>)\n +(\S.*)\n\1(<\/\3>)$/gm, '$1$2$4$5');
}

function leaveOutDrawings(html: string): string {
  return html.replace(/(<svg[^>]*>)(.*?)<\/svg>/gs, (_, open: string, drawn: string) => {
    const title = /<title[^>]*>.*?<\/title>/s.exec(drawn)?.[0] ?? '';
    return `${open.replace(/ (?:viewBox|width|height|class)="[^"]*"/g, '')}${title}…</svg>`;
  });
}
