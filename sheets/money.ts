/** Money as it is typed and shown in fields: whole cents behind, two places in front. */
export function centsOf(typed: string): number | null {
  const plain = typed
    .trim()
    .replaceAll(/[\s\u202f']/g, '')
    .replace(',', '.');
  const m = /^(\d{1,9})(?:\.(\d{1,2}))?$/.exec(plain);
  return m ? Number(m[1]) * 100 + Number((m[2] ?? '').padEnd(2, '0')) : null;
}
/** 6400 as "64", 6450 as "64.50". */
export function typedMoney(cents: number): string {
  const whole = Math.floor(cents / 100);
  const rest = Math.round(cents - whole * 100);
  return rest === 0 ? String(whole) : `${whole}.${String(rest).padStart(2, '0')}`;
}
