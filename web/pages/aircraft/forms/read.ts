/** Reads a form as the person left it. Empty fields do not exist. */
export function valuesOf(form: HTMLFormElement) {
  const data = new FormData(form);
  const text = (name: string): string | undefined => {
    const v = data.get(name);
    return typeof v === 'string' && v.trim() !== '' ? v.trim() : undefined;
  };
  const number = (name: string): number | undefined => {
    const v = text(name);
    return v === undefined ? undefined : Number(v);
  };
  const file = (name: string): File | undefined => {
    const v = data.get(name);
    return v instanceof File && v.size > 0 ? v : undefined;
  };
  return { text, number, file };
}
export type Values = ReturnType<typeof valuesOf>;

/** Only what is there. */
export const given = (fields: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).filter(([, v]) => v !== undefined));

/** A word of the record from a person's words: "Walkway doubler" becomes walkway_doubler. */
export const slugOf = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '_')
    .replaceAll(/^[^a-z]+|_+$/g, '')
    .slice(0, 40);

let count = 0;
export const newId = (): string => {
  count += 1;
  return `new-${count}`;
};
