import type { PDFDocumentProxy } from 'pdfjs-dist';

/** The library that draws PDF pages weighs more than the rest of the program: it is fetched when a PDF is opened. */
async function library() {
  const [pdf, worker] = await Promise.all([import('pdfjs-dist'), import('pdfjs-dist/build/pdf.worker.min.mjs?url')]);
  pdf.GlobalWorkerOptions.workerSrc = worker.default;
  return pdf;
}
/** Nothing in a PDF is run, and it fetches nothing. */
const SAFE = {
  isEvalSupported: false,
  enableXfa: false,
  disableFontFace: true,
  useWorkerFetch: false,
  verbosity: 0,
} as const;

const opened = new Map<string, Promise<PDFDocumentProxy>>();
/** @throws Error in words if the file is no PDF that can be opened */
async function openPdf(source: { url: string } | { data: ArrayBuffer }): Promise<PDFDocumentProxy> {
  const pdf = await library();
  const open = () =>
    pdf.getDocument({ ...source, ...SAFE }).promise.catch((e: Error) => {
      throw new Error(
        /password/i.test(`${e.name} ${e.message}`)
          ? 'The PDF is locked with a password. Save it without one and drop it again.'
          : `The PDF cannot be opened: it is damaged or no PDF (${e.message}). Scan it again, or photograph the pages.`,
      );
    });
  if (!('url' in source)) return open();
  const known = opened.get(source.url) ?? open();
  opened.set(source.url, known);
  known.catch(() => opened.delete(source.url));
  return known;
}
export async function pagesIn(file: File): Promise<number> {
  const document = await openPdf({ data: await file.arrayBuffer() });
  const pages = document.numPages;
  await document.loadingTask.destroy();
  return pages;
}
/** Draws one page, wide enough to be read when it is enlarged. */
export async function drawPage(url: string, page: number, canvas: HTMLCanvasElement): Promise<void> {
  const document = await openPdf({ url });
  const drawn = await document.getPage(page);
  const plain = drawn.getViewport({ scale: 1 });
  const viewport = drawn.getViewport({ scale: Math.min(4, 1800 / plain.width) });
  canvas.width = Math.round(viewport.width);
  canvas.height = Math.round(viewport.height);
  await drawn.render({ canvas, viewport }).promise;
}
