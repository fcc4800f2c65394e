import type { Choices } from '../../../api/choices.ts';

export interface EntryFormProps {
  readonly shop: string;
  readonly aircraft: string;
  readonly choices: Choices | undefined;
}
