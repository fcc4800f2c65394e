import type { Block, Card, Cell, Sheet, TableBlock } from '../sheets/index.ts';

const text = (cell: Cell | undefined): string => {
  if (!cell || cell.is === 'nothing') return '';
  return 'small' in cell && cell.small ? `${cell.text} (${cell.small})` : cell.text;
};

function table(block: TableBlock): string[] {
  if (!block.rows.length) return [block.empty];
  const columns = block.columns.filter((c) => block.rows.some((r) => text(r.cells[c.key])));
  const head = columns.map((c) => (c.unit ? `${c.title}, ${c.unit}` : c.title));
  const rows = block.rows.map((r) => columns.map((c) => text(r.cells[c.key])));
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => (r[i] ?? '').length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((c, i) => (columns[i]?.align === 'right' ? c.padStart(widths[i] ?? 0) : c.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd();
  return [line(head), line(widths.map((w) => '-'.repeat(w))), ...rows.map(line)];
}

function block(b: Block): string[] {
  switch (b.block) {
    case 'table':
      return table(b);
    case 'key-value':
      return b.pairs.map((p) => `${p.key}: ${text(p.cell)}`);
    case 'findings':
      return b.findings.length
        ? b.findings.map(
            (f) => `- ${f.text}${f.entries.length ? ` [entries ${f.entries.join(', ')}]` : ''} ${f.remedy}`,
          )
        : [b.empty];
    case 'prose':
      return [...b.paragraphs, ...(b.list ?? []).map((l) => `- ${l}`)];
    case 'cards':
      return b.cards.length ? b.cards.flatMap(card) : [b.empty];
    case 'picture':
      return b.scene.table ? table(b.scene.table) : [b.scene.description];
  }
}

function card(c: Card): string[] {
  return [
    `${c.number}, ${c.stage}: ${c.title}`,
    ...(c.stop ? [c.stop] : []),
    ...(c.first ? [c.first] : []),
    ...c.steps.map((s) => `- ${[s.title, ...s.facts].join('; ')}${s.done ? ` [${s.done}]` : ''}`),
    ...c.signs.map((words) => `  ${words}: ____________________`),
    '',
  ];
}

/** A sheet for the terminal: the same words and figures as the page, without colour. */
export function sheetText(sheet: Sheet): string {
  const lines = [
    sheet.titleBlock.fields.map((f) => `${f.label}: ${[f.value, f.small].filter(Boolean).join(' ')}`).join(' | '),
    '',
    sheet.answer.map((s) => s.text).join(''),
    sheet.because,
    ...sheet.blocks.flatMap((b) => ['', b.title.toUpperCase(), ...block(b)]),
    ...(sheet.working.length
      ? [
          '',
          'WORKING',
          ...sheet.working.map(
            (s) =>
              `${s.symbol}  ${s.meaning} = ${s.formula} = ${s.value}${s.source ? `  [${s.source}]` : ''}${s.entries.length ? `  entries ${s.entries.join(', ')}` : ''}`,
          ),
        ]
      : []),
    ...(sheet.warnings.length ? ['', ...sheet.warnings.map((w) => `Note: ${w}`)] : []),
    ...(sheet.provenance.invented ? ['', 'Invented demonstration data.'] : []),
    ...(sheet.caution ? ['', sheet.caution] : []),
  ];
  return `${lines.join('\n')}\n`;
}
