/** Look of the printed sheet: black on white, large enough for arm's length, sections on pages of their own. */
import type { PaperSize } from '../../draw/paper-sizes.ts';
import { ROOM } from './diagram.ts';

const PAGES: Readonly<Record<PaperSize, string>> = {
  a4: 'A4',
  a3: 'A3',
  letter: 'letter',
  tabloid: '11in 17in',
};

/** `band` is one of the fixed texts of a failed plan, or empty; it is printed in the margin of every page. */
export function styleFor(size: PaperSize, band: string): string {
  const paper = PAGES[size];
  const top = band === '' ? '' : `@top-center { content: "${band}"; font: bold 10pt sans-serif; }`;
  const foot =
    '@bottom-left { content: "A check of a plan, not an approval"; font: 8pt sans-serif; } @bottom-right { content: counter(page) " of " counter(pages); font: 8pt sans-serif; }';
  return `
@page { size: ${paper} portrait; margin: 16mm 12mm 14mm; ${top} ${foot} }
@page across { size: ${paper} landscape; margin: 14mm 12mm; ${top} ${foot} }
* { box-sizing: border-box; }
body { font: 11pt/1.35 system-ui, sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 190mm; padding: 4mm; }
section { break-before: page; }
section.first, section.sign, section.short, section.follows { break-before: auto; }
section.short { break-inside: avoid; }
section.sign { break-inside: avoid; margin-top: 8mm; }
.across { page: across; }
.diagram svg { display: block; width: 100%; max-height: ${ROOM[size].up.height}mm; }
.across svg { max-height: ${ROOM[size].across.height}mm; }
h1 { font-size: 18pt; margin: 0 0 1mm; }
h2 { font-size: 14pt; margin: 5mm 0 2mm; break-after: avoid; }
h3 { font-size: 12pt; margin: 4mm 0 1mm; break-after: avoid; }
h3 + p, h3 + ul, h3 + ul > li, .look, thead { break-after: avoid; }
h3 + ul { break-inside: avoid; }
p { margin: 1mm 0 2mm; }
.file { font-size: 10pt; }
.verdict { font-size: 13pt; font-weight: bold; border: 2pt solid #000; padding: 2mm 3mm; }
.fail, .band { border: 3pt double #000; }
.band { font-weight: bold; text-align: center; padding: 1.5mm; margin: 0 0 3mm; }
.frame { border: 1pt solid #000; padding: 2mm 3mm; }
ul { margin: 1mm 0; padding-left: 6mm; }
li { margin-bottom: 1mm; break-inside: avoid; }
.findings, .cautions { list-style: none; padding-left: 0; }
table { border-collapse: collapse; width: calc(100% - 1mm); margin: 1mm 0 3mm; font-size: 10.5pt; }
th, td { border: 0.5pt solid #000; padding: 0.8mm 1.5mm; text-align: left; vertical-align: top; overflow-wrap: break-word; }
thead { display: table-header-group; }
tr, tbody { break-inside: avoid; }
.wires tbody, .cuts tbody, .goods tbody, .questions tbody, .look tbody, .narrow tbody { break-inside: auto; }
table:not([class]) tbody { break-inside: auto; }
.diagram p { font-size: 9pt; }
.labels li { margin-bottom: 0.3mm; }
.narrow { font-size: 8pt; }
.wires { font-size: 9pt; }
.wires td, .cuts td, .readings td, .goods td:nth-child(4) { overflow-wrap: anywhere; }
.wires th:nth-child(3), .wires th:nth-child(4) { width: 32mm; min-width: 32mm; }
.wires th:nth-child(8) { min-width: 12mm; }
.readings th:nth-child(2), .readings th:nth-child(3), .goods th:nth-child(4) { min-width: 26mm; }
.labels { columns: 3; column-gap: 6mm; list-style: none; padding-left: 0; font-size: 10pt; overflow-wrap: anywhere; }
td:first-child, .readings td, .wires td { hyphens: manual; }
.readings td:first-child, .readings td:nth-child(4), .wires td:nth-child(2), .wires td:nth-child(6), .wires td:nth-child(7), .cuts td:nth-child(-n+3), .goods td:nth-child(2), .questions td:nth-child(2) { white-space: nowrap; }
.readings .wrong td, .readings .wrong td:nth-child(2) { white-space: normal; }
.tick { width: 7mm; }
.tick span { display: inline-block; width: 4mm; height: 4mm; border: 1pt solid #000; }
.readings th:nth-child(5) { width: 29mm; min-width: 29mm; }
.readings th:nth-child(6) { width: 36mm; min-width: 36mm; }
.readings th:nth-child(7), .readings .blank { width: 25mm; min-width: 25mm; }
.readings tr:first-child td { font-weight: bold; border-top-width: 1.2pt; }
.readings .wrong td { font-size: 9.5pt; border-top: none; }
.signs th { width: 60mm; font-weight: normal; height: 11mm; vertical-align: bottom; }
@media screen { section { margin-bottom: 10mm; } }
@media print { body { max-width: none; padding: 0; } .band { display: none; } .first .band { display: block; } }
`;
}
