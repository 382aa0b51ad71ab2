/** Look of the printed sheet: black on white, one family of type in three sizes; sections follow each other on the pages. */
import type { PaperSize } from '../../draw/paper-sizes.ts';
import { ROOM } from './diagram.ts';

const PAGES: Readonly<Record<PaperSize, string>> = {
  a4: 'A4',
  a3: 'A3',
  letter: 'letter',
  tabloid: '11in 17in',
};

const FAMILY = "'Liberation Sans', Arial, Helvetica, sans-serif";
/** The three sizes: of the title, of headings and the verdict, of everything else. */
const SIZES = { title: '16pt', head: '12pt', text: '9pt' } as const;

/** What holds for pages and their margins; `band` is printed in the margin of every page. */
function pages(size: PaperSize, band: string): string {
  const type = `${SIZES.text} ${FAMILY}`;
  const top = band === '' ? '' : `@top-center { content: "${band}"; font: bold ${type}; }`;
  const foot = `@bottom-left { content: "A check of a plan, not an approval"; font: ${type}; } @bottom-right { content: counter(page) " of " counter(pages); font: ${type}; }`;
  return `
@page { size: ${PAGES[size]} portrait; margin: 13mm 12mm 12mm; ${top} ${foot} }
@page across { size: ${PAGES[size]} landscape; margin: 14mm 12mm; ${top} ${foot} }
.across { page: across; }
.ladder { display: block; width: 100%; max-height: ${ROOM[size].up.height}mm; }
.across .ladder { max-height: ${ROOM[size].across.height}mm; }
.map { display: block; max-width: 100%; break-inside: avoid; }`;
}

const TEXT = `
* { box-sizing: border-box; }
body { font: ${SIZES.text}/1.26 ${FAMILY}; color: #000; background: #fff; margin: 0 auto; max-width: 190mm; padding: 4mm; print-color-adjust: exact; }
h1 { font-size: ${SIZES.title}; line-height: 1.15; margin: 0 0 1mm; }
h2 { font-size: ${SIZES.head}; margin: 4mm 0 1.2mm; padding-bottom: 0.5mm; border-bottom: 1.2pt solid #000; break-after: avoid; }
h3, h4 { font-size: ${SIZES.text}; margin: 2.5mm 0 1mm; break-after: avoid; }
h2 + p, h3 + p, h4 + p, h3 + ul, h4 + ul, .look, thead { break-after: avoid; }
section > :last-child { break-after: auto; }
h3 + ul, h4 + ul, p { break-inside: avoid; }
p { margin: 1mm 0 1.5mm; }
.verdict { font-size: ${SIZES.head}; font-weight: bold; border: 2pt solid #000; padding: 1.5mm 3mm; }
.fail, .band { border: 3pt double #000; }
.band { font-weight: bold; text-align: center; padding: 1.5mm; margin: 0 0 3mm; }
.frame { border: 1pt solid #000; padding: 1mm 3mm; break-inside: avoid; }
ul { margin: 0.7mm 0; padding-left: 5mm; }
li { margin-bottom: 0.5mm; break-inside: avoid; }
.findings, .cautions, .methods { list-style: none; padding-left: 0; }
.cautions, .frame ul, .methods { columns: 2; column-gap: 6mm; }
.sign, .when { break-inside: avoid; }
.cutlist { columns: 2; column-gap: 6mm; }
.cutlist h2, .cutlist p { column-span: all; }
.wires + p, .methods { margin-top: 0; }`;

const TABLES = `
table { border-collapse: collapse; width: calc(100% - 1mm); margin: 1mm 0 2.5mm; }
th, td { border: 0.5pt solid #000; padding: 0.7mm 1.5mm; text-align: left; vertical-align: top; overflow-wrap: break-word; }
thead { display: table-header-group; }
thead th { border-bottom-width: 1.2pt; }
tr, tbody { break-inside: avoid; }
.goods tbody, .cuts tbody, .questions tbody, .look tbody, .grid tbody { break-inside: auto; }
table:not([class]) tbody { break-inside: auto; }
.above th { border-top-width: 1.2pt; }
.above { break-after: avoid; }
.above + tr { break-before: avoid; }
.wires td, .cuts td { padding-top: 1.1mm; padding-bottom: 1.1mm; }
.wires td, .cuts td, .readings td, .goods td:nth-child(4) { overflow-wrap: anywhere; }
.wires td:nth-child(2), .wires td:nth-child(5), .wires td:nth-child(7), .cuts td:nth-child(-n+3), .goods td:nth-child(2), .questions td:nth-child(2) { white-space: nowrap; }
.goods th:nth-child(4) { min-width: 26mm; }
td:first-child, .readings td, .wires td { hyphens: manual; }
.tick { width: 7mm; }
.tick span { display: inline-block; width: 3.6mm; height: 3.6mm; border: 1pt solid #000; }
.grid { width: auto; max-width: 100%; }
.grid td, .grid th { padding: 0.6mm 1.2mm; }
.grid td:not(:first-child):not(:last-child) { text-align: center; }
.upright thead th:not(:first-child):not(:last-child) { writing-mode: vertical-rl; vertical-align: bottom; padding: 1.2mm 0.4mm; }
.grid .at-work { background: #000; color: #fff; font-weight: bold; border-color: #777; }
.upright .at-work { color: #000; }
.readings td:first-child, .readings td:nth-child(4) { white-space: nowrap; }
.readings .wrong td, .readings .wrong td:nth-child(2) { white-space: normal; }
.readings th:nth-child(2), .readings th:nth-child(3) { width: 25mm; }
.readings th:first-child { width: 8mm; }
.readings th:nth-child(4) { width: 18mm; }
.readings th:nth-child(5) { width: 36mm; }
.readings th:nth-child(6) { width: 47mm; }
.readings th:nth-child(7) { width: 26mm; }
.readings .blank { border-width: 1.4pt; height: 7mm; }
.readings tr:first-child td { font-weight: bold; border-top-width: 1.2pt; }
.readings .wrong td { border-top: none; padding-top: 0.3mm; }
.signs th { width: 60mm; font-weight: normal; height: 10mm; vertical-align: bottom; }`;

/** Labels are of one size on every paper, so that they can be cut out; 36.5 mm are 1 7/16 in, 8 mm 5/16 in. */
const FIGURES = `
.pair { display: flex; flex-wrap: wrap; gap: 0 6mm; align-items: flex-start; }
.pair table { flex: none; }
.plots { display: flex; flex-wrap: wrap; gap: 0 4mm; flex: 1 1 90.5mm; }
.plots p { flex: 1 1 100%; }
figure { margin: 0; break-inside: avoid; }
.coil-volts { display: block; width: 90.5mm; height: auto; }
.labels { display: flex; flex-wrap: wrap; list-style: none; padding: 0; margin: 2mm 0; }
.labels li { width: 36.5mm; min-height: 8mm; margin: 0 -0.5pt -0.5pt 0; padding: 0.3mm 1mm; border: 0.5pt dashed #000; display: flex; align-items: center; overflow-wrap: anywhere; line-height: 1.05; }
.bar { display: inline-block; width: 50mm; height: 2.4mm; border: 1pt solid #000; border-top: none; }
.inches { width: 2in; }`;

/** `band` is one of the fixed texts of a failed plan, or empty. */
export function styleFor(size: PaperSize, band: string): string {
  return `${pages(size, band)}${TEXT}${TABLES}${FIGURES}
@media screen { section { margin-bottom: 10mm; } }
@media print { body { max-width: none; padding: 0; } .band { display: none; } .first .band { display: block; } }
`;
}
