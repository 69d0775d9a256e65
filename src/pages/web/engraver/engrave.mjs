// Reads excerpts in MusicXML from standard input and writes each as a drawing (SVG) to standard output. Both ways a text is its length in
// bytes on a line of its own, then its bytes; a drawing of length 0 stands for an excerpt that could not be engraved.
import { readFileSync, writeSync } from 'node:fs';
import createModule from 'verovio/wasm';
import { VerovioToolkit } from 'verovio/esm';

const toolkit = new VerovioToolkit(await createModule());
const input = readFileSync(0);

function send(text) {
  const bytes = Buffer.from(text, 'utf8');
  for (const part of [Buffer.from(`${bytes.length}\n`), bytes])
    for (let at = 0; at < part.length;) at += writeSync(1, part, at);
}

function engrave(xml) {
  toolkit.setOptions({
    adjustPageHeight: true, adjustPageWidth: true, breaks: 'auto', footer: 'none', header: 'none', justifyVertically: false,
    pageHeight: 60000, pageWidth: 2600, pageMarginTop: 20, pageMarginBottom: 20, pageMarginLeft: 60, pageMarginRight: 20,
    removeIds: true, scale: 40, svgViewBox: true, svgRemoveXlink: true, xmlIdSeed: 1,
  });
  if (!toolkit.loadData(xml) || toolkit.getPageCount() !== 1) return '';
  return toolkit.renderToSVG(1).replace(/<desc>[^<]*<\/desc>/, '').replace(/>\s+</g, '><'); // a third of it is indentation
}

for (let at = 0; at < input.length;) {
  const line = input.indexOf(10, at);
  const length = Number(input.toString('latin1', at, line));
  let drawing = '';
  try {
    drawing = engrave(input.toString('utf8', line + 1, line + 1 + length));
  } catch {
    drawing = '';
  }
  send(drawing);
  at = line + 1 + length;
}
