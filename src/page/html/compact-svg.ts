/** The drawing's SVG in fewer letters: what `page.css` says as well is left out, and lines are told by how far they go. */

/** Attributes of every figure; `page.css` has them as rules. Its plain strokes have a class that no rule asks for. */
const PEN =
  ' stroke="currentColor" fill="none" stroke-width="1.5" stroke-linecap="round" stroke-linejoin="round"';
/** Of what is filled and of signs, by their class. */
const FILLED = / class="([ft])" fill="currentColor" stroke="none"/g;

/** Strokes that are drawn alike so many times, and take so many letters, stand once. */
const OFTEN = 20;
const LONG = 30;
const WORDS = '<g class="words"';

/**
 * Draws the same where the rules of `page.css` hold. Coordinates have two decimals at most. `name` keeps what two drawings of a
 * page use of their own apart.
 */
export function compactSvg(svg: string, name = ''): string {
  const short = dotsOnce(usualWords(svg))
    .replaceAll(PEN, '')
    .replace(/ data-way="([^".]*)\.([^" ]*) \1\.([^"]*)"/g, ' data-way="$2 $3"')
    .replaceAll(BOLD, ' class="n"')
    .replaceAll(' class="s"', '')
    .replace(/ data-(?:terminal|symbol)="[^"]*"/g, '')
    .replace(FILLED, ' class="$1"')
    .replace(
      / d="(M[-\d. ]+(?:L[-\d. ]+)+)(Z?)"/g,
      (_, points: string, end: string) => ` d="${steps(points)}${end}"`,
    );
  return strokesOnce(short, name).replace(ARM, '<use class="$1" href="$2"/>');
}

/** A coil, a load or a lamp: its own strokes show whether it is on. */
const SHOWING = /(<g class="(?:coil|load|lamp)"[^>]*>.*?<\/g>)/;
/** Strokes and marks in a row that nothing asks for by a name. */
const STROKES =
  /(?:<(?:path|circle|rect)(?: class="f"| (?!class|data|id)[a-z-]+="[^"]*")*\/>|<text(?: (?!class|data|id)[a-z-]+="[^"]*")*>[^<]*<\/text>)+/g;
/** An arm of a contact that is nothing but a use of one. */
const ARM = /<g class="(made|open)"><use href="([^"]*)"\/><\/g>/g;
/** Names of parts. */
const BOLD = ' font-size="12" font-weight="bold"';

/** Strokes that many symbols have alike, as `<use>` of one. */
function strokesOnce(svg: string, prefix: string): string {
  const [start, end] = [svg.indexOf('<g class="symbols"'), svg.lastIndexOf(WORDS)];
  const symbols = start < 0 ? svg : svg.slice(start, end < 0 ? undefined : end);
  const pieces = symbols.split(SHOWING);
  const times = new Map<string, number>();
  pieces.forEach((piece, i) => {
    if (i % 2 === 0)
      for (const [strokes] of piece.matchAll(STROKES)) times.set(strokes, (times.get(strokes) ?? 0) + 1);
  });
  const often = [...times].filter(([strokes, n]) => n >= OFTEN && strokes.length >= LONG);
  if (often.length === 0) return svg;
  const places = new Map(often.map(([strokes], i) => [strokes, `${prefix}s${i}`]));
  // No rule of `.figure` reaches what is used.
  const defs = often.map(
    ([strokes]) =>
      `<g id="${places.get(strokes)}">${strokes.replaceAll(' class="f"', ' fill="currentColor" stroke="none"')}</g>`,
  );
  const used = pieces.map((piece, i) =>
    i % 2 === 1
      ? piece
      : piece.replace(STROKES, (strokes) => {
          const id = places.get(strokes);
          return id === undefined ? strokes : `<use href="#${id}"/>`;
        }),
  );
  return `<defs>${defs.join('')}</defs>\n${svg.replace(symbols, () => used.join(''))}`;
}

/** The size that most words have stands once, at their group, which comes last in a drawing. */
function usualWords(svg: string): string {
  const start = svg.lastIndexOf(WORDS);
  if (start < 0) return svg;
  const words = svg.slice(start + WORDS.length);
  const times = new Map<string, number>();
  for (const [size] of words.matchAll(/ font-size="[\d.]+"(?! font-weight)/g))
    times.set(size, (times.get(size) ?? 0) + 1);
  const [usual] = [...times].reduce((most, one) => (one[1] > most[1] ? one : most), ['', 0]);
  return usual === ''
    ? svg
    : `${svg.slice(0, start)}${WORDS}${usual}${words.replaceAll(new RegExp(`${usual}(?! font-weight)`, 'g'), '')}`;
}

/** Dots as one stroke: a piece of no length with a round end is a dot. */
function dotsOnce(svg: string): string {
  return svg.replace(
    /<g class="dots"[^>]*>((?:<circle cx="[\d.]+" cy="[\d.]+" r="2.6"\/>)+)<\/g>/,
    (_, dots: string) => {
      const d = [...dots.matchAll(/cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => `M${x} ${y}h0`).join('');
      return `<path class="dots" fill="none" stroke="currentColor" stroke-width="5.2" stroke-linecap="round" d="${d}"/>`;
    },
  );
}

/** `M10 20L15 20L15 30` as `M10 20h5v10`. */
function steps(path: string): string {
  const points = path
    .slice(1)
    .split('L')
    .map((p) => p.split(' ').map((n) => Math.round(Number(n) * 100)) as [number, number]);
  let [x, y] = points[0]!;
  let told = `M${hundredths(x)} ${hundredths(y)}`;
  for (const [nextX, nextY] of points.slice(1)) {
    const [dx, dy] = [nextX - x, nextY - y];
    [x, y] = [nextX, nextY];
    // A step of no length is kept where the line would end without one: a round cap makes it a dot.
    if (dx === 0 && dy === 0 && points.length > 2) continue;
    if (dy === 0) told += `h${hundredths(dx)}`;
    else if (dx === 0) told += `v${hundredths(dy)}`;
    else told += `l${hundredths(dx)}${dy < 0 ? '' : ' '}${hundredths(dy)}`;
  }
  return told;
}

const hundredths = (n: number): string => String(n / 100);
