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

/** The figures of a reading; says in words what is missing before it is sent. */
export function readingOf(v: Values): Record<string, unknown> {
  const [total_h, landings, shows_h] = [v.number('total_h'), v.number('landings'), v.number('shows_h')];
  const meter = slugOf(v.text('meter') ?? '');
  if (total_h === undefined && landings === undefined && shows_h === undefined)
    throw new Error('Fill in the total in the book, the landings, or what the meter shows.');
  if (shows_h !== undefined && meter === '')
    throw new Error('Say which meter shows it, in letters: tachometer, for example.');
  if (v.text('meter') !== undefined && shows_h === undefined)
    throw new Error('Fill in what the meter shows, or leave the meter empty.');
  return given({ total_h, landings, meter: shows_h === undefined ? undefined : meter, shows_h });
}

/** A photograph is a picture; a letter or a list belongs to the papers. */
export function pictureOf(file: File | undefined): File | undefined {
  if (file && !file.type.startsWith('image/'))
    throw new Error(`"${file.name}" is no picture. Choose a photograph, or leave it out.`);
  return file;
}

let count = 0;
export const newId = (): string => {
  count += 1;
  return `new-${count}`;
};
