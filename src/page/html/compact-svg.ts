/** The drawing's SVG in fewer letters: what `page.css` says as well is left out, and lines are told by how far they go. */

/** Attributes of every figure; `page.css` has them as rules. Its plain strokes have a class that no rule asks for. */
const PEN =
  ' stroke="currentColor" fill="none" stroke-width="1.5" stroke-linecap="round" stroke-linejoin="round"';
/** Of what is filled and of signs, by their class. */
const FILLED = / class="([ft])" fill="currentColor" stroke="none"/g;

const OFTEN = 20;
const WORDS = '<g class="words"';
const SMALL = ' font-size="9"';

/** Draws the same where the rules of `page.css` hold. Coordinates have two decimals at most. */
export function compactSvg(svg: string): string {
  const short = smallWords(svg)
    .replaceAll(PEN, '')
    .replaceAll(' class="s"', '')
    .replace(FILLED, ' class="$1"')
    .replace(
      / d="(M[-\d. ]+(?:L[-\d. ]+)+)(Z?)"/g,
      (_, points: string, end: string) => ` d="${steps(points)}${end}"`,
    );
  return armsOnce(short);
}

/** Arms of contacts that are drawn alike many times, as `<use>` of one; those with a class of their own are left alone. */
function armsOnce(svg: string): string {
  const arm = /(<g class="(?:made|open)">)((?:<path(?: stroke-width="3")? d="[^"]*"\/>)+)(<\/g>)/g;
  const times = new Map<string, number>();
  for (const [, , inner] of svg.matchAll(arm)) times.set(inner!, (times.get(inner!) ?? 0) + 1);
  const often = [...times].filter(([, n]) => n >= OFTEN).map(([inner]) => inner);
  if (often.length === 0) return svg;
  const places = new Map(often.map((inner, i) => [inner, `arm-${i}`]));
  const defs = often.map((inner) => `<g id="${places.get(inner)}">${inner}</g>`).join('');
  const used = svg.replace(arm, (whole, open: string, inner: string, close: string) => {
    const id = places.get(inner);
    return id === undefined ? whole : `${open}<use href="#${id}"/>${close}`;
  });
  return `<defs>${defs}</defs>\n${used}`;
}

/** The size that most words have stands once, at their group, which comes last in a drawing. */
function smallWords(svg: string): string {
  const start = svg.lastIndexOf(WORDS);
  if (start < 0) return svg;
  const words = svg.slice(start + WORDS.length);
  return `${svg.slice(0, start)}${WORDS}${SMALL}${words.replaceAll(SMALL, '')}`;
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
