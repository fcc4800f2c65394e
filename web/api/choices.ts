import { useQuery } from '@tanstack/react-query';
import { get } from './client.ts';
import { shopPath } from './shops.ts';

/** What the forms of an aircraft's page can choose from. */
export interface Choices {
  readonly registration: string;
  /** The day of the question, as the server takes it. */
  readonly day: string;
  readonly parts: readonly {
    readonly id: string;
    readonly name: string;
    readonly what: string;
    readonly hand: 'left' | 'right' | 'none';
  }[];
  readonly meters: readonly string[];
  readonly uses: readonly string[];
  readonly directives: readonly {
    readonly number: string;
    readonly issue: number;
    readonly title: string;
    readonly actions: readonly { readonly id: string; readonly title: string; readonly looks_at: string }[];
  }[];
}

export const useChoices = (shop: string, aircraft: string) =>
  useQuery({
    queryKey: ['choices', shop, aircraft],
    queryFn: () => get<Choices>(shopPath(shop, 'aircraft', aircraft, 'choices')),
  });

/** One of each number: the latest issue, which stands last. */
export const latestIssues = (directives: Choices['directives']): Choices['directives'] => [
  ...new Map(directives.map((d) => [d.number, d])).values(),
];
