/** Text from a plan on its way into SVG or HTML: it can end no attribute, open no element, and break no parser. */
import { printable } from './escape.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** What production [2] `Char` of XML 1.0 leaves out, once controls and lone surrogates are gone: U+FFFE and U+FFFF. */
const NOT_XML = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

/** One line of text, fit for the content of an element and for an attribute in either kind of quotes. */
export function xml(text: string): string {
  return printable(text)
    .replace(NOT_XML, '\ufffd')
    .replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '');
}
