/** Today where the reader sits, as YYYY-MM-DD: only as the first value of a form. */
export const today = (): string => new Date().toLocaleDateString('sv-SE');
