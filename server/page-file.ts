import { Refusal } from '../engine/index.ts';

const bytesAt = (b: Uint8Array, at: number, text: string): boolean =>
  [...text].every((c, i) => b[at + i] === c.charCodeAt(0));
/** What people send instead of a photograph, and what to do about it. */
const OTHERS: readonly { readonly is: (b: Uint8Array) => boolean; readonly what: string; readonly remedy: string }[] = [
  {
    is: (b) => bytesAt(b, 4, 'ftyp'),
    what: 'a HEIC photograph or a film',
    remedy: 'Set the camera of the telephone to JPEG ("most compatible"), or open the photograph and save it as JPEG',
  },
  {
    is: (b) => bytesAt(b, 0, 'PK') || (b[0] === 0xd0 && b[1] === 0xcf),
    what: 'a Word, Excel or ZIP file',
    remedy: 'Print it to a PDF and drop that; a log in a spreadsheet is taken in under Import',
  },
  {
    is: (b) => bytesAt(b, 0, 'II*') || bytesAt(b, 0, 'MM\0*') || bytesAt(b, 0, 'BM') || bytesAt(b, 0, 'GIF8'),
    what: 'a TIFF, BMP or GIF picture',
    remedy: 'Save it as JPEG or PNG and drop that',
  },
];

/**
 * The media type of a scan, by what its bytes say and not by its name.
 * @throws Refusal `papers.not-a-page`
 */
export function mediaTypeOf(bytes: Uint8Array, name: string): string {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (bytes[0] === 0x89 && bytesAt(bytes, 1, 'PNG')) return 'image/png';
  if (bytesAt(bytes, 0, 'RIFF') && bytesAt(bytes, 8, 'WEBP')) return 'image/webp';
  if (bytesAt(bytes, 0, '%PDF-')) return 'application/pdf';
  const other = OTHERS.find((o) => o.is(bytes));
  throw new Refusal('papers.not-a-page', {
    given: `"${name}" is ${bytes.length === 0 ? 'empty' : (other?.what ?? 'neither a picture nor a PDF')}`,
    allowed: 'a photograph as JPEG, PNG or WebP, or a PDF',
    remedy: other?.remedy ?? 'Photograph the page, or scan it to a PDF, and drop that',
  });
}
